import type { Arrangement, Edit } from '../../arrangement/index.ts'
import { abandon, change, perform, preview, say, select, settle, turnTo, useStudio } from '../../state/index.ts'
import { editOf, type Move } from './drag.ts'
import { nearestHandle, placeOf, reachOf, tipPoint } from './handles.ts'
import { stemIndicesIn } from './hit.ts'
import { toView, type ViewName, viewAt } from './layout.ts'
import { stemFor } from './placing.ts'
import type { SceneControl } from './scene.ts'
import { shownHandles } from './selection-marks.ts'
import { placedWords, wordsOf } from './words.ts'

/** What a pointer has taken hold of. */
type Grip =
  | { kind: 'place'; view: ViewName }
  | { kind: 'move'; move: Move /** Pressed on a stem, not on a handle. */; stem: string | null }
  | { kind: 'ring' }
  | { kind: 'ground'; view: ViewName }

interface Gesture {
  grip: Grip
  pointerId: number
  pointerType: string
  startX: number
  startY: number
  x: number
  y: number
  /** Alt: crossings go along. */
  whole: boolean
  adds: boolean
  /** Past the threshold: no longer a click. */
  begun: boolean
  document: Arrangement
  turn: number
  edit: Edit | null
}

/** A press that moves less than this is a click, CSS px. Ours. */
const CLICK_PX = { mouse: 3, pen: 5, touch: 8 } as const
const clickPx = (type: string): number => CLICK_PX[type as keyof typeof CLICK_PX] ?? CLICK_PX.mouse
/** Slips beside a stem, CSS px. Ours. */
const SLIP_PX = { mouse: 3, pen: 5, touch: 10 } as const
const slipPx = (type: string): number => SLIP_PX[type as keyof typeof SLIP_PX] ?? SLIP_PX.mouse

const CURSOR = { place: 'crosshair', move: 'grab', ring: 'grab', ground: 'default' } as const

/**
 * Pointer gestures on the two views. One gesture at a time; it ends with the pointer's release and is given up when the
 * pointer is cancelled or lost, the window loses focus, a second finger comes down or Escape is pressed.
 * @param host the element that holds both views and takes the pointer
 * @returns a function that takes the listeners away, giving up what is under way
 */
