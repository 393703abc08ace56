import { describe, expect, it } from 'vitest'
import { applyEdit, newArrangement } from '../../../src/arrangement/index.ts'
import {
  findMarks,
  frameOf,
  handlesOf,
  measuredVessel,
  traceOutline,
  vesselHalfWidth,
} from '../../../src/geometry/index.ts'
import type { Drawn } from './drawn.ts'
import { throughJpeg } from './jpeg.ts'
import { KITCHEN, throughLens, withNoise } from './realistic.ts'

const SEEDS = Array.from({ length: 20 }, (_, i) => i + 1)
const MOUTH_MM = 200

/** Errors of height and half-widths that come of a photo without a hand, as shares of height and of half the mouth. */
const errorsOf = (photo: ReturnType<typeof withNoise>, { tall, half, profile }: Drawn): number[] => {
  const marks = findMarks(photo)!
  const frame = frameOf(marks)!
  const handles = handlesOf(traceOutline(photo, frame)!, frame)
  const measured = measuredVessel(frame, handles, { of: 'width', mm: MOUTH_MM }, { plan: 'round', depth: 1 })
  const { vessel } = applyEdit(newArrangement(), { do: 'set-vessel', set: measured })
  return [
    measured.height / ((MOUTH_MM * tall) / (2 * half)) - 1,
    ...[0.15, 0.5, 0.85].map((h) => vesselHalfWidth(vessel, h) / (MOUTH_MM / 2) - profile(h)),
  ]
}

describe('the noise of a photo has no say in what is measured on it', () => {
  it.each([
    ['a bowl', {}, 1],
    ['a bowl on a dim evening', {}, 1.5],
    ['a bowl, the camera askew by 4°', { roll: 4 }, 1],
  ] as [string, Partial<Drawn>, number][])(
    '%s is measured within 3 %, upright and on its side in the JPEG',
    (_, over, noise) => {
      const drawn = { ...KITCHEN, ...over }
      const thrown = throughLens(drawn)
      for (const seed of SEEDS) {
        const photo = throughJpeg(withNoise(thrown, seed, noise), 86, seed % 2 === 0)
        for (const error of errorsOf(photo, drawn)) expect(Math.abs(error), `seed ${seed}`).toBeLessThan(0.03)
      }
    },
    600_000,
  )
})
