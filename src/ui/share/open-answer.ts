import { readAnswer } from '../../storage/index.ts'
import { setWaiting } from './waiting.ts'

/** Looks for an answer in what was pasted and shows it; in words why not, where there is none. */
export const openAnswer = async (pasted: string): Promise<string> => {
  const read = await readAnswer(pasted)
  if (!read.ok) return read.message
  setWaiting({ answer: read.value })
  return ''
}

/** Takes the answer that the page's own link holds, and the link out of the address, so that it is opened once. */
export const openAnswerLink = async (): Promise<void> => {
  const fragment = location.hash
  history.replaceState(null, '', location.pathname + location.search)
  const problem = await openAnswer(fragment)
  if (problem) setWaiting({ problem })
}