export const listenToPointer = (host: HTMLElement, control: SceneControl, onPress: (view: ViewName) => void) => {
  const { scene } = control
  let gesture: Gesture | null = null
  let frame = 0

  const at = (e: { clientX: number; clientY: number }): [number, number] => {
    const box = host.getBoundingClientRect()
    return [e.clientX - box.left, e.clientY - box.top]
  }
  const ringAngle = (x: number, y: number): number =>
    (Math.atan2(-(y - scene.layout.planY), x - scene.layout.axisX) * 180) / Math.PI

  /**
   * Whether the turn ring is taken hold of: where paper lies about it, in its whole reach; where a stem lies over it, on
   * its line, unless the head of that stem is under the pointer.
   */
  const ringAt = (x: number, y: number, type: string, over: string | null): boolean => {
    const { layout, shown, turn } = scene
    const off = Math.abs(Math.hypot(x - layout.axisX, y - layout.planY) - layout.ring_mm * layout.scale)
    const reach = reachOf(type)
    if (over === null) return off <= reach
    const stem = shown.stems.find((s) => s.id === over)
    if (!stem || off > reach / 2) return false
    const head = placeOf(layout, 'plan', turn, tipPoint(stem))
    return Math.hypot(head[0] - x, head[1] - y) > reach
  }

  const gripAt = (x: number, y: number, type: string): Grip => {
    const { layout, shown, turn } = scene
    const view = viewAt(layout, y)
    const { placing, selection } = useStudio.getState()
    if (placing) return { kind: 'place', view }
    const chosen = shown.stems.filter((s) => selection.includes(s.id))
    const handle = nearestHandle(shownHandles(layout, turn, chosen), x, y, reachOf(type))
    // By a head all that is selected goes along; a crossing or a bow is a matter of one stem.
    if (handle?.kind === 'tip')
      return { kind: 'move', move: { kind: 'body', view: handle.view, ids: selection }, stem: handle.id }
    if (handle) return { kind: 'move', move: { kind: handle.kind, view: handle.view, id: handle.id }, stem: null }
    const id = control.stemAt(view, x, y, 0)
    if (view === 'plan' && ringAt(x, y, type, id)) return { kind: 'ring' }
    const near = id ?? control.stemAt(view, x, y, slipPx(type))
    if (!near) return { kind: 'ground', view }
    return {
      kind: 'move',
      move: { kind: 'body', view, ids: selection.includes(near) ? selection : [near] },
      stem: near,
    }
  }

  const begin = (g: Gesture): void => {
    g.begun = true
    if (g.grip.kind !== 'move') return
    const { move } = g.grip
    const ids = move.kind === 'body' ? move.ids : [move.id]
    if (move.kind === 'body' && !useStudio.getState().selection.includes(ids[0] ?? '')) select(ids)
    host.style.cursor = 'grabbing'
    control.lift(ids)
  }

  /** Carries the gesture to where the pointer is. */
  const follow = (): void => {
    cancelAnimationFrame(frame)
    frame = 0
    const g = gesture
    if (!g) return
    if (g.grip.kind === 'place') return ghostAt(g.x, g.y)
    if (!g.begun) {
      if (Math.hypot(g.x - g.startX, g.y - g.startY) < clickPx(g.pointerType)) return
      begin(g)
    }
    if (g.grip.kind === 'ring') {
      turnTo(Math.round(g.turn + ringAngle(g.x, g.y) - ringAngle(g.startX, g.startY)))
    } else if (g.grip.kind === 'ground') {
      if (g.pointerType !== 'touch') control.set({ marquee: { from: [g.startX, g.startY], to: [g.x, g.y] } })
    } else {
      const { scale } = scene.layout
      const right = (g.x - g.startX) / scale
      const up = -(g.y - g.startY) / scale
      g.edit = editOf(g.document, g.grip.move, g.turn, right, up, g.whole)
      if (g.edit) preview(g.edit)
    }
  }

  const ghostAt = (x: number, y: number): void => {
    const { placing } = useStudio.getState()
    const { layout, shown, turn } = scene
    const inside = x >= 0 && y >= 0 && x <= layout.width && y <= layout.height
    const view = viewAt(layout, y)
    const ghost = placing && inside ? stemFor(shown.document, placing, view, turn, toView(layout, view, x, y)) : null
    control.set({ ghost })
  }

  const marqueeIds = (g: Gesture): string[] => {
    const { layout, stills } = scene
    const view = viewAt(layout, g.startY)
    const picture = stills.of(view)?.picture
    if (!picture) return []
    const base = view === 'elevation' ? layout.rimY : layout.planY
    const px = (x: number) => (x - layout.axisX) * layout.ratio - picture.frame.left * picture.frame.scale
    const py = (y: number) => (y - base) * layout.ratio + picture.frame.top * picture.frame.scale
    const [x0, x1] = [Math.min(g.startX, g.x), Math.max(g.startX, g.x)]
    const [y0, y1] = [Math.min(g.startY, g.y), Math.max(g.startY, g.y)]
    return stemIndicesIn(picture, px(x0), py(y0), px(x1), py(y1)).flatMap((i) => picture.document.stems[i]?.id ?? [])
  }

  const place = (g: Gesture): void => {
    ghostAt(g.x, g.y)
    const stem = scene.ghost
    control.set({ ghost: null })
    if (!stem) return
    perform({ do: 'add-stems', stems: [stem] })
    select([stem.id])
    say(placedWords(stem, useStudio.getState().units))
  }

  const clickOn = (g: Gesture): void => {
    change({ focused: '' })
    if (g.grip.kind === 'move' && g.grip.stem) {
      if (g.adds) select([g.grip.stem], 'toggle')
      else select([g.grip.stem])
    } else if (g.grip.kind === 'ground' && !g.adds) select([])
  }

  const end = (done: boolean): void => {
    const g = gesture
    if (!g) return
    if (done) follow()
    cancelAnimationFrame(frame)
    frame = 0
    gesture = null
    if (host.hasPointerCapture(g.pointerId)) host.releasePointerCapture(g.pointerId)
    host.style.cursor = ''
    const moved = g.grip.kind === 'move' && g.begun
    if (!done) {
      abandon()
      if (g.grip.kind === 'ring') turnTo(g.turn)
      control.set({ ghost: null, marquee: null })
    } else if (g.grip.kind === 'place') place(g)
    else if (!g.begun) clickOn(g)
    else if (g.grip.kind === 'ground' && scene.marquee) {
      select(marqueeIds(g), g.adds ? 'add' : 'only')
      control.set({ marquee: null })
    } else if (moved) settle(g.edit ? wordsOf(g.document, g.edit) : '')
    if (moved) control.lower()
  }

  const onDown = (e: PointerEvent): void => {
    if ((e.target as Element).closest('button, input, a')) return
    if (gesture) return end(false)
    if (!e.isPrimary || e.button !== 0) return
    const [x, y] = at(e)
    const { draft, document, turn } = useStudio.getState()
    if (draft) settle('stems moved')
    const grip = gripAt(x, y, e.pointerType)
    host.dataset.hand = 'pointer'
    onPress(viewAt(scene.layout, y))
    const common = { x, y, startX: x, startY: y, pointerId: e.pointerId, pointerType: e.pointerType }
    const keys = { whole: e.altKey, adds: e.shiftKey || e.ctrlKey || e.metaKey }
    gesture = { ...common, ...keys, grip, begun: false, document: draft ?? document, turn, edit: null }
    host.setPointerCapture(e.pointerId)
    control.set({ hover: '' })
    if (grip.kind === 'place') ghostAt(x, y)
  }
  const onMove = (e: PointerEvent): void => {
    const [x, y] = at(e)
    if (!gesture) {
      if (e.pointerType === 'touch') return
      const grip = gripAt(x, y, e.pointerType)
      host.style.cursor = CURSOR[grip.kind]
      host.dataset.over = grip.kind
      control.set({ hover: grip.kind === 'move' && grip.move.kind === 'body' ? (grip.stem ?? '') : '' })
      if (grip.kind === 'place') ghostAt(x, y)
      return
    }
    if (e.pointerId !== gesture.pointerId) return
    // The button was let go where we could not see it.
    if (e.buttons === 0) return end(true)
    gesture.x = x
    gesture.y = y
    gesture.whole = e.altKey
    if (!frame) frame = requestAnimationFrame(follow)
  }
  const onUp = (e: PointerEvent): void => {
    if (gesture?.pointerId !== e.pointerId) return
    const [x, y] = at(e)
    gesture.x = x
    gesture.y = y
    end(true)
  }
  const onLost = (e: PointerEvent): void => {
    if (gesture?.pointerId === e.pointerId) end(false)
  }
  const onLeave = (): void => {
    delete host.dataset.over
    if (!gesture) control.set({ hover: '', ghost: null })
  }
  const giveUp = (): void => end(false)
  const onKey = (e: KeyboardEvent): void => {
    host.dataset.hand = 'keys'
    if (e.key !== 'Escape' || !gesture) return
    e.preventDefault()
    e.stopPropagation()
    end(false)
  }
  // The page scrolls by a finger on empty ground; where something is taken hold of, it stays.
  const onTouch = (e: TouchEvent): void => {
    const touch = e.touches[0]
    if (!touch || (e.target as Element).closest('button, input, a')) return
    const [x, y] = at(touch)
    if (e.touches.length === 1 && gripAt(x, y, 'touch').kind !== 'ground') e.preventDefault()
  }

  // The press has put the focus on a view; the browser would take it away again.
  const onMouse = (e: MouseEvent): void => {
    if (!(e.target as Element).closest('button, input, a')) e.preventDefault()
  }

  const listeners = [
    ['mousedown', onMouse],
    ['pointerdown', onDown],
    ['pointermove', onMove],
    ['pointerup', onUp],
    ['pointercancel', onLost],
    ['lostpointercapture', onLost],
    ['pointerleave', onLeave],
  ] as const
  for (const [name, listener] of listeners) host.addEventListener(name, listener as EventListener)
  host.addEventListener('touchstart', onTouch, { passive: false })
  window.addEventListener('blur', giveUp)
  window.addEventListener('keydown', onKey, true)
  return (): void => {
    giveUp()
    for (const [name, listener] of listeners) host.removeEventListener(name, listener as EventListener)
    host.removeEventListener('touchstart', onTouch)
    window.removeEventListener('blur', giveUp)
    window.removeEventListener('keydown', onKey, true)
  }
}
