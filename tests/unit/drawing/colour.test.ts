import { describe, expect, it } from 'vitest'
import type { Habit } from '../../../src/catalogue/index.ts'
import { deltaE2000, labOf, labOfLinear, oklchOf } from '../../../src/colour/index.ts'
import { occlude } from '../../../src/drawing/occlusion.ts'
import { packOklch } from '../../../src/drawing/oklch.ts'
import { rasterise } from '../../../src/drawing/raster.ts'
import { inksFor, shadeRaster } from '../../../src/drawing/shade.ts'
import { tintsOf } from '../../../src/drawing/tints.ts'
import { buildMesh, solidInput, TISSUES } from '../../../src/geometry/index.ts'
import { resolvedOf } from './fixture.ts'

const linear = (byte: number): number => {
  const x = byte / 255
  return x <= 0.04045 ? x / 12.92 : ((x + 0.055) / 1.055) ** 2.4
}
const COLOURS = [
  '#ffffff',
  '#f1e6cf',
  '#e8c0a4',
  '#c01d2e',
  '#e00010',
  '#6f1527',
  '#241a20',
  '#f2c830',
  '#b39cc0',
  '#5a3a86',
  '#5b74b8',
]
const HABITS: [Habit, number][] = [
  ['rosette', 85],
  ['ray', 56],
  ['quilled', 74],
  ['cup', 50],
  ['globe', 25],
  ['trumpet', 90],
]
const PETALS = [TISSUES.indexOf('petal'), TISSUES.indexOf('petal-second')]

const ANGLE = { turn: 0, pitch: 25 }

/** A head that is looked in the face, ready to be given any colour. */
const headOf = (habit: Habit, head: number, quality: 'draft' | 'fine') => {
  const [stem] = resolvedOf([{ id: 'a', habit, head, mouth: [0, -10], tip: [0, -60, 80] }]).stems
  const mesh = buildMesh(solidInput(stem!))
  const samples = quality === 'fine' ? 2 : 1
  const k = 1.5 * samples
  const inks = inksFor(k)
  const raster = rasterise(mesh, ANGLE, k, inks.outline + 1, 2 * samples)
  return { plant: stem!.plant, mesh, samples, inks, raster, hollows: quality === 'fine' ? occlude(raster, k) : null }
}

/** Mean CIELAB of its petals. */
const meanOf = (head: ReturnType<typeof headOf>, colour: string): [number, number, number] => {
  const { plant, mesh, samples, inks, raster, hollows } = head
  const s = shadeRaster(raster, mesh, ANGLE, tintsOf(plant, colour, 1), 1, samples, inks, hollows)
  const sum: [number, number, number] = [0, 0, 0]
  let count = 0
  for (let y = 0; y < s.height; y++)
    for (let x = 0; x < s.width; x++) {
      const i = 4 * (y * s.width + x)
      const t = raster.triangle[y * samples * raster.width + x * samples]!
      if (s.rgba[i + 3]! < 255 || t < 0 || !PETALS.includes(mesh.tissues[t]!)) continue
      const lab = labOfLinear([linear(s.rgba[i]!), linear(s.rgba[i + 1]!), linear(s.rgba[i + 2]!)])
      for (let c = 0; c < 3; c++) sum[c] = sum[c]! + lab[c]!
      count++
    }
  expect(count).toBeGreaterThan(100)
  return [sum[0] / count, sum[1] / count, sum[2] / count]
}

describe('colour on the petals', () => {
  it('the mean of a head stays near the colour asked for, from white to nearly black', () => {
    for (const [habit, head] of HABITS)
      for (const quality of ['draft', 'fine'] as const) {
        const ready = headOf(habit, head, quality)
        for (const colour of COLOURS)
          expect(deltaE2000(meanOf(ready, colour), labOf(colour)), `${habit} ${colour} ${quality}`).toBeLessThan(12)
      }
  })

  it('a lighter colour gives a lighter flower', () => {
    const rose = headOf('rosette', 80, 'fine')
    const [white, pink, wine] = ['#f6f2ea', '#d98a9a', '#5f1424'].map((c) => meanOf(rose, c)[0])
    expect(white! - pink!).toBeGreaterThan(12)
    expect(pink! - wine!).toBeGreaterThan(20)
  })

  it('the folds of a white rose are cream or green, not grey, and it stays white', () => {
    const { plant, mesh, samples, inks, raster, hollows } = headOf('rosette', 80, 'fine')
    const s = shadeRaster(raster, mesh, ANGLE, tintsOf(plant, '#f6f3ea', 1), 1, samples, inks, hollows)
    const seen: (readonly [number, number, number])[] = []
    for (let i = 0; i < s.rgba.length; i += 4) {
      if (s.rgba[i + 3]! < 255) continue
      const hex = [0, 1, 2].map((c) => s.rgba[i + c]!.toString(16).padStart(2, '0')).join('')
      const lch = oklchOf(`#${hex}`)
      if (lch[0] > 0.7) seen.push(lch)
    }
    const byLight = seen.sort((a, b) => a[0] - b[0])
    const shade = byLight.slice(0, byLight.length >> 2)
    const meanAt = (some: typeof shade, k: 0 | 1 | 2): number => some.reduce((sum, x) => sum + x[k], 0) / some.length
    expect(meanAt(shade, 1)).toBeGreaterThan(0.018)
    expect(meanAt(shade, 2)).toBeGreaterThan(85)
    expect(meanAt(shade, 2)).toBeLessThan(125)
    expect(meanAt(byLight, 0)).toBeGreaterThan(0.88)
  })

  it('a colour that the screen can show comes back as it was', () => {
    for (const hex of [...COLOURS, '#000000', '#00ff00', '#808080']) {
      const packed = packOklch(...oklchOf(hex))
      const want = Number.parseInt(hex.slice(1), 16)
      for (const [shift, from] of [
        [0, 16],
        [8, 8],
        [16, 0],
      ] as const)
        expect(Math.abs(((packed >> shift) & 255) - ((want >> from) & 255)), hex).toBeLessThanOrEqual(3)
    }
  })

  it('a colour beyond the screen keeps its lightness and hue', () => {
    const packed = packOklch(0.7, 0.4, 150)
    const hex = `#${[0, 8, 16].map((s) => ((packed >> s) & 255).toString(16).padStart(2, '0')).join('')}`
    const [l, c, h] = oklchOf(hex)
    expect(l).toBeCloseTo(0.7, 1)
    expect(h).toBeGreaterThan(145)
    expect(h).toBeLessThan(155)
    expect(c).toBeLessThan(0.3)
  })
})
