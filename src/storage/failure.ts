import type { Failure, Why } from './types.ts'

const SENTENCES: Record<Why, string> = {
  conflict: 'Another tab has saved a newer state; nothing was overwritten.',
  full: 'The browser has no room left for this site.',
  unavailable: 'The browser’s store could not be reached.',
  unreadable: 'What is stored can’t be read; it was left as it is.',
  missing: 'Nothing is stored under this name.',
}

export const failure = (why: Why, detail = ''): Failure => ({
  ok: false,
  why,
  message: detail ? `${SENTENCES[why]} (${detail})` : SENTENCES[why],
})

/** A thrown error as a result, so that a lost write is never taken for a success and never tears the page down. */
const caught = (error: unknown): Failure => {
  const name = error instanceof Error ? error.name : ''
  return failure(
    name === 'QuotaExceededError' ? 'full' : 'unavailable',
    error instanceof Error ? error.message : String(error),
  )
}

export const attempt = async <T>(work: () => Promise<T | Failure>): Promise<T | Failure> => {
  try {
    return await work()
  } catch (error) {
    return caught(error)
  }
}
