import type { Arrangement } from '../arrangement/index.ts'
import type { ReadingResult } from '../readings/index.ts'
import type { ReadingsRequest } from './readings.worker.ts'
import { shownOf, useStudio } from './store.ts'

/**
 * Keeps `readings` in step with what is shown. One request is under way at a time and only the newest waits, so results
 * never arrive out of order and the page never waits for them. Advice follows when no gesture is under way.
 * @returns a function that ends it
 */
export const startReading = (): (() => void) => {
  const worker = new Worker(new URL('./readings.worker.ts', import.meta.url), { type: 'module', name: 'readings' })
  let ticket = 0
  let busy = false
  let waiting: ReadingsRequest | null = null
  let seen: Arrangement | null = null
  let seenAdvice = false

  const send = (request: ReadingsRequest): void => {
    busy = true
    worker.postMessage(request)
  }
  const ask = (document: Arrangement, advice: boolean): void => {
    if (document === seen && advice === seenAdvice) return
    seen = document
    seenAdvice = advice
    ticket += 1
    const request = { ticket, document, advice }
    if (busy) waiting = request
    else send(request)
  }
  worker.onmessage = ({ data }: MessageEvent<{ ticket: number; readings: ReadingResult[] }>) => {
    busy = false
    useStudio.setState({ readings: data.readings })
    if (waiting) {
      const next = waiting
      waiting = null
      send(next)
    }
  }
  worker.onerror = (event) => {
    busy = false
    useStudio.setState({ readings: [], message: `The readings stopped: ${event.message}` })
  }
  const look = (): void => {
    const state = useStudio.getState()
    if (state.sheet !== 'start') ask(shownOf(state), state.draft === null)
  }
  look()
  const unsubscribe = useStudio.subscribe(look)
  return () => {
    unsubscribe()
    worker.terminate()
  }
}
