import { describe, expect, it } from 'vitest'
import { type Arrangement, applyEdit } from '../../../src/arrangement/index.ts'
import { resolveArrangement } from '../../../src/geometry/index.ts'
import { createEngine, READING_NAMES, type ReadingResult, readAll } from '../../../src/readings/index.ts'
import { BAD } from './bad-designs.ts'

const engine = createEngine()
const read = (d: Arrangement): ReadingResult[] => readAll(resolveArrangement(d), { engine })
const MOST_STEPS = 10
/** Where the worst reading ends by advice alone, points; for most, nearly as wanted. */
const ENDS: Record<string, number> = {
  // Ten tall stems in a narrow vessel stay wide for it: a wider one is said, and not bought for them.
  'one-sided and nearly dry': 65,
}
/** Harmony has no good end, so nobody follows it to be better. */
const judged = (r: ReadingResult): boolean => r.score !== null && r.id !== 'palette-harmony'
const worst = (readings: ReadingResult[]): number => Math.min(...readings.filter(judged).map((r) => r.score!))

describe('a learner who does what the advice says, and nothing else', () => {
  it.each(BAD)('%s: each step is worth what was foretold, and the worst reading ends high', (what, make) => {
    let design = make()
    let readings = read(design)
    const before = worst(readings)
    let steps = 0
    for (; steps < MOST_STEPS; steps++) {
      const next = readings
        .filter((r) => judged(r) && r.score! < 95 && r.advice.some((a) => a.edit))
        .sort((a, b) => a.score! - b.score!)[0]
      if (!next) break
      const advice = next.advice.find((a) => a.edit)!
      design = applyEdit(design, advice.edit!)
      const after = read(design)
      for (const { id, score } of after)
        if (score !== null && advice.after!.scores[id] !== undefined)
          expect(score, `${id} after: ${advice.text}`).toBeCloseTo(advice.after!.scores[id]!, 6)
      expect(after.find((r) => r.id === next.id)!.score!).toBeGreaterThan(next.score!)
      for (const { id, score } of readings.filter(judged)) {
        const now = after.find((r) => r.id === id)!.score!
        if (!advice.text.includes(`“${READING_NAMES[id]}” ${(score! - now).toFixed(0)} points`))
          expect(now, `${id} after: ${advice.text}`).toBeGreaterThanOrEqual(score! - 2)
      }
      readings = after
    }
    expect(steps).toBeGreaterThan(0)
    expect(worst(readings)).toBeGreaterThan(before)
    expect(worst(readings)).toBeGreaterThanOrEqual(ENDS[what] ?? 85)
  })
})

const adviceOf = (what: string, id: ReadingResult['id']) => {
  const design = BAD.find(([name]) => name === what)![1]()
  const { advice } = read(design).find((r) => r.id === id)!
  return { design, advice, first: applyEdit(design, advice[0]!.edit!) }
}

describe('what a florist would do at once', () => {
  it('a bare mouth is covered by one ring of greens', () => {
    const { design, advice, first } = adviceOf('a low bowl with gaps', 'negative-space')
    expect(advice[0]!.text).toMatch(/^The mouth lies bare: set a ring of \w+ stems of italian ruscus low round the rim/)
    const news = first.stems.slice(design.stems.length)
    expect(news.length).toBeGreaterThan(3)
    expect(new Set(news.map((s) => s.plant))).toEqual(new Set(['ruscus-italian']))
    // On all sides: in no third of the way round is none.
    for (let third = 0; third < 3; third++)
      expect(news.some(({ tip: [x, y] }) => Math.floor((Math.atan2(y, x) / Math.PI + 1) * 1.5) % 3 === third)).toBe(
        true,
      )
    const after = read(first).find((r) => r.id === 'negative-space')!
    // Seven tenths lay bare; slim sprays leave a fifth at most.
    expect(after.values.mouthShowing as number).toBeLessThanOrEqual(0.2)
    expect(after.score!).toBeGreaterThanOrEqual(90)
  })
  it('a design without greens gets them from the catalogue', () => {
    const { first, design } = adviceOf('clashing colours on a trough', 'negative-space')
    const news = first.stems.slice(design.stems.length)
    expect(news.length).toBeGreaterThan(3)
    for (const s of news) expect([s.plant, s.role]).toEqual(['salal', 'greens'])
  })
  it('an over-crowded bud vase is thinned at once', () => {
    const { design, advice, first } = adviceOf('a bud vase over-filled', 'proportion')
    expect(advice[0]!.text).toMatch(
      /^14 stems are too many for a mouth so narrow: take (nine|eleven) stems of rose out/,
    )
    const roses = first.stems.filter((s) => s.plant === 'rose')
    expect([3, 5]).toContain(roses.length)
    const ratio = read(first).find((r) => r.id === 'proportion')!.values.heightRatio as number
    expect(ratio).toBeGreaterThanOrEqual(1.5)
    expect(ratio).toBeLessThan(1.7)
    expect(design.stems).toHaveLength(14)
  })
  it('a mound all of one height is cut to a dome at once', () => {
    const { advice } = adviceOf('a mound all of one height', 'visual-balance')
    const readings = read(BAD.find(([name]) => name === 'a mound all of one height')![1]())
    const all = [...advice, ...readings.flatMap((r) => r.advice)].map((a) => a.text)
    expect(all.some((text) => /dome/.test(text))).toBe(true)
  })
  it('two steps that only together harm nothing are one piece of advice', () => {
    const { advice, first } = adviceOf('a crescent that leans out', 'stability')
    expect(advice[0]!.text).toMatch(/That alone would harm “Hold of the stems”, so at once: /)
    expect(advice[0]!.edit!.do).toBe('many')
    const [before, after] = [read(BAD.find(([name]) => name === 'a crescent that leans out')![1]()), read(first)]
    for (const was of before.filter(judged))
      expect(after.find((r) => r.id === was.id)!.score!, was.id).toBeGreaterThanOrEqual(was.score! - 2)
  })
})
