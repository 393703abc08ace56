import type { Vessel } from '../arrangement/index.ts'
import {
  type Air,
  type Axes,
  bareCount,
  COVER_WIDTH,
  type Cover,
  clearLayer,
  copyLayer,
  createCover,
  createGapSpace,
  createLayer,
  type Grid,
  type Layer,
  measureAir,
  putStamp,
  type Resolved,
  type ResolvedStem,
  type StemCurve,
  splatParts,
  splatVessel,
  splatVesselPlan,
  standinsOf,
  typedAxes,
  viewAxes,
} from '../geometry/index.ts'
import { type Frame, frameFor, HALF_WAYS, type Ready, readyStem, SIDE, SIDE_AXES, WAYS } from './extents.ts'
import { coverMouth, type MouthGap, type MouthView, mouthGap, mouthViews, putMouth } from './mouth.ts'
import { lookAt, type Seen } from './seen.ts'
import { type Stamps, stampsOf } from './stamps.ts'

/** What the readings measure on. Made once and used again; a drag paints only the stem that moves. */
export interface Engine {
  /** Paints what changed since the last time. */
  update(resolved: Resolved): void
  readonly resolved: Resolved
  readonly ready: readonly Ready[]
  readonly frame: Frame
  /** First six ways round (each with its opposite as `back`), then the plan. */
  readonly layers: readonly Layer[]
  /** What is seen of each stem and how it stands out. Worked out when first asked for. */
  seen(): Seen
  /** Air of the first six ways round (the opposite ones are their mirror images). */
  air(): Air[]
  /** Share of the mouth that is seen uncovered, each way round; 0 where the mouth is closed. */
  mouth(): number[]
  /** The widest bare circle of the mouth, one way round. */
  mouthGap(way: number): MouthGap
}

interface View {
  axes: Axes
  grid: Grid
  work: Layer
  base: Layer
  /** The vessel alone: it stands still while stems move, so it is painted once and copied. */
  bare: Layer
}

const nothing = { left: null } as { left: number[] | null }

/** Copies a picture where it is another than the one that was kept, four pixels at a time; says whether it is. */
const keep = (from: Uint8Array, to: Uint8Array): boolean => {
  const now = new Int32Array(from.buffer, from.byteOffset, from.length / 4)
  const before = new Int32Array(to.buffer, to.byteOffset, to.length / 4)
  let i = 0
  while (i < now.length && now[i] === before[i]) i += 1
  if (i === now.length) return false
  to.set(from)
  return true
}

