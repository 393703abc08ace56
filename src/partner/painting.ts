import type { Arrangement } from '../arrangement/index.ts'
import {
  createCache,
  createDesk,
  type Frame,
  fittingFrame,
  paintSteps,
  roughBox,
  sketchSteps,
  stillBox,
} from '../drawing/index.ts'
import { type Resolved, resolveArrangement } from '../geometry/index.ts'
import { type Ask, PITCH, type Port, type Reply } from './protocol.ts'

/** A phone has less to spare than the tool's own machine, bytes. Ours. */
const KEPT_BYTES = 64 * 1024 * 1024
/** Ways round from which the frame is taken: from every one the drawing stands at the same place, in the same size. */
const WAYS = 8
/** Left free all round; more for the sketch's frame, whose leaves are only roughly known. Ours. */
const MARGIN = 0.03
const ROUGH_MARGIN = 0.07

type Box = Omit<Frame, 'scale'>
type BoxOf = typeof stillBox

/** What holds everything from every side, the axis in the middle; in steps. */
function* allRound(resolved: Resolved, boxOf: BoxOf): Generator<undefined, Box, undefined> {
  let [wide, bottom, top] = [0, Infinity, -Infinity]
  for (let i = 0; i < WAYS; i++) {
    const box = boxOf(resolved, { turn: (360 / WAYS) * i, pitch: PITCH })
    wide = Math.max(wide, -box.left, box.right)
    bottom = Math.min(bottom, box.bottom)
    top = Math.max(top, box.top)
    yield
  }
  return { left: -wide, right: wide, bottom, top }
}

/** Answers the page's requests at the other end of a port: in a worker, or in the page itself where none can be had. */
export const answerAsks = (port: Port<Reply, Ask>): void => {
  const cache = createCache(KEPT_BYTES)
  let documents: Arrangement[] = []
  let known: Box | null = null

  function* paint({ ticket, view, size, level }: Extract<Ask, { kind: 'paint' }>): Generator<unknown, void, undefined> {
    const document = documents[view.which]
    if (!document) throw new RangeError(`there is no palette ${view.which + 1}`)
    const resolved = resolveArrangement(document)
    const sketch = level === 'sketch'
    // Palettes change no shape: the frame of one is the frame of all.
    if (!known && !sketch) known = yield* allRound(resolved, stillBox)
    const box = known ?? (yield* allRound(resolved, roughBox))
    const frame = fittingFrame(box, size, known ? MARGIN : ROUGH_MARGIN)
    const quality = level === 'fine' ? 'fine' : 'draft'
    const options = { quality, sketch, section: false, vessel: 'own', light: view.light } as const
    const steps = sketch ? sketchSteps : paintSteps
    const { width, height, rgba } = yield* steps(resolved, { turn: view.turn, pitch: PITCH }, frame, options, cache)
    const own = rgba as Uint8ClampedArray<ArrayBuffer>
    port.postMessage({ ticket, painted: { width, height, rgba: own, frame } }, { transfer: [own.buffer] })
  }
  const desk = createDesk((ticket, failed) => port.postMessage({ ticket, failed }))
  port.onmessage = ({ data }) => {
    if (data.kind === 'designs') {
      documents = data.documents
      known = null
    } else if (data.kind === 'drop') desk.drop(data.ticket)
    else desk.take({ ticket: data.ticket, urgency: 0, steps: paint(data) })
  }
}
