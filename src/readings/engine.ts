import type { Vessel } from '../arrangement/index.ts'
import {
  type Air,
  type Axes,
  clearLayer,
  copyLayer,
  coverParts,
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
  viewAxes,
} from '../geometry/index.ts'
import { type Frame, frameFor, HALF_WAYS, type Ready, readyStem, SIDE, turnOf, WAYS } from './extents.ts'
import { clearMouth, MOUTH_SIDE, type MouthView, mouthViews } from './mouth.ts'
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
}

interface View {
  axes: Axes
  grid: Grid
  work: Layer
  base: Layer
  clear: (layer: Layer) => void
  splat: typeof splatParts
}

const nothing = { left: null } as { left: number[] | null }

/** @param standins where the light solids come from; others than the house's only in tests */
export const createEngine = (standins: (stem: ResolvedStem) => Float32Array = standinsOf): Engine => {
  const layer = (way: number): Layer => createLayer(SIDE * SIDE, way < HALF_WAYS, way < HALF_WAYS)
  const work = Array.from({ length: HALF_WAYS + 1 }, (_, way) => layer(way))
  const base = Array.from({ length: HALF_WAYS + 1 }, (_, way) => layer(way))
  const blank = Array.from({ length: HALF_WAYS + 1 }, (_, way) => layer(way))
  const mouthWork = Array.from({ length: WAYS }, () => createLayer(MOUTH_SIDE ** 2, false, false))
  const mouthBase = Array.from({ length: WAYS }, () => createLayer(MOUTH_SIDE ** 2, false, false))
  const gaps = createGapSpace(SIDE * SIDE)
  const sideAxes = Array.from({ length: HALF_WAYS }, (_, way) => viewAxes({ turn: turnOf(way), pitch: 0 }))
  const planAxes = viewAxes({ turn: 0, pitch: 90 })

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

  const setViews = (f: Frame, v: Vessel): View[] => [
    ...work.map((w, i): View => {
      const plan = i === HALF_WAYS
      const axes = plan ? planAxes : sideAxes[i]!
      const grid = plan ? f.plan : f.grid
      // The vessel stands still while stems move: it is painted once and copied.
      const bare = blank[i]!
      clearLayer(bare)
      if (plan) splatVesselPlan(bare, grid, v)
      else splatVessel(bare, grid, axes, v)
      const clear = (l: Layer): void => copyLayer(bare, l)
      return { axes, grid, work: w, base: base[i]!, clear, splat: splatParts }
    }),
    ...mouths.map(({ axes, grid }, i): View => {
      const clear = (l: Layer): void => clearMouth(l, grid)
      return { axes, grid, work: mouthWork[i]!, base: mouthBase[i]!, clear, splat: coverParts }
    }),
  ]

  const paint = (changed: number[] | null): void => {
    const some = changed !== null && changed.length <= Math.max(8, ready.length / 4)
    const rebuild = some && !(lifted && changed.every((i) => lifted!.includes(i)))
    if (!some) lifted = null
    else if (rebuild) lifted = changed
    const up = new Set(lifted)
    for (const view of views) {
      if (!some || rebuild) {
        const into = some ? view.base : view.work
        view.clear(into)
        ready.forEach((r, i) => {
          if (!up.has(i)) view.splat(into, view.grid, view.axes, r.parts, i)
        })
      }
      if (!some) continue
      copyLayer(view.base, view.work)
      for (const i of up) view.splat(view.work, view.grid, view.axes, ready[i]!.parts, i)
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
      const { grid } = engine.frame
      air ??= work.slice(0, HALF_WAYS).map((l) => measureAir(l.mass!, SIDE, SIDE, grid.zeroRow, gaps))
      return air
    },
    mouth: () => {
      open ??= mouths.map(({ pixels }, way) => {
        const { owner } = mouthWork[way]!
        let bare = 0
        for (const i of pixels) if (owner[i] === 0) bare += 1
        return pixels.length > 0 ? bare / pixels.length : 0
      })
      return open
    },
  }
  return engine
}
