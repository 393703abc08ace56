import type { Arrangement } from '../arrangement/index.ts'
import type { ReadingResult } from '../readings/index.ts'
import type { ReadingsReply, ReadingsRequest } from './readings.worker.ts'
import { startWorker, type WorkerName } from './start-worker.ts'
import { shownOf, useStudio } from './store.ts'

/**
 * A worker that is asked about documents: one request is under way at a time and only the newest waits, so answers never
 * arrive out of order, and none is of an older document than one before it.
 */
const lane = (
  name: WorkerName,
  advice: boolean,
  answer: (document: Arrangement, readings: ReadingResult[]) => void,
) => {
  let worker: Worker | null = null
  let asked: Arrangement | null = null
  let waiting: Arrangement | null = null
  const send = (document: Arrangement): void => {
    asked = document
    worker ??= start()
    worker.postMessage({ document, advice } satisfies ReadingsRequest)
  }
  /** Only when there is something to read: the start page draws its samples without readers beside it. */
  const start = (): Worker => {
    const made = startWorker(name)
    made.onmessage = ({ data }: MessageEvent<ReadingsReply>) => {
      const document = asked
      asked = null
      if (document) answer(document, data.readings)
      if (waiting) {
        const next = waiting
        waiting = null
        send(next)
      }
    }
    made.onerror = (event) => {
      asked = null
      useStudio.setState({ message: `The readings stopped: ${event.message}` })
    }
    return made
  }
  return {
    ask: (document: Arrangement): void => {
      if (asked) waiting = document
      else send(document)
    },
    end: () => worker?.terminate(),
  }
}

/** How long the hand rests before advice is looked for, ms. Ours. */
const REST = 150

/**
 * Keeps `readings` in step with what is shown; the page never waits for them. Looking for advice tries many edits and
 * takes longer, so it has a worker of its own and follows when the hand rests: the numbers go on meanwhile.
 * @returns a function that ends it
 */
export const startReading = (): (() => void) => {
  let seen: Arrangement | null = null
  let timer: ReturnType<typeof setTimeout> | undefined
  const live = lane('readings', false, (document, readings) => {
    // Advice for this very document that came first is not taken back.
    if (document !== advised) useStudio.setState({ readings })
  })
  let advised: Arrangement | null = null
  const adviser = lane('advice', true, (document, readings) => {
    if (document !== shownOf(useStudio.getState())) return
    advised = document
    useStudio.setState({ readings })
  })
  const look = (): void => {
    const state = useStudio.getState()
    const document = shownOf(state)
    if (state.sheet === 'start' || document === seen) return
    seen = document
    live.ask(document)
    clearTimeout(timer)
    if (state.draft === null) timer = setTimeout(() => adviser.ask(document), REST)
  }
  look()
  const unsubscribe = useStudio.subscribe(look)
  return () => {
    clearTimeout(timer)
    unsubscribe()
    live.end()
    adviser.end()
  }
}

let trial: Worker | null = null
const trials: ((readings: ReadingResult[]) => void)[] = []

/** The readings of any document, apart from the one on the sheet; no advice. Answers come in the order of the questions. */
export const readApart = (document: Arrangement): Promise<ReadingResult[]> => {
  trial ??= startWorker('trial')
  trial.onmessage = ({ data }: MessageEvent<ReadingsReply>) => trials.shift()?.(data.readings)
  const answer = new Promise<ReadingResult[]>((done) => trials.push(done))
  trial.postMessage({ document, advice: false } satisfies ReadingsRequest)
  return answer
}
