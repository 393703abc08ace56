import { useSyncExternalStore } from 'react'
import type { Answer } from '../../storage/index.ts'

/** An answer that came in, or in words why it can't be read; null when none waits to be looked at. */
export type Waiting = { answer: Answer } | { problem: string } | null

let waiting: Waiting = null
const tell = new Set<() => void>()

export const setWaiting = (next: Waiting): void => {
  waiting = next
  for (const t of tell) t()
}
export const useWaiting = (): Waiting =>
  useSyncExternalStore(
    (t) => {
      tell.add(t)
      return () => tell.delete(t)
    },
    () => waiting,
  )
