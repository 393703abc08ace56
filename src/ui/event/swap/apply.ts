import { fetchDesigns, openKept, perform, say, useStudio } from '../../../state/index.ts'
import { type OrderLine, type SwapOffer, swapEdit } from '../../../stem-list/index.ts'

/** Swaps go one after the other: a design that is still being opened for one would not be opened for it any more. */
let before: Promise<unknown> = Promise.resolve()

/**
 * Swaps a plant in one design, as a step of that design. One that is not open is opened first: only so is it claimed from
 * other tabs, saved and taken back like any other step. Says so, and changes nothing, where another tab keeps it.
 * @returns the words of the step; '' where nothing was changed
 */
export const swapIn = (design: string, line: OrderLine, to: SwapOffer, label: string): Promise<string> => {
  const swapped = before.then(() => swapNow(design, line, to, label))
  before = swapped.catch(() => undefined)
  return swapped
}

const swapNow = async (design: string, line: OrderLine, to: SwapOffer, label: string): Promise<string> => {
  if (useStudio.getState().designId !== design) {
    await openKept(design, 'event')
    await fetchDesigns()
  }
  const { designId, document, save } = useStudio.getState()
  if (designId !== design) return ''
  if (save.state === 'elsewhere') {
    say('Another tab keeps this design: nothing was changed.')
    return ''
  }
  const edit = swapEdit(document.stems, line, design, to)
  if (!edit) return ''
  perform({ do: 'many', label, edits: [edit] })
  return useStudio.getState().lastDone
}
