import { describe, expect, it } from 'vitest'
import type { Sprite } from '../../../src/drawing/index.ts'
import {
  createCache,
  emptyPicture,
  type Frame,
  keepSprite,
  layIn,
  type PaintOptions,
  type Picture,
  paintPicture,
  stemSprite,
  VESSEL_OWNER,
} from '../../../src/drawing/index.ts'
import { BOWL, type Put, resolvedOf } from './fixture.ts'

const FRAME: Frame = { left: -120, right: 120, bottom: -90, top: 150, scale: 1 }
const DRAFT: PaintOptions = { quality: 'draft', section: false, vessel: 'grey' }
const FRONT = { turn: 0, pitch: 0 }
const BACK = { turn: 180, pitch: 0 }
const TWO: Put[] = [
  { id: 'near', mouth: [0, -10], tip: [0, -50, 80], colour: '#a01020' },
  { id: 'far', mouth: [0, 10], tip: [0, 50, 80], colour: '#f0e8d8' },
]
const ownerAt = (p: Picture, x: number, z: number): number =>
  p.owner[Math.round((FRAME.top - z) * FRAME.scale) * p.width + Math.round((x - FRAME.left) * FRAME.scale)]!

const sane = (p: Picture): void => {
  for (let i = 0; i < p.owner.length; i++) {
    const alpha = p.rgba[4 * i + 3]!
    if ((alpha === 0) !== (p.depth[i] === -1e9)) throw new Error(`pixel ${i}: alpha ${alpha}, depth ${p.depth[i]}`)
    if (alpha === 0 && p.owner[i] !== 0) throw new Error(`pixel ${i}: nothing there, yet it has an owner`)
    if (!Number.isFinite(p.depth[i]!)) throw new Error(`pixel ${i}: depth ${p.depth[i]}`)
  }
}

