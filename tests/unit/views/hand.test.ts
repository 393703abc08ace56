import { describe, expect, it } from 'vitest'
import { createCache, type Frame, type PaintOptions, paintPicture, stemSprite } from '../../../src/drawing/index.ts'
import { projectPoint, resolveArrangement } from '../../../src/geometry/index.ts'
import { writeVisible } from '../../../src/ui/views/composite.ts'
import { emptyPatch, widenPatch } from '../../../src/ui/views/patch.ts'
import { dome } from '../../bench/made.ts'

const FRAME: Frame = { left: -220, right: 220, bottom: -220, top: 260, scale: 1 }

describe('what is in the hand', () => {
  it.each([
    ['elevation', 0],
    ['plan', 90],
  ])(
    'a rose among others, drawn apart over the rest, shows the same of itself as painted among them: %s',
    (_, pitch) => {
      const angle = { turn: 30, pitch }
      const resolved = resolveArrangement(dome(24))
      const stem = resolved.stems[10]!
      const options: PaintOptions = { quality: 'draft', section: pitch === 0, vessel: 'grey' }
      const cache = createCache()
      const whole = paintPicture(resolved, angle, FRAME, options, cache)
      const rest = paintPicture(resolved, angle, FRAME, { ...options, without: [stem.id] }, cache)
      const sprite = stemSprite(stem, angle, FRAME.scale, 'draft', cache)
      const [right, up, near] = projectPoint(stem.stem.tip, angle)
      const x = Math.round(right * FRAME.scale) - Math.round(FRAME.left * FRAME.scale)
      const y = Math.round(-up * FRAME.scale) + Math.round(FRAME.top * FRAME.scale)
      const seen = new Uint32Array(sprite.width * sprite.height)
      writeVisible(rest, sprite, x, y, near, seen, sprite.width, new Set())

      // Fading with distance and the shade of neighbours come with the whole picture; what is seen of the stem is the same.
      let drawn = 0
      let apart = 0
      for (let row = 0; row < whole.height; row++)
        for (let column = 0; column < whole.width; column++) {
          const [i, j] = [column - x - sprite.left, row - y - sprite.top]
          const inside = i >= 0 && j >= 0 && i < sprite.width && j < sprite.height
          const own = inside && seen[j * sprite.width + i]! >>> 24 >= 128
          if (own) drawn += 1
          if (own !== (whole.owner[row * whole.width + column] === stem.index + 1)) apart += 1
        }
      expect(drawn).toBeGreaterThan(300)
      expect(apart).toBeLessThanOrEqual(0.01 * drawn)
    },
  )
  it('has a patch of the sheet on whole px that holds all of it', () => {
    const patch = emptyPatch()
    widenPatch(patch, 3.4, 8, 10, 12.1)
    widenPatch(patch, 5, 2.9, 6, 4)
    expect(patch).toEqual({ left: 3, top: 2, right: 10, bottom: 13 })
  })
})
