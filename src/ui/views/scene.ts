import type { Arrangement, Stem } from '../../arrangement/index.ts'
import { type Resolved, type ResolvedStem, resolveArrangement } from '../../geometry/index.ts'
import { change, type Painter, shownOf, useStudio } from '../../state/index.ts'
import { drawHand, drawMarks, handPatch, marksKey } from './draw-live.ts'
import { drawGround, drawLettering } from './furniture.ts'
import { drawGroundShade } from './ground-shade.ts'
import { stemIndexAt } from './hit.ts'
import type { Box } from './labels.ts'
import type { Draw } from './layers.ts'
import { type Layout, layOut, type Sizes, sizesOf, VIEWS, type ViewName } from './layout.ts'
import { createMoving, type Moving } from './moving.ts'
import { createOutlines, type Outlines } from './outlines.ts'
import type { drawPhantom, Phantom } from './phantom.ts'
import { createReaches, type Reaches } from './reach.ts'
import { createStills, drawStill, type Stills } from './stills.ts'

/** Two corners of a rectangle on the sheet, CSS px. */
export interface Marquee {
  from: [number, number]
  to: [number, number]
}

/** What both views show. Lives outside React; drawn by two shapes, told of changes by the store. */
export interface Scene {
  layout: Layout
  shown: Resolved
  turn: number
  stills: Stills
  moving: Moving
  outlines: Outlines
  reaches: Reaches
  /** Stems in the hand, drawn apart. */
  lifted: readonly string[]
  /** Where the words of the still layer stand. */
  lettering: readonly Box[]
  marquee: Marquee | null
  /** What a touch would place. */
  ghost: Stem | null
  phantom: Phantom | null
  /** What draws it; null until one was asked for. */
  drawPhantom: typeof drawPhantom | null
  hover: string
  /** For tests: what was drawn, and how often. */
  counts: { stillDraws: number; spriteMisses: number; marks: string; stills: string }
}

export interface SceneControl {
  scene: Scene
  resize(width: number, height: number, ratio: number): void
  draw: Draw
  /** Takes stems in the hand: the still pictures go on without them. */
  lift(ids: readonly string[]): void
  /** Puts them back; they are drawn apart until the still pictures have them again. */
  lower(): void
  set(part: Partial<Pick<Scene, 'marquee' | 'ghost' | 'hover'>>): void
  /** The stem at a place of the sheet, by the picture itself. */
  stemAt(view: ViewName, x: number, y: number, tolerance: number): string | null
  stop(): void
}

export interface Surface {
  /** Asks for the still layer, or the live one, to be drawn with the next frame. */
  still(): void
  live(): void
  failed(why: string): void
}

const NONE: readonly string[] = []