/** @param standins where the light solids come from; others than the house's only in tests */
export const createEngine = (standins: (stem: ResolvedStem) => Float32Array = standinsOf): Engine => {
  const layer = (way: number): Layer => createLayer(SIDE * SIDE, way < HALF_WAYS, way < HALF_WAYS)
  const work = Array.from({ length: HALF_WAYS + 1 }, (_, way) => layer(way))
  const base = Array.from({ length: HALF_WAYS + 1 }, (_, way) => layer(way))
  const blank = Array.from({ length: HALF_WAYS + 1 }, (_, way) => layer(way))
  const mouthWork = Array.from({ length: WAYS }, () => createCover(COVER_WIDTH))
  const mouthBase = Array.from({ length: WAYS }, () => createCover(COVER_WIDTH))
  const gaps = createGapSpace(SIDE * SIDE)
  const planAxes = typedAxes(viewAxes({ turn: 0, pitch: 90 }))

  let resolved: Resolved | null = null
  let ready: Ready[] = []
  let curves: StemCurve[] = []
  let frame: Frame | null = null
  let vessel: Vessel | null = null
  let mouths: MouthView[] = []
  let views: View[] = []
  /** Stems that are not in `base`; null while there is no base. */
  let lifted = nothing.left
  let seen: Seen | null = null
  let air: Air[] | null = null
  // What air was measured on: a way round whose outline stayed keeps its air.
  const outlines = Array.from({ length: HALF_WAYS }, () => new Uint8Array(SIDE * SIDE))
  const known: (Air | null)[] = outlines.map(() => null)
  let fromRow = -1
  let open: number[] | null = null

  const setViews = (f: Frame, v: Vessel): View[] =>
    work.map((w, i): View => {
      const plan = i === HALF_WAYS
      const axes = plan ? planAxes : SIDE_AXES[i]!
      const grid = plan ? f.plan : f.grid
      const bare = blank[i]!
      clearLayer(bare)
      if (plan) splatVesselPlan(bare, grid, v)
      else splatVessel(bare, grid, axes, v)
      return { axes, grid, work: w, base: base[i]!, bare }
    })

  /** Paints stems by their stamps; those that have none yet by their parts. */
  const splat = (into: Layer, view: number, places: readonly number[], stamps: readonly (Stamps | null)[]): void => {
    const { grid, axes } = views[view]!
    for (let k = 0; k < places.length; k++) {
      const known = stamps[k] ?? null
      if (known) putStamp(into, SIDE, known.views[view]!, places[k]!)
      else splatParts(into, grid, axes, ready[places[k]!]!.parts, places[k]!)
    }
  }

  const coverWith = (
    cover: Cover,
    way: number,
    places: readonly number[],
    stamps: readonly (Stamps | null)[],
  ): void => {
    for (let k = 0; k < stamps.length; k++) if (stamps[k]) putMouth(cover, way, stamps[k]!.mouth)
    const unknown = stamps.length === 0 ? places : places.filter((_, k) => !stamps[k])
    coverMouth(cover, mouths[way]!, ready, unknown)
  }

  /** Few stems changed: they are lifted off a base of all others, which is kept as long as no other stem changes. */
  const paint = (changed: number[] | null): void => {
    const some = changed !== null && changed.length <= Math.max(8, ready.length / 4)
    const rebuild = some && !(lifted && changed.every((i) => lifted!.includes(i)))
    if (!some) lifted = null
    else if (rebuild) lifted = changed
    const up = lifted ?? []
    const rest: number[] = []
    if (!some || rebuild) for (let i = 0; i < ready.length; i++) if (!up.includes(i)) rest.push(i)
    const { grid, plan } = frame!
    const stamps = rest.map((i) => stampsOf(ready[i]!, grid, plan, planAxes, mouths))
    for (let v = 0; v < views.length; v++) {
      const view = views[v]!
      const into = some ? view.base : view.work
      if (!some || rebuild) {
        copyLayer(view.bare, into)
        splat(into, v, rest, stamps)
      }
      if (!some) continue
      copyLayer(view.base, view.work)
      splat(view.work, v, up, [])
    }
    for (let way = 0; way < mouths.length; way++) {
      const into = (some ? mouthBase : mouthWork)[way]!
      if (!some || rebuild) {
        into.set(mouths[way]!.closed)
        coverWith(into, way, rest, stamps)
      }
      if (!some) continue
      mouthWork[way]!.set(mouthBase[way]!)
      coverWith(mouthWork[way]!, way, up, [])
    }
  }

  const update = (next: Resolved): void => {
    if (next === resolved) return
    ready = next.stems.map((s) => readyStem(s, next.vessel, standins))
    const f = frameFor(ready, next.vessel)
    const sameVessel = vessel === next.vessel
    const sameGrid = frame?.grid.mm === f.grid.mm && frame.grid.zeroRow === f.grid.zeroRow
    if (!sameVessel) mouths = mouthViews(next.vessel)
    if (!sameVessel || !sameGrid) views = setViews(f, next.vessel)
    const now = next.stems.map((s) => s.curve)
    const whole = !sameVessel || !sameGrid || now.length !== curves.length
    const changed = now.flatMap((c, i) => (c === curves[i] ? [] : [i]))
    resolved = next
    vessel = next.vessel
    frame = f
    curves = now
    seen = null
    air = null
    open = null
    if (whole || changed.length > 0) paint(whole ? null : changed)
  }

  const engine: Engine = {
    update,
    get resolved() {
      if (!resolved) throw new Error('the engine has nothing to look at before its first update')
      return resolved
    },
    get ready() {
      return ready
    },
    get frame() {
      if (!frame) throw new Error('the engine has nothing to look at before its first update')
      return frame
    },
    layers: work,
    seen: () => {
      seen ??= lookAt(engine)
      return seen
    },
    air: () => {
      const { zeroRow } = engine.frame.grid
      air ??= outlines.map((outline, way) => {
        const mass = work[way]!.mass!
        if (keep(mass, outline) || zeroRow !== fromRow) known[way] = measureAir(mass, SIDE, SIDE, zeroRow, gaps)
        return known[way]!
      })
      fromRow = zeroRow
      return air
    },
    mouth: () => {
      open ??= mouths.map(({ pixels }, way) => (pixels > 0 ? bareCount(mouthWork[way]!) / pixels : 0))
      return open
    },
    mouthGap: (way) => mouthGap(mouthWork[way]!, mouths[way]!),
  }
  return engine
}
