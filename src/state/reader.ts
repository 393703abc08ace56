import type { Arrangement } from '../arrangement/index.ts'
import type { ReadingResult } from '../readings/index.ts'
import type { Units } from '../units/index.ts'
import type { ReadingsReply, ReadingsRequest, SeenColours } from './readings.worker.ts'
import { startWorker, type WorkerName } from './start-worker.ts'
import { shownOf, useStudio } from './store.ts'

/** What is read: a document of a design, and the units in which its lengths are written. */
interface Asked {
  document: Arrangement
  units: Units
  designId: string
}
const same = (a: Asked | null, b: Asked): boolean =>
  a?.document === b.document && a.units === b.units && a.designId === b.designId

/**
 * A worker that is asked about documents: one request is under way at a time and only the newest waits, so answers never
 * arrive out of order, and none is of an older document than one before it.
 */
const lane = (
  name: WorkerName,
  answer: (asked: Asked, readings: ReadingResult[]) => void,
  apart: () => number = () => 0,
) => {
  let worker: Worker | null = null
  let begun = 0
  let asked: Asked | null = null
  let waiting: Asked | null = null
  let pause: ReturnType<typeof setTimeout> | undefined
  const send = (next: Asked): void => {
    asked = next
    begun = performance.now()
    worker ??= start()
    const { document, units } = next
    worker.postMessage({ document, units } satisfies ReadingsRequest)
  }
  /** Only when there is something to read: the start page draws its samples without readers beside it. */
  const start = (): Worker => {
    const made = startWorker(name)
    made.onmessage = ({ data }: MessageEvent<ReadingsReply>) => {
      const of = asked
      asked = null
      if (of) answer(of, data.readings)
      goOn()
    }
    made.onerror = (event) => {
      asked = null
      useStudio.setState({ message: `The readings stopped: ${event.message}` })
    }
    return made
  }
  const goOn = (): void => {
    clearTimeout(pause)
    if (asked || !waiting) return
    const rest = begun + apart() - performance.now()
    if (rest > 0) {
      pause = setTimeout(goOn, rest)
      return
    }
    const next = waiting
    waiting = null
    send(next)
  }
  return {
    ask: (next: Asked): void => {
      waiting = next
      goOn()
    },
    end: () => {
      clearTimeout(pause)
      worker?.terminate()
    },
  }
}

/**
 * Numbers that change faster than this can't be read; between them the machine belongs to what moves, ms. Ours: twenty
 * readings a second.
 */
const GLANCE = 50
/** How long the hand rests before advice is looked for, ms. Ours. */
const REST = 150
/** Before a first picture stands the machine belongs to that; but no longer than this, ms. Ours. */
const FIRST_REST = 6000

/**
 * Keeps `readings` in step with what is shown and with the person's units; the page never waits for them. Looking for
 * advice tries many edits and takes longer, so it has a worker of its own and follows when the hand rests: the numbers go
 * on meanwhile.
 * @returns a function that ends it
 */
export const startReading = (): (() => void) => {
  const nowAsked = (): Asked => {
    const state = useStudio.getState()
    return { document: shownOf(state), units: state.units, designId: state.designId }
  }
  let inHand = false
  let seen: Asked | null = null
  let advised: Asked | null = null
  let timer: ReturnType<typeof setTimeout> | undefined
  let stood = false
  const live = lane(
    'readings',
    (asked, readings) => {
      // Advice for this very document that came first is not taken back; that for another is not what is shown any more.
      // Nor is what is read of one design shown for another.
      if (same(advised, asked) || asked.designId !== useStudio.getState().designId) return
      advised = null
      useStudio.setState({ readings })
    },
    () => (inHand ? GLANCE : 0),
  )
  const adviser = lane('advice', (asked, readings) => {
    if (!same(asked, nowAsked())) return
    advised = asked
    useStudio.setState({ readings })
  })
  const look = (): void => {
    const { sheet, draft, designId, drawn } = useStudio.getState()
    if (sheet === 'start') return
    const stands = drawn === designId
    const justStands = stands && !stood
    stood = stands
    const next = nowAsked()
    // A gesture that settles leaves the very document that was read last; advice on it is still to come.
    const settled = inHand && draft === null
    inHand = draft !== null
    const known = same(seen, next)
    if (known && !settled && !justStands) return
    if (!known) live.ask(next)
    seen = next
    clearTimeout(timer)
    if (!inHand) timer = setTimeout(() => same(advised, next) || adviser.ask(next), stands ? REST : FIRST_REST)
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
const trials: ((reply: ReadingsReply) => void)[] = []

/**
 * The readings of any document, apart from the one on the sheet, without advice, and the colours that are seen of it from
 * all sides. Answers come in the order of the questions.
 */
export const readApart = async (
  document: Arrangement,
): Promise<{ readings: ReadingResult[]; colours: SeenColours }> => {
  trial ??= startWorker('trial')
  trial.onmessage = ({ data }: MessageEvent<ReadingsReply>) => trials.shift()?.(data)
  const answer = new Promise<ReadingsReply>((done) => trials.push(done))
  const { units } = useStudio.getState()
  trial.postMessage({ document, units, colours: true } satisfies ReadingsRequest)
  const { readings, colours } = await answer
  return { readings, colours: colours ?? { blooms: [], leaves: [] } }
}