export const createScene = (painter: Painter, surface: Surface): SceneControl => {
  const state = useStudio.getState
  const first = resolveArrangement(shownOf(state()))
  const stillsChanged = (): void => {
    if (!held) scene.lifted = NONE
    if (scene.lifted.length === 0) scene.moving.clear()
    surface.still()
    surface.live()
    const { drawn, designId } = state()
    if (drawn !== designId && VIEWS.every((view) => scene.stills.of(view)?.picture.options.sketch === false))
      change({ drawn: designId })
  }
  let held = false
  const scene: Scene = {
    layout: layOut(320, 400, 1, sizesOf(first.document), first.vessel),
    shown: first,
    turn: state().turn,
    // Pictures of one change come one after the other; what was in the hand is put back when the last of them is there.
    stills: createStills(painter, () => whenWhole(stillsChanged), surface.failed),
    moving: createMoving(painter, surface.live),
    outlines: createOutlines(painter, surface.live),
    reaches: createReaches(painter, surface.live, surface.failed),
    lifted: NONE,
    lettering: [],
    marquee: null,
    ghost: null,
    phantom: null,
    drawPhantom: null,
    hover: '',
    counts: { stillDraws: 0, spriteMisses: 0, marks: '', stills: '' },
  }
  const whenWhole = (done: () => void): void => {
    const whole = VIEWS.every((view) => scene.stills.isWithout(view, NONE))
    if (held || scene.lifted.length === 0 || whole) done()
    else {
      surface.still()
      surface.live()
    }
  }
  let sized = { width: 320, height: 400, ratio: 1 }
  let settled: Arrangement | null = null
  let phantomFor: { edit: unknown; document: Arrangement; turn: number } | null = null

  let sizes: Sizes | undefined
  let sizedFor = ''
  /** @returns whether anything came to lie elsewhere */
  const layAgain = (document: Arrangement): boolean => {
    const { designId } = state()
    sizes = sizesOf(document, sizedFor === designId ? sizes : undefined)
    sizedFor = designId
    const next = layOut(sized.width, sized.height, sized.ratio, sizes, document.vessel)
    const now = scene.layout
    if (!(Object.keys(next) as (keyof Layout)[]).some((key) => next[key] !== now[key])) return false
    scene.layout = next
    surface.still()
    return true
  }

  const wantPhantom = (): void => {
    const { phantom: edit, document } = state()
    if (!edit) {
      scene.phantom = null
      phantomFor = null
      return
    }
    if (phantomFor?.edit === edit && phantomFor.document === document && phantomFor.turn === scene.turn) return
    const asked = { edit, document, turn: scene.turn }
    phantomFor = asked
    scene.phantom = null
    // Comes when it is first asked for: the first load has a limit.
    import('./phantom.ts')
      .then(async ({ drawPhantom, outlinesOf, phantomOf }) => {
        if (phantomFor !== asked) return
        const phantom = phantomOf(document, edit)
        scene.phantom = phantom
        scene.drawPhantom = drawPhantom
        surface.live()
        if (phantom.ids.length === 0) return
        const outlines = await outlinesOf(painter, phantom, asked.turn)
        if (scene.phantom !== phantom) return
        phantom.outlines = outlines
        surface.live()
      })
      .catch((why) => surface.failed(String(why)))
  }

  const outlined = (): ResolvedStem[] => {
    const { selection, lit, focused, readings, openReading, markedReading } = state()
    const reading = readings.find((r) => r.id === (markedReading ?? openReading))
    const marked = reading?.marks.flatMap((m) => (m.kind === 'stems' ? m.ids : [])) ?? []
    const wanted = new Set([
      ...selection,
      ...lit,
      ...marked,
      ...(focused ? [focused] : []),
      ...(scene.hover ? [scene.hover] : []),
    ])
    return scene.shown.stems.filter((s) => wanted.has(s.id))
  }

  const update = (): void => {
    const now = state()
    const document = shownOf(now)
    const turned = now.turn !== scene.turn
    const other = document !== scene.shown.document
    scene.turn = now.turn
    let laid = false
    // The scale stays while something moves.
    if (!now.draft && now.document !== settled) {
      settled = now.document
      laid = layAgain(document)
    }
    const still = held ? { without: scene.lifted, document: now.document } : { without: NONE, document }
    scene.stills.want({ ...still, turn: scene.turn, layout: scene.layout })
    scene.reaches.want(document, scene.turn)
    // To work hundreds of stems out takes a while: by now the painter is at them too.
    if (other) scene.shown = resolveArrangement(document)
    if (scene.lifted.length > 0 && (other || turned || laid)) follow()
    if (!held || scene.lifted.length <= 6) scene.outlines.want(document, outlined(), scene.turn)
    wantPhantom()
    if (!now.placing) scene.ghost = null
    if (turned || (other && !held)) surface.still()
    surface.live()
  }

  const follow = (): void => {
    const scale = scene.layout.scale * scene.layout.ratio
    scene.moving.follow({ document: scene.shown.document, ids: scene.lifted, turn: scene.turn, scale })
  }

  const unsubscribe = useStudio.subscribe(update)

  let marksOf: readonly unknown[] = []
  const draw: Draw = {
    still: (pen) => {
      const { layout, turn, shown } = scene
      drawGround(pen, layout, turn)
      drawGroundShade(pen, layout, turn, shown.vessel)
      for (const view of VIEWS) drawStill(pen, layout, view, turn, scene.stills.of(view))
      scene.lettering = drawLettering(pen, layout, turn, shown.vessel, state().units)
      scene.counts.stillDraws += 1
      scene.counts.stills = VIEWS.map((view) => scene.stills.of(view)?.picture.options.quality ?? 'none').join(' ')
    },
    // While something is in the hand the marks stay as they are until something about them changes.
    stale: () => {
      if (scene.lifted.length === 0) return true
      const key = marksKey(scene, state())
      return key.length !== marksOf.length || key.some((v, i) => v !== marksOf[i])
    },
    live: (pen) => {
      marksOf = scene.lifted.length > 0 ? marksKey(scene, state()) : []
      scene.counts.marks = drawMarks(pen, scene, state())
    },
    patch: () => handPatch(scene, state()),
    hand: (pen, patch) => {
      drawHand(pen, scene, state(), patch)
      scene.counts.spriteMisses = scene.moving.misses()
    },
  }

  return {
    scene,
    resize: (width, height, ratio) => {
      if (sized.width === width && sized.height === height && sized.ratio === ratio) return
      sized = { width, height, ratio }
      if (layAgain(scene.shown.document) && scene.lifted.length > 0) follow()
      update()
      surface.still()
    },
    draw,
    lift: (ids) => {
      held = true
      scene.lifted = ids
      scene.moving.clear()
      update()
      follow()
    },
    lower: () => {
      held = false
      update()
    },
    set: (part) => {
      const hovered = part.hover !== undefined && part.hover !== scene.hover
      Object.assign(scene, part)
      if (hovered) scene.outlines.want(scene.shown.document, outlined(), scene.turn)
      surface.live()
    },
    stemAt: (view, x, y, tolerance) => {
      const still = scene.stills.of(view)
      if (!still) return null
      const { layout } = scene
      const { picture } = still
      const base = view === 'elevation' ? layout.rimY : layout.planY
      const px = (x - layout.axisX) * layout.ratio - Math.round(picture.frame.left * picture.frame.scale)
      const py = (y - base) * layout.ratio + Math.round(picture.frame.top * picture.frame.scale)
      const index = stemIndexAt(picture, px, py, tolerance * layout.ratio)
      return picture.document.stems[index]?.id ?? null
    },
    stop: () => {
      unsubscribe()
      scene.stills.stop()
      scene.moving.stop()
      scene.outlines.stop()
      scene.reaches.stop()
    },
  }
}
