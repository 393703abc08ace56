import { beforeEach, describe, expect, it } from 'vitest'
import { newArrangement, writeArrangement } from '../../../src/arrangement/index.ts'
import { resolveArrangement } from '../../../src/geometry/index.ts'
import {
  abandon,
  perform,
  preview,
  previewMore,
  redo,
  resetStudio,
  select,
  settle,
  showDesign,
  shownOf,
  turnTo,
  UNDO_LIMIT,
  undo,
  useStudio,
} from '../../../src/state/index.ts'
import { stemList } from '../../../src/stem-list/index.ts'
import { promise } from '../../promise.ts'
import { anyEdit, numbers } from './commands.ts'

const now = () => writeArrangement(useStudio.getState().document)
const steps = () => useStudio.temporal.getState().pastStates.length
const rose = (id: string) => ({
  id,
  plant: 'rose',
  role: 'focal' as const,
  colour: '#c0304a',
  openness: 0.8,
  mouth: [0, 0] as [number, number],
  tip: [0, 0, 120] as [number, number, number],
  bend: 0,
  piece: 'whole' as const,
})

describe('undo', () => {
  beforeEach(() => {
    resetStudio()
    showDesign('d', newArrangement())
  })

  it('a drag of fifty moves with seven stems is one step, and one undo puts all of them back', () => {
    perform({ do: 'add-stems', stems: ['a', 'b', 'c', 'd', 'e', 'f', 'g'].map(rose) })
    const before = now()
    const ids = useStudio.getState().document.stems.map((s) => s.id)
    for (let i = 1; i <= 50; i++) preview({ do: 'shift-stems', ids, by: [i, 0, i / 2] })
    settle('7 stems moved')
    expect(steps()).toBe(2)
    expect(now()).not.toBe(before)
    undo()
    expect(now()).toBe(before)
    expect(steps()).toBe(1)
  })
  it('a band of one’s own is one step, and so is going back to the table with several', () => {
    const before = now()
    perform({ do: 'set-band', name: 'proportion.heightRatio', ends: [1, 1.5] })
    perform({ do: 'set-band', name: 'stability.tippingAngle_deg', ends: [20, null] })
    const own = now()
    expect(steps()).toBe(2)
    perform({
      do: 'many',
      label: 'bands of the table taken back',
      edits: ['proportion.heightRatio', 'stability.tippingAngle_deg'].map((name) => ({
        do: 'set-band',
        name,
        ends: null,
      })),
    })
    expect(now()).toBe(before)
    undo()
    expect(now()).toBe(own)
    undo()
    undo()
    expect(now()).toBe(before)
    redo()
    expect(useStudio.getState().document.bands).toEqual({ 'proportion.heightRatio': [1, 1.5] })
  })

  it('a held key is one step', () => {
    perform({ do: 'add-stems', stems: [rose('a')] })
    for (let i = 0; i < 12; i++) previewMore({ do: 'shift-stems', ids: ['a'], by: [5, 0, 0] })
    settle('rose moved')
    expect(useStudio.getState().document.stems[0]?.tip[0]).toBe(60)
    expect(steps()).toBe(2)
    undo()
    expect(useStudio.getState().document.stems[0]?.tip[0]).toBe(0)
  })

  it('Escape in a drag leaves the document and both histories as they were', () => {
    perform({ do: 'add-stems', stems: [rose('a')] })
    perform({ do: 'set-title', title: 'Other' })
    undo()
    const before = now()
    const future = useStudio.temporal.getState().futureStates.length
    preview({ do: 'shift-stems', ids: ['a'], by: [9, 9, 9] })
    abandon()
    expect(now()).toBe(before)
    expect(steps()).toBe(1)
    expect(useStudio.temporal.getState().futureStates.length).toBe(future)
  })

  it('selecting, turning and drags that change nothing leave no trace, and redo stays possible', () => {
    perform({ do: 'add-stems', stems: [rose('a')] })
    perform({ do: 'set-title', title: 'Other' })
    undo()
    select(['a'])
    turnTo(45)
    preview({ do: 'shift-stems', ids: ['a'], by: [0, 0, 0] })
    settle('nothing')
    perform({ do: 'remove-stems', ids: ['not there'] })
    expect(steps()).toBe(1)
    redo()
    expect(useStudio.getState().document.title).toBe('Other')
  })

  it('names what it takes back', () => {
    perform({ do: 'add-stems', stems: [rose('a')] })
    perform({ do: 'shift-stems', ids: ['a'], by: [10, 0, 0] })
    expect(useStudio.getState().lastDone).toMatch(/moved/)
    undo()
    expect(useStudio.getState().message).toMatch(/^Undone: .*moved/)
    expect(useStudio.getState().lastDone).not.toMatch(/moved/)
  })

  it('what is taken out is no longer selected', () => {
    perform({ do: 'add-stems', stems: [rose('a'), rose('b')] })
    select(['a', 'b'])
    perform({ do: 'remove-stems', ids: ['a'] })
    expect(useStudio.getState().selection).toEqual(['b'])
  })

  it('goes back a thousand steps and more', () => {
    perform({ do: 'add-stems', stems: [rose('a')] })
    const before = now()
    for (let i = 0; i < 1200; i++) perform({ do: 'shift-stems', ids: ['a'], by: [1, 0, 0] })
    const after = now()
    for (let i = 0; i < 1200; i++) undo()
    expect(now()).toBe(before)
    for (let i = 0; i < 1200; i++) redo()
    expect(now()).toBe(after)
    expect(UNDO_LIMIT).toBeGreaterThanOrEqual(1000)
  })

  it('R3: any script of commands comes back exactly, step by step, and forth again', () => {
    const seeds = process.env.SOAK ? 2000 : 200
    let made = 0
    for (let seed = 1; seed <= seeds; seed++) {
      resetStudio()
      showDesign('d', newArrangement())
      const random = numbers(seed)
      const states = [now()]
      for (let i = 0; i < 100; i++) {
        const before = useStudio.getState().document
        const edit = anyEdit(before, random)
        if (random() < 0.3) {
          preview(edit)
          if (random() < 0.2) abandon()
          else settle('a gesture')
        } else perform(edit)
        if (useStudio.getState().document !== before) states.push(now())
      }
      made += states.length - 1
      for (let i = states.length - 2; i >= 0; i--) {
        undo()
        expect(now(), `seed ${seed}, back to step ${i}`).toBe(states[i])
      }
      for (let i = 1; i < states.length; i++) {
        redo()
        expect(now(), `seed ${seed}, forth to step ${i}`).toBe(states[i])
      }
    }
    expect(made).toBeGreaterThan(seeds * 50)
    promise(`R3 undo returns exactly: ${seeds} seeds x 100 commands, 0 failures`)
  })

  it('R4: list, views and document come from the same document after every command', () => {
    const seeds = 20
    for (let seed = 1; seed <= seeds; seed++) {
      resetStudio()
      showDesign('d', newArrangement())
      const random = numbers(seed * 7919)
      for (let i = 0; i < 60; i++) {
        perform(anyEdit(useStudio.getState().document, random))
        const shown = shownOf(useStudio.getState())
        const live = stemList(resolveArrangement(shown))
        const fresh = stemList(resolveArrangement(structuredClone(shown)))
        expect(live).toEqual(fresh)
        expect(live.reduce((n, r) => n + r.pieces, 0)).toBe(shown.stems.length)
      }
    }
    promise(`R4 the list is always that of the document: ${seeds} seeds x 60 commands, 0 failures`)
  })
})
