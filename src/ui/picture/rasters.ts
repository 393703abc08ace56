import type { Arrangement } from '../../arrangement/index.ts'
import { type Frame, type Sprite, showInLight } from '../../drawing/index.ts'
import { type Painter, startPainting } from '../../state/index.ts'
import { helpWith } from './help.ts'
import type { Item, Laid } from './types.ts'

export interface Pixels {
  width: number
  height: number
  /** Not premultiplied. */
  rgba: Uint8ClampedArray
}

/** A painted piece of the sheet; (x, y) is its upper left corner, dots from the sheet's. */
export interface Placed {
  x: number
  y: number
  pixels: Pixels
}

export interface Drawing {
  document: Arrangement
  laid: Laid
  painter: Painter
  /** Paint all but the first view beside it, and then help with that; none: it paints all itself. */
  asides?: readonly Painter[]
  /** Dots per px of the sheet. */
  scale: number
  /** Newest request of a lane wins. */
  lane: string
}

type View = Extract<Item, { kind: 'view' }>
type Plate = Extract<Item, { kind: 'plate' }>

/** The scale of a first small drawing, by which the size of a plant on its plate is learnt, px per mm. Ours. */
const TRIAL = 0.5
/**
 * Plates are drawn so that each fills its box by the greater part, and yet a large flower stays larger than a small one:
 * between the scale at which it would fill the box and the least of those scales, so far toward the latter. Ours.
 */
const TOGETHER = 0.3

/** The rows above `most`. */
const upperRows = ({ width, height, rgba }: Pixels, most: number): Pixels => {
  const rows = Math.max(0, Math.min(height, Math.round(most)))
  return { width, height: rows, rgba: rgba.subarray(0, 4 * width * rows) }
}

/** A plant that is wider than its box by more than this is drawn smaller, so that its neighbours stay clear. Ours. */
const WIDER = 1.08

/** Plates to a scale of their own, each by its tip. */
const paintToScale = async (
  plates: Plate[],
  painter: Painter,
  { laid, scale }: Drawing,
): Promise<[Plate, Placed][]> => {
  const at = (p: Plate, share: number) =>
    painter.plate(p.plant, p.colour, p.openness, Math.round((p.scale ?? 1) * scale * share * 500) / 500, p.as)
  const painted = await Promise.all(
    plates.map(async (p) => {
      const sprite = await at(p, 1)
      const share = (WIDER * p.box.w * scale) / Math.max(1, sprite.width)
      return share < 1 ? at(p, share) : sprite
    }),
  )
  return plates.flatMap((plate, i): [Plate, Placed][] => {
    const sprite = painted[i]
    if (!sprite || sprite.width === 0) return []
    const { box } = plate
    const [x, y] = [Math.round((box.x + box.w / 2) * scale + sprite.left), Math.round(box.y * scale + sprite.top)]
    return [[plate, { x, y, pixels: upperRows(inLight(sprite, laid), (box.y + box.h) * scale - y) }]]
  })
}

const paintPlates = async (all: Plate[], painter: Painter, drawing: Drawing): Promise<[Plate, Placed][]> => {
  const { laid, scale } = drawing
  const plates = all.filter((p) => p.scale === undefined)
  const toScale = paintToScale(
    all.filter((p) => p.scale !== undefined),
    painter,
    drawing,
  )
  // The page's own painter has them from the preview.
  const trials = await Promise.all(plates.map((p) => drawing.painter.plate(p.plant, p.colour, p.openness, TRIAL)))
  const fits = plates.map(({ box }, i) => {
    const trial = trials[i]
    return Math.min((box.w * TRIAL) / Math.max(1, trial?.width ?? 1), (box.h * TRIAL) / Math.max(1, trial?.height ?? 1))
  })
  const least = Math.min(...fits)
  const sprites = await Promise.all(
    plates.map((p, i) => {
      const fit = (fits[i] ?? least) ** (1 - TOGETHER) * least ** TOGETHER
      // Rounded, so that the worker's store knows it again.
      return painter.plate(p.plant, p.colour, p.openness, Math.round(fit * scale * 0.97 * 500) / 500)
    }),
  )
  const fitted = plates.flatMap((plate, i): [Plate, Placed][] => {
    const sprite = sprites[i]
    if (!sprite || sprite.width === 0) return []
    const { box } = plate
    const [x, y] = [(box.x + box.w / 2) * scale - sprite.width / 2, (box.y + box.h) * scale - sprite.height]
    return [[plate, { x: Math.round(x), y: Math.round(y), pixels: inLight(sprite, laid) }]]
  })
  return [...fitted, ...(await toScale)]
}

