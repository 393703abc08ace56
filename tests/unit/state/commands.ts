import { type Arrangement, type Edit, FORMS, newStemIds, ROLES, type Stem } from '../../../src/arrangement/index.ts'
import { PLANTS } from '../../../src/catalogue/index.ts'

/** A small generator of numbers, so that a failing run can be repeated by its seed (mulberry32, public domain). */
export const numbers = (seed: number): (() => number) => {
  let a = seed >>> 0
  return () => {
    a = (a + 0x6d2b79f5) | 0
    let t = Math.imul(a ^ (a >>> 15), 1 | a)
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296
  }
}

/** Any edit a person can make, chosen by `random`. */
export const anyEdit = (document: Arrangement, random: () => number): Edit => {
  const pick = <T>(from: readonly T[]): T => from[Math.floor(random() * from.length)]!
  const mm = (size: number) => Math.round((random() - 0.5) * 2 * size)
  const ids = document.stems.filter(() => random() < 0.2).map((s) => s.id)
  const one = document.stems.length > 0 ? [pick(document.stems).id] : []
  const stem = (id: string): Stem => ({
    id,
    plant: pick(PLANTS).id,
    role: pick(ROLES),
    colour:
      random() < 0.7 && document.palette.slots.length > 0
        ? { slot: Math.floor(random() * document.palette.slots.length) }
        : '#c0304a',
    openness: random(),
    mouth: [mm(30), mm(30)],
    tip: [mm(150), mm(150), Math.round(random() * 250)],
    bend: 0,
    piece: random() < 0.3 ? 'lateral' : 'whole',
  })
  const edits: (() => Edit)[] = [
    () => ({ do: 'add-stems', stems: newStemIds(document, 1 + Math.floor(random() * 3)).map(stem) }),
    () => ({ do: 'add-stems', stems: newStemIds(document, 1).map(stem) }),
    () => ({ do: 'remove-stems', ids: one }),
    () => ({ do: 'shift-stems', ids, by: [mm(40), mm(40), mm(40)], whole: random() < 0.3 }),
    () => ({ do: 'set-stems', ids: one, set: { openness: random(), bend: random() - 0.5 } }),
    () => ({ do: 'set-stems', ids, set: { plant: pick(PLANTS).id, head: random() < 0.5 ? null : 20 + random() * 80 } }),
    () => ({ do: 'lengthen-stems', ids, factor: 0.6 + random() }),
    () => ({ do: 'duplicate-stems', ids, newIds: newStemIds(document, ids.length), by: [20, 0, 0] }),
    () => ({ do: 'mirror-stems', ids, turn: random() * 360 }),
    () => ({ do: 'turn-arrangement', degrees: random() * 360 }),
    () => ({ do: 'set-vessel', set: { height: 60 + random() * 200, waterFill: random() } }),
    () => ({ do: 'set-title', title: `Title ${Math.floor(random() * 1000)}` }),
    () => ({ do: 'set-form', form: pick(FORMS) }),
    () => ({
      do: 'set-band',
      name: 'proportion.heightRatio',
      ends: random() < 0.3 ? null : [random(), random() < 0.5 ? null : 1 + random()],
    }),
    () => ({ do: 'set-setting', set: { copies: 1 + Math.floor(random() * 40) } }),
    () => ({ do: 'set-slot', index: 0, slot: { colour: '#336699', part: pick(ROLES) } }),
    () => ({
      do: 'set-palette',
      palette: {
        name: 'Other',
        slots: [
          { colour: '#aa3355', part: 'focal' },
          { colour: '#445566', part: 'greens' },
        ],
      },
    }),
  ]
  return pick(edits)()
}
