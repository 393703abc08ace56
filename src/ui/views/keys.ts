import { type Edit, newStemIds, type Point2 } from '../../arrangement/index.ts'
import { change, perform, previewMore, say, select, settle, turnTo, useStudio } from '../../state/index.ts'
import { shiftOf } from './drag.ts'
import type { ViewName } from './layout.ts'
import { stemFor } from './placing.ts'
import type { SceneControl } from './scene.ts'
import { placedWords, wordsOf } from './words.ts'

/** Steps of a key, mm and degrees. Ours. */
const STEP = 5
const FINE = 1
const TURN = 5
const TURN_FAR = 15

const WAYS: Record<string, Point2> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
}

export interface Pressed {
  key: string
  shift: boolean
  alt: boolean
  command: boolean
}

/**
 * Keys on a view. A held key is one step of the history: it ends with `release` (key up, or the focus leaves).
 */
export const createKeys = (control: SceneControl) => {
  let held: string | null = null
  const cross: Record<ViewName, Point2> = { elevation: [0, 120], plan: [0, -30] }

  const release = (): void => {
    if (held === null) return
    const words = held
    held = null
    settle(words)
  }

  const move = (view: ViewName, [dx, dy]: Point2, pressed: Pressed): boolean => {
    const { selection, turn, document } = useStudio.getState()
    const step = pressed.shift ? FINE : STEP
    // Alt and a side arrow belong to the browser.
    if (selection.length === 0 || (pressed.alt && dx !== 0)) return false
    const by = shiftOf(view, turn, dx * step, dy * step)
    // Alt with up and down goes along the eye: away in the elevation, higher in the plan.
    const deep = shiftOf('plan', turn, 0, dy * step)
    const along: typeof by = view === 'elevation' ? deep : [0, 0, dy * step]
    const edit: Edit = { do: 'shift-stems', ids: selection, by: pressed.alt ? along : by }
    held ??= wordsOf(document, edit)
    previewMore(edit)
    return true
  }

  const aim = (view: ViewName, [dx, dy]: Point2, pressed: Pressed): void => {
    const step = pressed.shift ? FINE : STEP
    cross[view] = [cross[view][0] + dx * step, cross[view][1] + dy * step]
    showCross(view)
  }
  const showCross = (view: ViewName): void => {
    const { placing, turn } = useStudio.getState()
    const ghost = placing && stemFor(control.scene.shown.document, placing, view, turn, cross[view])
    control.set({ ghost: ghost || null })
  }
  const place = (view: ViewName): void => {
    showCross(view)
    const stem = control.scene.ghost
    if (!stem) return
    perform({ do: 'add-stems', stems: [stem] })
    select([stem.id])
    say(placedWords(stem, useStudio.getState().units))
    showCross(view)
  }

  const stepThrough = (by: number): void => {
    const { document, selection, focused } = useStudio.getState()
    const { stems } = document
    if (stems.length === 0) return
    const now = stems.findIndex((s) => s.id === (focused || selection.at(-1)))
    const stem = stems[now < 0 ? (by > 0 ? 0 : stems.length - 1) : (now + by + stems.length) % stems.length]
    if (!stem) return
    select([stem.id])
    change({ focused: stem.id })
    const place = stems.indexOf(stem) + 1
    say(
      `Stem ${place} of ${stems.length}, ${wordsOf(document, { do: 'remove-stems', ids: [stem.id] }).replace(/ taken out$/, '')}, ${stem.role}.`,
    )
  }

  const stepOut = (): boolean => {
    const { placing, selection, phantom } = useStudio.getState()
    if (placing) {
      change({ placing: null })
      control.set({ ghost: null })
      say('Hand empty.')
    } else if (phantom) change({ phantom: null })
    else if (selection.length > 0) {
      select([])
      change({ focused: '' })
    } else return false
    return true
  }

  const onSelection = (make: (ids: string[]) => Edit): boolean => {
    const { selection } = useStudio.getState()
    if (selection.length === 0) return false
    release()
    perform(make(selection))
    return true
  }
  const duplicate = (): boolean => {
    const { document, selection } = useStudio.getState()
    const newIds = newStemIds(document, selection.length)
    const done = onSelection((ids) => ({ do: 'duplicate-stems', ids, newIds, by: [10, -10, 0] }))
    if (done) select(newIds)
    return done
  }

  /** @returns whether the key was ours */
  const press = (view: ViewName, pressed: Pressed): boolean => {
    const { key } = pressed
    const { placing, turn } = useStudio.getState()
    if (pressed.command) return false
    const way = WAYS[key]
    if (way && placing) {
      aim(view, way, pressed)
      return true
    }
    if (way) return move(view, way, pressed)
    if (key === 'PageUp') return move(view, [0, 1], { ...pressed, alt: true })
    if (key === 'PageDown') return move(view, [0, -1], { ...pressed, alt: true })
    if (key === 'Enter' && placing) {
      place(view)
      return true
    }
    if (key === 'Escape') {
      release()
      return stepOut()
    }
    if (pressed.alt) return false
    if (key === 'Delete' || key === 'Backspace') return onSelection((ids) => ({ do: 'remove-stems', ids }))
    if (key === 'd' || key === 'D') return duplicate()
    if (key === 'm' || key === 'M') return onSelection((ids) => ({ do: 'mirror-stems', ids, turn }))
    if (key === '[' || key === ']') {
      release()
      stepThrough(key === '[' ? -1 : 1)
      return true
    }
    const turns: Record<string, number> = {
      ',': -TURN,
      '.': TURN,
      '<': -TURN_FAR,
      '>': TURN_FAR,
      ';': -TURN_FAR,
      ':': TURN_FAR,
    }
    const by = turns[key]
    if (by === undefined) return false
    turnTo(turn + by)
    say(`Turned to ${Math.round(useStudio.getState().turn)}°.`)
    return true
  }

  return { press, release, enter: showCross, leave: () => control.set({ ghost: null }) }
}
export type Keys = ReturnType<typeof createKeys>
