import type { Vessel } from '../arrangement/index.ts'
import {
  type Air,
  type Axes,
  bareCount,
  COVER_WIDTH,
  clearLayer,
  copyLayer,
  createCover,
  createGapSpace,
  createLayer,
  type Grid,
  type Layer,
  measureAir,
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
import { type Frame, frameFor, HALF_WAYS, type Ready, readyStem, SIDE, turnOf, WAYS } from './extents.ts'
import { coverMouth, type MouthGap, type MouthView, mouthGap, mouthViews } from './mouth.ts'
import { lookAt, type Seen } from './seen.ts'

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

/** @param standins where the light solids come from; others than the house's only in tests */
export const createEngine = (standins: (stem: ResolvedStem) => Float32Array = standinsOf): Engine => {
  const layer = (way: number): Layer => createLayer(SIDE * SIDE, way < HALF_WAYS, way < HALF_WAYS)
  const work = Array.from({ length: HALF_WAYS + 1 }, (_, way) => layer(way))
  const base = Array.from({ length: HALF_WAYS + 1 }, (_, way) => layer(way))
  const blank = Array.from({ length: HALF_WAYS + 1 }, (_, way) => layer(way))
  const mouthWork = Array.from({ length: WAYS }, () => createCover(COVER_WIDTH))
  const mouthBase = Array.from({ length: WAYS }, () => createCover(COVER_WIDTH))
  const gaps = createGapSpace(SIDE * SIDE)
  const sideAxes = Array.from({ length: HALF_WAYS }, (_, way) => typedAxes(viewAxes({ turn: turnOf(way), pitch: 0 })))
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
  let open: number[] | null = null

  const setViews = (f: Frame, v: Vessel): View[] =>
    work.map((w, i): View => {
      const plan = i === HALF_WAYS
      const axes = plan ? planAxes : sideAxes[i]!
      const grid = plan ? f.plan : f.grid
      const bare = blank[i]!
      clearLayer(bare)
      if (plan) splatVesselPlan(bare, grid, v)
      else splatVessel(bare, grid, axes, v)
      return { axes, grid, work: w, base: base[i]!, bare }
    })

  const splat = (layer: Layer, { grid, axes }: View, places: readonly number[]): void => {
    for (const i of places) splatParts(layer, grid, axes, ready[i]!.parts, i)
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
    for (const view of views) {
      const into = some ? view.base : view.work
      if (!some || rebuild) {
        copyLayer(view.bare, into)
        splat(into, view, rest)
      }
      if (!some) continue
      copyLayer(view.base, view.work)
      splat(view.work, view, up)
    }
    mouths.forEach((view, way) => {
      const into = (some ? mouthBase : mouthWork)[way]!
      if (!some || rebuild) {
        into.set(view.closed)
        coverMouth(into, view, ready, rest)
      }
      if (!some) return
      mouthWork[way]!.set(mouthBase[way]!)
      coverMouth(mouthWork[way]!, view, ready, up)
    })
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
      const { grid } = engine.frame
      air ??= work.slice(0, HALF_WAYS).map((l) => measureAir(l.mass!, SIDE, SIDE, grid.zeroRow, gaps))
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
