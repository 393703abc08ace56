import { describe, expect, it } from 'vitest'
import { type Arrangement, applyEdit } from '../../../src/arrangement/index.ts'
import { resolveArrangement } from '../../../src/geometry/index.ts'
import { createEngine, READING_NAMES, type ReadingResult, readAll } from '../../../src/readings/index.ts'
import { BAD } from './bad-designs.ts'

const engine = createEngine()
const read = (d: Arrangement): ReadingResult[] => readAll(resolveArrangement(d), { engine })
const MOST_STEPS = 10
/** Harmony has no good end, so nobody follows it to be better. */
const judged = (r: ReadingResult): boolean => r.score !== null && r.id !== 'palette-harmony'
const worst = (readings: ReadingResult[]): number => Math.min(...readings.filter(judged).map((r) => r.score!))

describe('a learner who does what the advice says, and nothing else', () => {
  it.each(BAD)('%s: each step is worth what was foretold, and the worst reading ends higher', (_what, make) => {
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
  })
})
