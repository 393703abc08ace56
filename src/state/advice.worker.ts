import type { Arrangement } from '../arrangement/index.ts'
import { resolveArrangement } from '../geometry/index.ts'
import { createEngine, readAll } from '../readings/index.ts'
import type { ReadingsReply, ReadingsRequest } from './readings.worker.ts'
import { reconcile } from './reconcile.ts'

const engine = createEngine()
let before: Arrangement | null = null

/** Takes one request of the page: readings with advice, when the hand rests. */
export const onRequest = ({ data }: MessageEvent<ReadingsRequest>): void => {
  before = reconcile(before, data.document)
  const readings = readAll(resolveArrangement(before), { engine, units: data.units })
  self.postMessage({ readings } satisfies ReadingsReply)
}
