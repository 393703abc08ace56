import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type Arrangement, applyEdit, type Stem, type Vessel } from '../../../src/arrangement/index.ts'
import { createEngine, type ReadingResult, readAll } from '../../../src/readings/index.ts'
import { readMechanics } from '../../../src/readings/mechanics.ts'
import { ontoPins } from '../../../src/readings/mend-stems.ts'
import { sketched } from './generated.ts'
import { ballStandins, bowl, design, mound, resolve, stem } from './made.ts'

const engine = createEngine(ballStandins)
const mechanics = (d: Arrangement, advice = false): ReadingResult =>
  readAll(resolve(d), { engine, advice }).find((r) => r.id === 'mechanics')!
const loose = (d: Arrangement): readonly string[] => mechanics(d).values.unsupported as string[]
const number = (d: Arrangement, key: string): number => mechanics(d).values[key] as number
const inVessel = (stems: Stem[], over: Partial<Vessel>): Arrangement => design(stems, { vessel: bowl(over) })

const BUD: Partial<Vessel> = { width: 40, depth: 40, height: 160, wall: 3, mechanics: 'none' }

describe('a person asks whether the stems stay where they are drawn', () => {
  it('a rose upright in a bud vase stays, one in the middle of an open bowl falls to the rim', () => {
    const rose = [stem('rose', [0, 0, 160])]
    expect(loose(inVessel(rose, BUD))).toEqual([])
    expect(loose(inVessel(rose, { mechanics: 'none' }))).toEqual(['rose'])
    expect(loose(inVessel(rose, { mechanics: 'tape-grid' }))).toEqual([])
    expect(loose(inVessel(rose, { mechanics: 'netting' }))).toEqual([])
  })
  it('a stem thicker than the neck does not go in, and is told by its name', () => {
    const amaryllis = (width: number, over: Partial<Vessel> = {}) =>
      inVessel([stem('amaryllis', [0, 0, 200])], { ...BUD, width, depth: width, ...over })
    // A ball's stem is 5 mm thick, the walls 3.
    const narrow = mechanics(amaryllis(10), true)
    expect([narrow.values.unsupported, narrow.values.unsupportedWhy]).toEqual([['amaryllis'], ['neck']])
    expect(narrow.values.heldShare).toBe(0)
    expect(narrow.marks[0]).toEqual({ kind: 'stems', ids: ['amaryllis'], label: 'does not go into the neck' })
    expect(narrow.because!.main.rule).toMatch(/1 is thicker than the neck of the vessel and does not go in\.$/)
    expect(narrow.advice[0]!.text).toMatch(
      /^1, a ball, does not go into the neck: it is 4 mm wide, the stem 5 mm\. Set it in a vessel like this one, 15 mm wide at the mouth: then none is left\.$/,
    )
    expect(narrow.advice.map((a) => a.text).join()).not.toMatch(/circles pack|neighbours/)
    expect(loose(applyEdit(amaryllis(10), narrow.advice[0]!.edit!))).toEqual([])
    // Whatever would hold it, and however wide the mouth is over the neck.
    for (const held of ['netting', 'foam', 'pin-holder', 'tape-grid'] as const)
      expect(loose(amaryllis(10, { mechanics: held })), held).toEqual(['amaryllis'])
    const funnel: Partial<Vessel> = {
      profile: [
        [0, 1],
        [0.6, 0.25],
        [1, 1],
      ],
    }
    expect(loose(amaryllis(40, funnel))).toEqual(['amaryllis'])
    expect(loose(amaryllis(60, funnel))).toEqual([])
    // A slot is as wide as its narrow side.
    expect(loose(amaryllis(90, { plan: 'rectangular', depth: 10 }))).toEqual(['amaryllis'])
  })
  it('the wider the neck, the more stems go in, and a stem goes in exactly where it is no thicker', () => {
    const out = (width: number) => loose(inVessel([stem('a', [0, 0, 200])], { ...BUD, width, depth: width })).length
    for (const width of [8, 9, 10, 10.9, 11.1, 12, 20]) expect(out(width), `${width}`).toBe(width - 6 < 5 ? 1 : 0)
  })
  it('ivy that runs through the table is named, by how far; ivy that lies on it is let be', () => {
    // The vessel is 90 mm high; a ball of greens is one leaf, its middle at the tip.
    const ivy = (z: number, over: Partial<Stem> = {}) =>
      mechanics(
        inVessel([stem('ivy', [160, 0, z], { mouth: [60, 0], plant: 'green', ...over }), stem('a', [0, 0, 120])], {}),
        true,
      )
    const lies = ivy(-90)
    expect([lies.values.throughTable, lies.values.underTable_mm]).toEqual([[], 0])
    const through = ivy(-156)
    expect(through.values.throughTable).toEqual(['ivy'])
    expect(through.values.underTable_mm).toBeCloseTo(66, 3)
    expect(through.marks[0]).toEqual({ kind: 'stems', ids: ['ivy'], label: 'through the table' })
    const { text, edit } = through.advice.find((a) => /table/.test(a.text))!
    expect(text).toBe(
      '1, a green, runs through the table, by up to 66 mm. Raise it until it lies on it: then none is left.',
    )
    expect(
      mechanics(applyEdit(design([stem('ivy', [160, 0, -156], { mouth: [60, 0], plant: 'green' })]), edit!)).values
        .throughTable,
    ).toEqual([])
    // A bloom does not lie flat: its lower edge is what meets the table.
    expect(ivy(-90, { plant: 'ball', head: 60 }).values.underTable_mm).toBeCloseTo(30, 0)
  })
  it('the deeper through the table, the lower the score, with no step', () => {
    const scores = Array.from({ length: 120 }, (_, i) => {
      const hang = stem('ivy', [160, 0, -93 - 0.25 * i], { mouth: [60, 0], plant: 'green' })
      engine.update(resolve(inVessel([hang, stem('b', [0, 0, 120]), stem('c', [20, 0, 120])], {})))
      return readMechanics(engine).score!
    })
    expect(scores[0]).toBe(100)
    expect(scores.at(-1)).toBeLessThan(40)
    scores.slice(1).forEach((score, i) => {
      expect(score).toBeLessThanOrEqual(scores[i]! + 1e-9)
      expect(scores[i]! - score).toBeLessThan(8)
    })
  })
  it('where all of a few stems fall, they are tied as a posy, not each braced on the others', () => {
    const cup: Partial<Vessel> = { width: 44, depth: 44, height: 45, wall: 2, mechanics: 'none' }
    const posy = mechanics(
      inVessel(
        Array.from({ length: 4 }, (_, i) => stem(`p${i}`, [8 * i - 12, 0, 60])),
        cup,
      ),
      true,
    )
    expect(posy.values.unsupported).toHaveLength(4)
    const words = posy.advice.find((a) => !a.edit)!.text
    expect(words).toMatch(/Tie them as a posy, which holds itself, and set it in as one\.$/)
    expect(words).not.toMatch(/neighbours/)
  })
  it('netting holds what a grid of tape lets slip', () => {
    const leaning = [stem('a', [60, 0, 120])]
    expect(loose(inVessel(leaning, { mechanics: 'tape-grid' }))).toEqual(['a'])
    expect(loose(inVessel(leaning, { mechanics: 'netting' }))).toEqual([])
  })
  it('says of how many it is so, and why', () => {
    const d = inVessel(
      [stem('a', [90, 0, 120], { mouth: [80, 0] }), stem('b', [330, 0, 90], { mouth: [20, 0] }), stem('c', [0, 0, 90])],
      { mechanics: 'netting' },
    )
    const { rule } = mechanics(d).because!.main
    expect(rule).toMatch(/1 leans farther than the mechanics hold and 1 crosses outside the mouth\.$/)
    expect(mechanics(inVessel([stem('c', [0, 0, 90])], {})).because!.main.rule).toMatch(/of all stems\.$/)
  })
  it('the farther over the rim, the sooner even netting lets go', () => {
    const out = (x: number) => loose(inVessel([stem('a', [x, 0, 60], { mouth: [30, 0] })], { mechanics: 'netting' }))
    const gone = [40, 120, 300, 700].map((x) => out(x).length)
    expect(gone).toEqual([...gone].sort())
    expect([gone[0], gone.at(-1)]).toEqual([0, 1])
  })
  it('a pin-holder holds only what ends on its pins', () => {
    const at = (x: number) => loose(inVessel([stem('a', [x, 0, 150], { mouth: [x, 0] })], { mechanics: 'pin-holder' }))
    expect(at(0)).toEqual([])
    expect(at(58)).toEqual(['a'])
  })
  it('a rose that leans on the rim of a bud vase comes to rest about as drawn; one that leans far slides down steeper', () => {
    const leans = (x: number, z: number) =>
      mechanics(inVessel([stem('rose', [x, 0, z], { mouth: [15, 0] })], BUD)).values.unsupportedWhy
    expect(leans(45, 160)).toEqual([])
    expect(leans(100, 90)).toEqual(['slides'])
  })
  it('in a tall vase of glass it says to tape a grid, not to show netting through it', () => {
    const glass = { width: 110, depth: 110, height: 220, wall: 4, material: 'glass', mechanics: 'none' } as const
    const upright = Array.from({ length: 7 }, (_, i) =>
      stem(`s${i}`, [3 * i - 9, 0, 200 + 3 * i], { mouth: [3 * i - 9, 0] }),
    )
    const reading = mechanics(inVessel(upright, glass), true)
    expect(reading.values.unsupported).toHaveLength(7)
    expect(reading.advice[0]!.text).toMatch(/Tape a grid over the dry rim/)
    expect(reading.advice[0]!.text).not.toMatch(/netting/)
    expect(loose(applyEdit(inVessel(upright, glass), { do: 'set-vessel', set: { mechanics: 'tape-grid' } }))).toEqual(
      [],
    )
  })
  it('one that misses the pins is moved onto them, its lean kept', () => {
    const d = inVessel([stem('a', [56, 0, 130], { mouth: [56, 0] }), stem('b', [-38, 42, 110], { mouth: [-38, 42] })], {
      mechanics: 'pin-holder',
    })
    const before = mechanics(d)
    expect(before.values.unsupportedWhy).toEqual(['pins', 'pins'])
    const moved = applyEdit(d, ontoPins(d.vessel, resolve(d).stems))
    expect(loose(moved)).toEqual([])
    expect(mechanics(moved).values.leanMost_deg).toBeCloseTo(before.values.leanMost_deg as number, 3)
    expect(mechanics(d, true).advice[0]!.text).toMatch(/would not stay as drawn: most miss the pins\./)
  })
  it('one that hangs too far out is recut shorter or brought nearer, and then it stays', () => {
    const d = inVessel([stem('far', [330, 0, 90], { mouth: [20, 0] }), ...mound(6, () => ({ mouth: [0, 0] }))], {
      mechanics: 'netting',
    })
    const reading = mechanics(d, true)
    expect(reading.values.unsupportedWhy).toEqual(['far'])
    const { edit, stems, after } = reading.advice[0]!
    expect(stems).toEqual(['far'])
    expect(loose(applyEdit(d, edit!))).toEqual([])
    expect(after!.scores.mechanics!).toBeGreaterThan(reading.score!)
  })
  it('a stem that crosses outside the mouth is held by nothing', () => {
    expect(loose(inVessel([stem('a', [90, 0, 120], { mouth: [80, 0] })], { mechanics: 'foam' }))).toEqual(['a'])
  })
  it('in a shallow film of water ends stand dry, and more water reaches them', () => {
    const dry = (waterFill: number) =>
      (
        mechanics(
          inVessel(
            mound(10, () => ({ mouth: [0, 0] })),
            { ...BUD, waterFill },
          ),
        ).values.dryEnds as string[]
      ).length
    const counts = [0.05, 0.3, 0.6, 0.95].map(dry)
    expect(counts).toEqual([...counts].sort((a, b) => b - a))
    expect(counts[0]).toBeGreaterThan(counts.at(-1)!)
    expect(mechanics(inVessel(mound(10), { mechanics: 'foam', waterFill: 0 })).values.dryEnds).toEqual([])
  })
  it('a head that hangs into the water is named', () => {
    const sunk = design([stem('deep', [0, 0, -50], { head: 30 }), stem('fine', [0, 0, 100])])
    expect(mechanics(sunk).values.underWater).toEqual(['deep'])
  })
  it('a bloom that dips its lower half into the water is named, one that clears it is not, one outside the wall is not', () => {
    // The rim is 17 over the water: 0.8 of 86 inside.
    const at = (x: number, z: number) => mechanics(design([stem('a', [x, 0, z], { head: 60 })])).values.underWater
    expect(at(0, 5)).toEqual(['a'])
    expect(at(0, 20)).toEqual([])
    expect(at(120, -30)).toEqual([])
  })
  it('two that cross in one place are told, and it costs nothing', () => {
    const two = (x: number) => mechanics(design([stem('a', [0, 0, 120]), stem('b', [20, 0, 130], { mouth: [x, 0] })]))
    expect(two(2).values.sharedPlace).toEqual(['a', 'b'])
    expect(two(6).values.sharedPlace).toEqual([])
    expect(two(2).score).toBeCloseTo(two(6).score!, 9)
  })
  it('it marks what to see to first, and the neck where that is too full', () => {
    const kinds = (d: Arrangement) => mechanics(d).marks.map((m) => m.label)
    const fine = inVessel(mound(3), {})
    expect(kinds(fine)).toEqual(['stems need ⌀ 11 mm of 132 mm'])
    const dry = inVessel([stem('a', [0, 0, 150])], { waterFill: 0 })
    expect(kinds(dry)).toEqual(['end out of water'])
    const out = inVessel([stem('a', [90, 0, 120], { mouth: [80, 0] }), stem('b', [0, 0, 150])], { waterFill: 0 })
    expect(kinds(out)).toEqual(['would not stay'])
    expect(mechanics(out).marks[0]).toMatchObject({ kind: 'stems', ids: ['a'] })
    const crammed = inVessel([...mound(40), stem('a', [60, 0, 120], { mouth: [50, 0] })], BUD)
    expect(kinds(crammed).at(-1)).toMatch(/^stems need/)
    expect(kinds(crammed)).toHaveLength(2)
  })
  it('thirty stems crammed into a bud vase crowd its neck, and it says which to leave out', () => {
    const many = Array.from({ length: 30 }, (_, i) =>
      stem(`s${i}`, [3 * (i % 6) - 8, 3 * Math.floor(i / 6) - 6, 150 + i], { mouth: [2 * (i % 6) - 5, 0] }),
    )
    const reading = mechanics(inVessel(many, BUD), true)
    expect(reading.values.crowding).toBeGreaterThan(0.7)
    const gone = reading.advice.find((a) => a.edit?.do === 'remove-stems')!
    const after = mechanics(applyEdit(inVessel(many, BUD), gone.edit!))
    expect(after.values.crowding).toBeLessThanOrEqual(0.7)
    expect(after.score!).toBeGreaterThan(reading.score!)
  })
  it('stems loose in an open bowl are told to take netting, and then they stay', () => {
    const open = inVessel(mound(12), { mechanics: 'none' })
    const reading = mechanics(open, true)
    expect(reading.advice[0]!.text).toMatch(/netting \(gloves/)
    const netted = applyEdit(open, { do: 'set-vessel', set: { mechanics: 'netting' } })
    expect(loose(open).length).toBe(12)
    expect(loose(netted).length).toBeLessThan(3)
  })
  it('names the sharp wire, the dust and the pins where they are used, and defers to the venue', () => {
    const trust = (mechanics_: Vessel['mechanics']) =>
      mechanics(inVessel(mound(3), { mechanics: mechanics_ })).because!.trust
    expect(trust('netting')).toMatch(/gloves/)
    expect(trust('foam')).toMatch(/dust/)
    expect(trust('pin-holder')).toMatch(/sharp/)
    for (const m of ['netting', 'foam', 'pin-holder', 'tape-grid', 'none'] as const) expect(trust(m)).toMatch(/venue/)
  })
  it('an empty vessel has nothing to hold', () => {
    expect(mechanics(design([])).score).toBeNull()
    expect(mechanics(design([])).values.crowding).toBe(0)
  })
  it('walls that meet leave no mouth to speak of', () => {
    const shut = mechanics(
      inVessel([stem('a', [0, 0, 100])], {
        profile: [
          [0, 1],
          [1, 0.05],
        ],
      }),
    )
    expect([shut.score, shut.values.crowding]).toEqual([null, null])
    expect(shut.notApplicable).toMatch(/walls close/)
  })
  it('five hundred stems are read: all numbers finite, every stem named at most once in a list', () => {
    const { values, score } = mechanics(inVessel(mound(500), { width: 300, depth: 300, height: 200 }))
    expect(score).toBeGreaterThan(0)
    for (const v of Object.values(values)) {
      if (typeof v === 'number') expect(Number.isFinite(v)).toBe(true)
      if (Array.isArray(v) && v !== values.unsupportedWhy) expect(new Set(v).size).toBe(v.length)
    }
    expect(values.unsupportedWhy).toHaveLength((values.unsupported as string[]).length)
  })
})

describe('a band, just inside and just outside', () => {
  const score = (d: Arrangement): number => mechanics(d).score!
  it('crowding: seven tenths is full marks, more is not', () => {
    // Seven stems of 5 mm need 15 mm; the neck is 15 / √share across.
    const seven = Array.from({ length: 7 }, (_, i) => stem(`s${i}`, [0, 0, 150], { mouth: [0, 0] }))
    const neck = (share: number) => {
      const width = 15 / Math.sqrt(share) + 6
      return inVessel(seven, { ...BUD, width, depth: width, height: 160, mechanics: 'foam' })
    }
    expect(number(neck(0.69), 'crowding')).toBeCloseTo(0.69, 6)
    expect(score(neck(0.69))).toBeCloseTo(100, 6)
    expect(score(neck(0.72))).toBeLessThan(100)
    expect(score(neck(0.72))).toBeGreaterThan(95)
  })
  it('support: one of twenty may be braced, one of ten not', () => {
    const some = (good: number) =>
      inVessel([stem('bad', [0, 0, 150], { mouth: [58, 0] }), ...mound(good, () => ({ mouth: [0, 0] }))], {
        mechanics: 'pin-holder',
      })
    const upright = (good: number) => ({
      ...some(good),
      stems: some(good).stems.map((s, i) => (i > 0 ? { ...s, tip: [0, 0, 100 + i] as Stem['tip'] } : s)),
    })
    expect(loose(upright(19))).toEqual(['bad'])
    expect(score(upright(19))).toBeCloseTo(100, 6)
    expect(score(upright(9))).toBeLessThan(100)
  })
  it('water: every end in it is full marks, an end that is dry is not', () => {
    const dish = (waterFill: number) => inVessel([stem('a', [0, 0, 150])], { mechanics: 'netting', waterFill })
    expect(score(dish(0.3))).toBeCloseTo(100, 6)
    expect(score(dish(0))).toBeLessThan(100)
  })
  it('leaves: none under water is full marks, one head under it is not', () => {
    const hung = (z: number) => inVessel([stem('a', [0, 0, z], { head: 30 }), stem('b', [0, 0, 120])], {})
    expect(score(hung(20))).toBeCloseTo(100, 6)
    expect(score(hung(-50))).toBeLessThan(100)
  })
})

describe('whatever is sketched', () => {
  const VESSELS = ['netting', 'foam', 'pin-holder', 'tape-grid', 'none'] as const
  const PLANS = ['round', 'oval', 'rectangular'] as const
  it('nothing is NaN, and the order of stems, a turn that the vessel allows and a mirror change nothing', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 1e6 }),
        fc.constantFrom(...VESSELS),
        fc.constantFrom(...PLANS),
        (seed, held, plan) => {
          const base = sketched(seed)
          const { width } = base.vessel
          const depth = plan === 'round' ? width : 0.7 * width
          const d = { ...base, vessel: { ...base.vessel, plan, depth, mechanics: held } }
          const read = mechanics(d)
          for (const v of Object.values(read.values)) if (typeof v === 'number') expect(Number.isFinite(v)).toBe(true)
          const others = [
            { ...d, stems: [...d.stems].reverse() },
            applyEdit(d, { do: 'turn-arrangement', degrees: plan === 'round' ? 90 : 180 }),
            applyEdit(d, { do: 'mirror-stems', ids: d.stems.map((s) => s.id), turn: 0 }),
          ]
          for (const other of others) {
            const after = mechanics(other)
            for (const key of ['unsupported', 'dryEnds', 'sharedPlace'])
              expect([...(after.values[key] as string[])].sort()).toEqual([...(read.values[key] as string[])].sort())
            expect(after.values.crowding).toBeCloseTo(read.values.crowding as number, 9)
            expect(after.score ?? -1).toBeCloseTo(read.score ?? -1, 6)
          }
        },
      ),
      { numRuns: 40 },
    )
  })
  it('more water never leaves more ends dry, nor fewer leaves under it', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1e6 }), (seed) => {
        const base = sketched(seed)
        const lists = [0.1, 0.5, 0.9].map(
          (waterFill) => mechanics({ ...base, vessel: { ...base.vessel, waterFill } }).values,
        )
        const dry = lists.map((v) => (v.dryEnds as string[]).length)
        const under = lists.map((v) => (v.underWater as string[]).length)
        expect(dry).toEqual([...dry].sort((a, b) => b - a))
        expect(under).toEqual([...under].sort((a, b) => a - b))
      }),
      { numRuns: 15 },
    )
  })
})
