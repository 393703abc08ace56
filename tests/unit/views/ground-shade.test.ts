import { describe, expect, it } from 'vitest'
import type { Point2 } from '../../../src/arrangement/index.ts'
import { across } from '../../../src/ui/views/ground-shade.ts'

describe('shade on the ground', () => {
  const circle = Array.from({ length: 360 }, (_, i): Point2 => {
    const a = (i * Math.PI) / 180
    return [100 + 50 * Math.cos(a), 40 + 50 * Math.sin(a)]
  })

  it('runs from edge to edge of what casts it, and is nowhere else', () => {
    const [from, to] = across(circle, 40)!
    expect([from, to].map(Math.round)).toEqual([50, 150])
    const [left, right] = across(circle, 40 + 30)!
    expect([left, right].map(Math.round)).toEqual([60, 140])
    expect(across(circle, 95)).toBeNull()
    expect(across([], 0)).toBeNull()
  })
})
