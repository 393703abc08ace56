import type { Arrangement } from '../arrangement/index.ts'
import { resolveArrangement } from '../geometry/index.ts'
import { createEngine, readAll } from '../readings/index.ts'
import { reconcile } from './reconcile.ts'

export interface ReadingsRequest {
  ticket: number
  document: Arrangement
  /** Advice is looked for only when the hand rests. */
  advice: boolean
}

const engine = createEngine()
let before: Arrangement | null = null

self.onmessage = ({ data }: MessageEvent<ReadingsRequest>) => {
  before = reconcile(before, data.document)
  const readings = readAll(resolveArrangement(before), { advice: data.advice, engine })
  self.postMessage({ ticket: data.ticket, readings })
}
