import { describe, expect, it } from 'vitest'
import { newArrangement } from '../../../src/arrangement/index.ts'
import { findPlant, PLANTS } from '../../../src/catalogue/index.ts'
import {
  contourOf,
  createCache,
  paintPicture,
  plantPlate,
  roughBox,
  type Sprite,
  stemSprite,
  stillBox,
} from '../../../src/drawing/index.ts'
import { resolveArrangement } from '../../../src/geometry/index.ts'
import { plantOf, resolvedOf } from './fixture.ts'

const area = (line: number[]): number => {
  let sum = 0
  for (let i = 0; i < line.length; i += 2) {
    const j = (i + 2) % line.length
    sum += line[i]! * line[j + 1]! - line[j]! * line[i + 1]!
  }
  return Math.abs(sum / 2)
}

const ring = (r: number, hole: number): Sprite => {
  const side = 2 * r + 4
  const s: Sprite = {
    left: -side / 2,
    top: -side / 2,
    width: side,
    height: side,
    rgba: new Uint8ClampedArray(4 * side * side),
    depth: new Float32Array(side * side),
  }
  for (let i = 0; i < side * side; i++) {
    const d = Math.hypot((i % side) + 0.5 - side / 2, Math.floor(i / side) + 0.5 - side / 2)
    if (d <= r && d >= hole) s.rgba[4 * i + 3] = 255
  }
  return s
}

describe('the contour of a stem', () => {
  it('goes round a disc of 30 pixels as a line that encloses its area, in mm', () => {
    const lines = contourOf(ring(30, 0), 2)
    expect(lines).toHaveLength(1)
    expect(area(lines[0]!)).toBeGreaterThan(0.96 * Math.PI * 15 ** 2)
    expect(area(lines[0]!)).toBeLessThan(1.04 * Math.PI * 15 ** 2)
    for (let i = 0; i < lines[0]!.length; i += 2)
      expect(Math.hypot(lines[0]![i]!, lines[0]![i + 1]!)).toBeCloseTo(15, -0.5)
  })

  it('shows a hole as a line of its own', () => {
    expect(contourOf(ring(30, 12), 1)).toHaveLength(2)
  })

  it('is empty for an empty sprite', () => {
    expect(
      contourOf(
        { left: 0, top: 0, width: 4, height: 4, rgba: new Uint8ClampedArray(64), depth: new Float32Array(16) },
        1,
      ),
    ).toEqual([])
  })

  it('of a whole rose reaches from its cut end to its head', () => {
    const [stem] = resolvedOf([{ id: 'a', mouth: [0, 0], tip: [20, -10, 120] }]).stems
    const points = contourOf(stemSprite(stem!, { turn: 0, pitch: 0 }, 2, 'draft', createCache()), 2).flat()
    const heights = points.filter((_, i) => i % 2 === 1)
    expect(points.every(Number.isFinite)).toBe(true)
    expect(Math.max(...heights)).toBeGreaterThan(5)
    expect(Math.min(...heights)).toBeLessThan(-150)
  })
})

describe('plates and frames', () => {
  it('a plate shows the flower upright: head above, stem below the tip', () => {
    const plate = plantPlate(plantOf('rosette', 80), '#e8c0a4', 0.9, { turn: 0, pitch: 0 }, 1, createCache())
    expect(plate.top).toBeLessThan(-10)
    expect(plate.top + plate.height).toBeGreaterThan(60)
    expect(plate.rgba.some((v) => v > 0)).toBe(true)
  })

  it('the box holds vessel and heads, and is mirrored by walking to the back', () => {
    const resolved = resolvedOf([{ id: 'a', mouth: [20, 0], tip: [90, 0, 100] }])
    const front = stillBox(resolved, { turn: 0, pitch: 0 })
    const back = stillBox(resolved, { turn: 180, pitch: 0 })
    expect(front.bottom).toBeLessThanOrEqual(-80)
    expect(front.top).toBeGreaterThan(105)
    expect(front.right).toBeGreaterThan(95)
    expect(back.left).toBeCloseTo(-front.right, 5)
    expect(back.right).toBeCloseTo(-front.left, 5)
  })
})

describe('the rough box', () => {
  it('is the exact one to a sixth of its size, for every plant of the catalogue', () => {
    for (const plant of PLANTS) {
      const [first] = resolvedOf([{ id: 'a', mouth: [10, 0], tip: [60, -20, 110] }]).document.stems
      const stem = { ...first!, plant: plant.id }
      const resolved = resolveArrangement({ ...newArrangement(), stems: [stem] }, findPlant)
      const angle = { turn: 30, pitch: 12 }
      const [rough, exact] = [roughBox(resolved, angle), stillBox(resolved, angle)]
      const size = Math.max(exact.right - exact.left, exact.top - exact.bottom)
      for (const side of ['left', 'right', 'bottom', 'top'] as const)
        expect(Math.abs(exact[side] - rough[side]), `${plant.id} ${side}`).toBeLessThan(size / 6)
    }
  })
})

describe('the box and the picture', () => {
  it('agree: what is painted reaches to the box, and not beyond it', () => {
    const resolved = resolvedOf([
      { id: 'a', mouth: [20, 0], tip: [90, 0, 100] },
      { id: 'b', habit: 'quilled', head: 90, mouth: [-20, 10], tip: [-100, 30, 60] },
    ])
    const angle = { turn: 35, pitch: 20 }
    const box = stillBox(resolved, angle)
    const frame = { left: -200, right: 200, bottom: -200, top: 200, scale: 1 }
    const picture = paintPicture(
      resolved,
      angle,
      frame,
      { quality: 'draft', section: false, vessel: 'grey' },
      createCache(),
    )
    const seen = { left: Infinity, right: -Infinity, bottom: Infinity, top: -Infinity }
    picture.owner.forEach((owner, i) => {
      if (owner === 0) return
      const [x, y] = [(i % picture.width) - 200, 200 - Math.floor(i / picture.width)]
      seen.left = Math.min(seen.left, x)
      seen.right = Math.max(seen.right, x + 1)
      seen.bottom = Math.min(seen.bottom, y - 1)
      seen.top = Math.max(seen.top, y)
    })
    for (const side of ['left', 'right', 'bottom', 'top'] as const)
      expect(Math.abs(seen[side] - box[side]), side).toBeLessThan(2.5)
  })
})
