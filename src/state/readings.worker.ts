import type { Arrangement } from '../arrangement/index.ts'
import { resolveArrangement } from '../geometry/index.ts'
import { createEngine, type ReadingResult, readAll } from '../readings/index.ts'
import type { Units } from '../units/index.ts'
import { reconcile } from './reconcile.ts'

export interface ReadingsRequest {
  document: Arrangement
  /** Look for advice too. */
  advice: boolean
  /** How lengths are written in advice and on marks. */
  units: Units
}
export interface ReadingsReply {
  readings: ReadingResult[]
}

const engine = createEngine()
let before: Arrangement | null = null

/** Takes one request of the page. */
export const onRequest = ({ data }: MessageEvent<ReadingsRequest>): void => {
  before = reconcile(before, data.document)
  const readings = readAll(resolveArrangement(before), { advice: data.advice, engine, units: data.units })
  self.postMessage({ readings } satisfies ReadingsReply)
}