describe('a picture of an arrangement', () => {
  it('the nearer of two roses hides the other, and walking round swaps them', () => {
    const resolved = resolvedOf(TWO)
    const cache = createCache()
    expect(ownerAt(paintPicture(resolved, FRONT, FRAME, DRAFT, cache), 0, 80)).toBe(1)
    expect(ownerAt(paintPicture(resolved, BACK, FRAME, DRAFT, cache), 0, 80)).toBe(2)
  })

  it('is the same picture when painted twice, from a cold cache and from a warm one', () => {
    const resolved = resolvedOf(TWO)
    const cache = createCache()
    const options: PaintOptions = { ...DRAFT, quality: 'fine', section: true }
    const first = paintPicture(resolved, FRONT, FRAME, options, cache)
    for (const again of [
      paintPicture(resolved, FRONT, FRAME, options, cache),
      paintPicture(resolved, FRONT, FRAME, options, createCache()),
    ]) {
      expect(again.rgba).toEqual(first.rgba)
      expect(again.owner).toEqual(first.owner)
    }
  })

  it('a sprite made elsewhere is laid in as its own, for the same angle, scale and quality only', () => {
    const [near, far] = resolvedOf(TWO).stems
    const cache = createCache()
    const made = stemSprite(near!, FRONT, FRAME.scale, 'fine', createCache())
    keepSprite(near!, FRONT, FRAME.scale, 'fine', cache, made)
    expect(stemSprite(near!, FRONT, FRAME.scale, 'fine', cache)).toBe(made)
    expect(stemSprite(near!, BACK, FRAME.scale, 'fine', cache)).not.toBe(made)
    expect(stemSprite(near!, FRONT, 2 * FRAME.scale, 'fine', cache)).not.toBe(made)
    expect(stemSprite(near!, FRONT, FRAME.scale, 'draft', cache)).not.toBe(made)
    expect(stemSprite(far!, FRONT, FRAME.scale, 'fine', cache)).not.toBe(made)
  })

  it('has no depth exactly where nothing is seen, in every quality and with every vessel', () => {
    for (const material of ['ceramic', 'glass'] as const)
      for (const quality of ['draft', 'fine'] as const)
        for (const pitch of [0, 20, 90])
          for (const mechanics of ['netting', 'foam', 'pin-holder', 'tape-grid'] as const) {
            const resolved = resolvedOf(TWO, { ...BOWL, material, mechanics })
            sane(
              paintPicture(
                resolved,
                { turn: 30, pitch },
                { ...FRAME, scale: 0.5 },
                { quality, section: true, vessel: 'own' },
                createCache(),
              ),
            )
          }
  })

  it('leaves out the stems it is told to leave out', () => {
    const resolved = resolvedOf(TWO)
    const picture = paintPicture(resolved, FRONT, FRAME, { ...DRAFT, without: ['near'] }, createCache())
    expect(ownerAt(picture, 0, 80)).toBe(2)
    expect(picture.owner.includes(1)).toBe(false)
  })

  it('a stem below the rim is hidden by the bowl, and seen where the bowl is cut open', () => {
    const resolved = resolvedOf([{ id: 'a', mouth: [30, 0], tip: [40, 0, 120] }])
    const below = (section: boolean): number => {
      const p = paintPicture(resolved, FRONT, FRAME, { ...DRAFT, section }, createCache())
      let count = 0
      for (let y = Math.round(FRAME.top) + 4; y < p.height; y++)
        for (let x = 0; x < p.width; x++) if (p.owner[y * p.width + x] === 1) count++
      return count
    }
    expect(below(false)).toBe(0)
    expect(below(true)).toBeGreaterThan(30)
  })

  it('a stem is seen through a glass vessel, and the empty glass can still be touched', () => {
    const resolved = resolvedOf([{ id: 'a', mouth: [30, 0], tip: [40, 0, 120] }], { ...BOWL, material: 'glass' })
    const p = paintPicture(resolved, FRONT, FRAME, DRAFT, createCache())
    const row = (z: number): number[] => [
      ...p.owner.slice(Math.round(FRAME.top - z) * p.width, Math.round(FRAME.top - z + 1) * p.width),
    ]
    expect(row(-20)).toContain(1)
    expect(row(-20)).toContain(VESSEL_OWNER)
  })

  it('an arrangement laid out as in a mirror gives the owners of a mirror', () => {
    // The same sprite on either side: what composes must not prefer left to right.
    const ball = (flip: boolean): Sprite => {
      const [w, h] = [21, 15]
      const s: Sprite = {
        left: -10,
        top: -7,
        width: w,
        height: h,
        rgba: new Uint8ClampedArray(4 * w * h),
        depth: new Float32Array(w * h).fill(-1e9),
      }
      for (let y = 0; y < h; y++)
        for (let x = 0; x < w; x++) {
          const u = flip ? w - 1 - x : x
          if ((u - 10) ** 2 + 2 * (y - 7) ** 2 > 90 || u + y < 9) continue
          const i = y * w + x
          s.rgba.set([9 * u, 90, 120, 255], 4 * i)
          s.depth[i] = 0.5 * u
        }
      return s
    }
    const lay = (flip: boolean): Picture => {
      const p = emptyPicture({ left: 0, right: 61, bottom: 0, top: 41, scale: 1 })
      const m = (x: number): number => (flip ? 60 - x : x)
      layIn(p, ball(flip), m(22), 20, 0, 1)
      layIn(p, ball(flip), m(34), 23, 2, 2)
      layIn(p, ball(flip), m(28), 14, 1, 3)
      return p
    }
    const [a, b] = [lay(false), lay(true)]
    for (let y = 0; y < a.height; y++)
      for (let x = 0; x < a.width; x++) expect(b.owner[y * a.width + 60 - x]).toBe(a.owner[y * a.width + x])
    expect(new Set(a.owner)).toEqual(new Set([0, 1, 2, 3]))
  })

  it('a stem that is only shifted is not painted again', () => {
    const cache = createCache()
    // On the axis of no vessel: the part below the rim must not change, so the vessel is a wide dish.
    const dish = { ...BOWL, width: 2000, depth: 2000 }
    const at = (x: number) => resolvedOf([{ id: 'a', mouth: [x, 0], tip: [x, -20, 100] }], dish).stems[0]!
    const axis = at(0).axis
    const first = stemSprite(at(0), FRONT, 1, 'draft', cache)
    expect(stemSprite({ ...at(25), axis }, FRONT, 1, 'draft', cache)).toBe(first)
    expect(stemSprite({ ...at(25), axis, colour: '#123456' }, FRONT, 1, 'draft', cache)).not.toBe(first)
  })
})
