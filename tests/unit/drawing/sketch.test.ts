import { describe, expect, it } from 'vitest'
import {
  createCache,
  type Frame,
  type PaintOptions,
  type Picture,
  paintPicture,
  sketchSteps,
} from '../../../src/drawing/index.ts'
import { resolvedOf } from './fixture.ts'

const OPTIONS: PaintOptions = { quality: 'draft', section: false, vessel: 'grey' }
const ROSES = resolvedOf([
  { id: 'near', mouth: [0, -10], tip: [30, -50, 80], colour: '#a01020' },
  { id: 'far', mouth: [0, 10], tip: [-40, 50, 90], colour: '#f0e8d8' },
])
const sketched = (frame: Frame, pitch: number): Picture => {
  const steps = sketchSteps(ROSES, { turn: 0, pitch }, frame, OPTIONS, createCache())
  for (;;) {
    const { done, value } = steps.next()
    if (done) return value
  }
}

describe('a sketch', () => {
  // Odd sizes and scales: neither the frame nor the origin falls on whole squares.
  it.each([
    [0, { left: -121, right: 118, bottom: -90, top: 151, scale: 1.1 }],
    [90, { left: -120.5, right: 120, bottom: -130, top: 111, scale: 2.2 }],
  ])('shows who stands where as the picture does that follows it, pitch %d', (pitch, frame) => {
    const sketch = sketched(frame, pitch)
    const picture = paintPicture(ROSES, { turn: 0, pitch }, frame, OPTIONS, createCache())
    expect([sketch.width, sketch.height]).toEqual([picture.width, picture.height])
    let [both, either] = [0, 0]
    for (let i = 0; i < picture.owner.length; i++) {
      if (picture.owner[i] === 0 && sketch.owner[i] === 0) continue
      either += 1
      if (picture.owner[i] === sketch.owner[i]) both += 1
    }
    expect(both / either).toBeGreaterThan(0.85)
  })
})
