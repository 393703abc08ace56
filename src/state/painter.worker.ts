import type { Arrangement } from '../arrangement/index.ts'
import { findPlant } from '../catalogue/index.ts'
import {
  contourOf,
  createCache,
  createDesk,
  type Frame,
  fittingFrame,
  keepSprite,
  type PaintOptions,
  type PlatePiece,
  paintSteps,
  plantPlate,
  type Quality,
  reachOf,
  roughBox,
  type Sprite,
  sketchSteps,
  spriteSteps,
  stemSprite,
  stillBox,
  type ViewAngle,
} from '../drawing/index.ts'
import { type Resolved, resolveArrangement } from '../geometry/index.ts'
import { reconcile } from './reconcile.ts'

/** Instead of a frame: so many pixels to hold everything in, centred, with a margin of five in a hundred all round (ours). */
export interface Fit {
  width: number
  height: number
}

/** Sprites by id that another painter has made for this one. */
export interface Given {
  document: Arrangement
  angle: ViewAngle
  scale: number
  quality: Quality
  sprites: ReadonlyMap<string, Sprite>
}
/** What the page may ask for; to `give` there is no reply. */
export type PaintJob =
  | { kind: 'paint'; document: Arrangement; angle: ViewAngle; frame: Frame | Fit; options: PaintOptions }
  | { kind: 'sprites'; document: Arrangement; ids: string[]; angle: ViewAngle; scale: number; quality: Quality }
  | { kind: 'boxes'; document: Arrangement; angles: ViewAngle[] }
  | { kind: 'reach'; document: Arrangement; turn: number }
  | { kind: 'contour'; document: Arrangement; id: string; angle: ViewAngle }
  | { kind: 'plate'; plant: string; colour: string; openness: number; scale: number; as: PlatePiece | null }
  | ({ kind: 'give' } & Given)
export type PaintRequest = { ticket: number; job: PaintJob } | { ticket: number; job: null }
export interface PaintReply {
  ticket: number
  value?: unknown
  error?: string
}

/** What moves goes before what stands, and both before the small pictures of lists. */
const URGENCY: Record<PaintJob['kind'], number> = {
  give: 0,
  sprites: 0,
  contour: 0,
  reach: 0,
  paint: 1,
  boxes: 1,
  plate: 2,
}
/** A sketch must come soon: it goes before the words about it that were asked for after it. */
const urgencyOf = (job: PaintJob): number => (job.kind === 'paint' && job.options.sketch ? 0 : URGENCY[job.kind])
/** Left free round what is to fit, as a share of the pixels. Ours. */
const MARGIN = 0.05
/** Contours need no more than this, pixels per mm. Ours. */
const CONTOUR_SCALE = 2

const cache = createCache()
let before: Arrangement | null = null
const resolve = (document: Arrangement): Resolved => {
  before = reconcile(before, document)
  return resolveArrangement(before)
}

/** Of a document that holds only some of the stems; the others are not forgotten. */
let some: Arrangement | null = null
const resolveSome = (document: Arrangement): Resolved => {
  some = reconcile(before, reconcile(some, document))
  return resolveArrangement(some)
}

const reply = (message: PaintReply, transfer: Transferable[] = []): void => self.postMessage(message, { transfer })
/** The cache keeps its own; the page gets a copy that can be handed over. */
const copied = (sprite: Sprite): Sprite => ({ ...sprite, rgba: sprite.rgba.slice(), depth: sprite.depth.slice() })
const buffers = (sprite: Sprite): Transferable[] => [sprite.rgba.buffer, sprite.depth.buffer] as Transferable[]

function* work(ticket: number, job: PaintJob): Generator<unknown, void, undefined> {
  if (job.kind === 'paint') {
    const resolved = resolve(job.document)
    // A sketch must come soon: its frame is taken from stand-ins, and the pictures after it may shift by a little.
    const boxOf = job.options.sketch ? roughBox : stillBox
    const frame = 'scale' in job.frame ? job.frame : fittingFrame(boxOf(resolved, job.angle), job.frame, MARGIN)
    const steps = job.options.sketch ? sketchSteps : paintSteps
    const picture = yield* steps(resolved, job.angle, frame, job.options, cache)
    const { rgba, depth, owner } = picture
    reply({ ticket, value: { ...picture, frame } }, [rgba.buffer, depth.buffer, owner.buffer] as Transferable[])
  } else if (job.kind === 'sprites') {
    const wanted = new Set(job.ids)
    const sprites = new Map<string, Sprite>()
    for (const stem of resolveSome(job.document).stems) {
      if (!wanted.has(stem.id)) continue
      sprites.set(stem.id, copied(yield* spriteSteps(stem, job.angle, job.scale, job.quality, cache)))
      yield
    }
    reply({ ticket, value: sprites }, [...sprites.values()].flatMap(buffers))
  } else if (job.kind === 'give') {
    const { document, angle, scale, quality, sprites } = job
    for (const stem of resolveSome(document).stems) {
      const sprite = sprites.get(stem.id)
      if (sprite) keepSprite(stem, angle, scale, quality, cache, sprite)
    }
  } else if (job.kind === 'boxes') {
    const resolved = resolve(job.document)
    reply({ ticket, value: job.angles.map((angle) => stillBox(resolved, angle)) })
  } else if (job.kind === 'reach') {
    reply({ ticket, value: reachOf(resolve(job.document), job.turn) })
  } else if (job.kind === 'contour') {
    const stem = resolveSome(job.document).stems.find((s) => s.id === job.id)
    const sprite = stem && stemSprite(stem, job.angle, CONTOUR_SCALE, 'draft', cache)
    reply({ ticket, value: sprite ? contourOf(sprite, CONTOUR_SCALE) : [] })
  } else {
    const plant = findPlant(job.plant)
    if (!plant) throw new RangeError(`no plant is listed as "${job.plant}"`)
    const angle = { turn: 0, pitch: 0 }
    const sprite = copied(plantPlate(plant, job.colour, job.openness, angle, job.scale, cache, 'fine', job.as))
    reply({ ticket, value: sprite }, buffers(sprite))
  }
}

const desk = createDesk((ticket, error) => reply({ ticket, error }))

/** Takes one request of the page. */
export const onRequest = ({ data: { ticket, job } }: MessageEvent<PaintRequest>): void => {
  if (job === null) desk.drop(ticket)
  else desk.take({ ticket, urgency: urgencyOf(job), steps: work(ticket, job) })
}