/** The painter keeps its plates, so a copy is turned into the light. */
const inLight = (sprite: Sprite, { light }: Laid): Pixels => {
  if (light === 'daylight') return sprite
  const copy = { ...sprite, rgba: sprite.rgba.slice() }
  showInLight(copy, light)
  return copy
}

/**
 * Everything on a sheet that is painted in dots: views and plates. Null when a newer drawing of the same lane overtook it.
 */
export const rastersOf = async (drawing: Drawing): Promise<Map<Item, Placed> | null> => {
  const { document, laid, painter, asides = [], scale, lane } = drawing
  const views = laid.items.filter((item): item is View => item.kind === 'view')
  const plates = laid.items.filter((item): item is Plate => item.kind === 'plate')
  const others = asides.length > 0 ? asides : [painter]
  const otherFor = (i: number): Painter => others[i % others.length] ?? painter
  const frameOf = ({ frame }: View): Frame => ({ ...frame, scale: frame.scale * scale })
  const paint = async (view: View, i: number): Promise<[View, Placed] | null> => {
    const options = { quality: 'fine', section: false, vessel: 'own', light: laid.light } as const
    const by = i === 0 ? painter : otherFor(i)
    const picture = await by.paint(`${lane} ${i}`, document, view.angle, frameOf(view), options)
    if (!picture) return null
    const { width, height, rgba } = picture
    const [x, y] = [Math.round(view.box.x * scale), Math.round(view.box.y * scale)]
    return [view, { x, y, pixels: { width, height, rgba } }]
  }
  const placedPlates = paintPlates(plates, otherFor(0), drawing)
  const placed = views.map(paint)
  const [large] = views
  const help = large && helpWith(painter, { document, angle: large.angle, scale: frameOf(large).scale, lane })
  for (const aside of asides) {
    const own = placed.filter((_, i) => i > 0 && otherFor(i) === aside)
    help?.joinAfter(aside, [...own, ...(aside === otherFor(0) ? [placedPlates] : [])])
  }
  const [done, ...whole] = await Promise.all([placedPlates, ...placed]).finally(help?.end)
  const shown = whole.filter((view) => view !== null)
  return shown.length === views.length ? new Map<Item, Placed>([...done, ...shown]) : null
}

/** Lane of the preview and of what is made ready after it: a new preview overtakes both. */
export const PREVIEW_LANE = 'picture preview'
/** How many files were asked for: none overtakes another. */
let files = 0

const ready = new WeakMap<Laid, Promise<Map<Item, Placed> | null>>()

/** Painters beside the page's own: more share the work no better, and each needs 100 MB. Ours. */
const MOST_ASIDE = 3

/** With as many painters as the machine has cores for, for as long as it takes. */
const byMany = async (drawing: Omit<Drawing, 'asides'>): Promise<Map<Item, Placed> | null> => {
  const free = (navigator.hardwareConcurrency || 2) - 1
  const asides = Array.from({ length: Math.max(1, Math.min(MOST_ASIDE, free)) }, startPainting)
  try {
    return await rastersOf({ ...drawing, asides })
  } finally {
    for (const aside of asides) aside.stop()
  }
}

/** Paints a sheet at its full size while one looks at its preview, so that a file of it is there sooner. */
export const makeReady = (drawing: Omit<Drawing, 'scale' | 'lane' | 'asides'>): void => {
  if (ready.has(drawing.laid)) return
  const made = byMany({ ...drawing, scale: 1, lane: PREVIEW_LANE })
  ready.set(drawing.laid, made)
  made.catch(() => ready.delete(drawing.laid))
}

/** What was made ready, or else painted now. Null when a newer one overtook it. */
export const fullRasters = async (
  drawing: Omit<Drawing, 'lane' | 'asides'>,
): Promise<ReadonlyMap<Item, Placed> | null> => {
  const made = drawing.scale === 1 ? await ready.get(drawing.laid)?.catch(() => null) : null
  files += 1
  return made ?? byMany({ ...drawing, lane: `picture file ${files}` })
}
