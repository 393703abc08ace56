import type { Arrangement } from '../arrangement/index.ts'
import { resolveArrangement } from '../geometry/index.ts'
import { coloursSeen, createEngine, measureAll, type Patch, type ReadingResult } from '../readings/index.ts'
import type { Units } from '../units/index.ts'
import { reconcile } from './reconcile.ts'

export interface ReadingsRequest {
  document: Arrangement
  /** How lengths are written in advice and on marks. */
  units: Units
  /** Tell the colours that are seen, too. */
  colours?: boolean
}
/** Colours and how much of each is seen, any unit. */
export interface SeenColours {
  blooms: Patch[]
  leaves: Patch[]
}
export interface ReadingsReply {
  readings: ReadingResult[]
  colours?: SeenColours
}

const engine = createEngine()
let before: Arrangement | null = null

/** Takes one request of the page: readings without advice, while the hand moves. */
export const onRequest = ({ data }: MessageEvent<ReadingsRequest>): void => {
  before = reconcile(before, data.document)
  const readings = measureAll(resolveArrangement(before), engine, data.units)
  const colours = data.colours ? { colours: coloursSeen(engine) } : {}
  self.postMessage({ readings, ...colours } satisfies ReadingsReply)
}
