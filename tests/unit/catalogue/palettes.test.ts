import { readdirSync, readFileSync } from 'node:fs'
import { join, resolve } from 'node:path'
import chroma from 'chroma-js'
import { describe, expect, it } from 'vitest'
import { type Arrangement, paletteProblems, ROLES, type Role } from '../../../src/arrangement/index.ts'
import { PLANTS } from '../../../src/catalogue/index.ts'

interface Read {
  name: string
  about: string
  slots: { colour: string; part: Role; name: string }[]
}
const FOLDER = resolve(import.meta.dirname, '../../../palettes')
const PALETTES: Read[] = readdirSync(FOLDER).map((f) => JSON.parse(readFileSync(join(FOLDER, f), 'utf8')) as Read)

/** Whether a stem of this plant may play the part. */
const plays = (plant: (typeof PLANTS)[number], part: Role): boolean => {
  const large = plant.headOpen_mm.value >= 60
  if (part === 'greens') return plant.formClass === 'foliage'
  if (part === 'focal')
    return plant.role === 'focal' || (large && (plant.formClass === 'form' || plant.formClass === 'mass'))
  return plant.formClasses.includes(part) || plant.role === part
}
/** How near a plant of the part comes, ΔE2000. */
const nearest = (colour: string, part: Role): number =>
  Math.min(...PLANTS.filter((p) => plays(p, part)).flatMap((p) => p.colours.map((c) => chroma.deltaE(c.hex, colour))))

describe('the palettes', () => {
  it('are at least eighteen, each with a name of its own and a line on its idea', () => {
    expect(PALETTES.length).toBeGreaterThanOrEqual(18)
    expect(new Set(PALETTES.map((p) => p.name)).size).toBe(PALETTES.length)
    expect(new Set(PALETTES.map((p) => p.about)).size).toBe(PALETTES.length)
    for (const p of PALETTES) expect(p.about.length).toBeGreaterThan(15)
  })

  it('pass the same check as a palette of the person', () => {
    for (const p of PALETTES) expect([p.name, paletteProblems(p)]).toEqual([p.name, []])
  })

  it('have five to nine colours, each named once, and every part that an arrangement needs', () => {
    for (const { name, slots } of PALETTES) {
      expect([name, slots.length >= 5 && slots.length <= 9]).toEqual([name, true])
      expect([name, new Set(slots.map((s) => s.name)).size, new Set(slots.map((s) => s.colour)).size]).toEqual([
        name,
        slots.length,
        slots.length,
      ])
      const parts = new Set(slots.map((s) => s.part))
      for (const part of ['focal', 'filler', 'line', 'greens'] as const)
        expect([name, part, parts.has(part)]).toEqual([name, part, true])
      expect([name, parts.has('mass') || parts.has('form')]).toEqual([name, true])
      for (const s of slots) {
        expect(s.colour).toMatch(/^#[0-9a-f]{6}$/)
        expect(ROLES).toContain(s.part)
      }
    }
  })

  it('hold those of the samples, colour for colour, so that a picture has their names', () => {
    const samples = resolve(import.meta.dirname, '../../../public/samples')
    const files = readdirSync(samples)
    expect(files).toHaveLength(3)
    for (const file of files) {
      const { palette } = JSON.parse(readFileSync(join(samples, file), 'utf8')) as Arrangement
      const held = PALETTES.find((p) => p.name === palette.name)
      expect([file, held?.slots.map(({ colour, part }) => ({ colour, part }))]).toEqual([file, palette.slots])
    }
  })

  it('ask only for colours that some plant of that part comes near to (ΔE2000 under 20)', () => {
    const far = PALETTES.flatMap(({ name, slots }) =>
      slots.map((s) => ({ what: `${name}: ${s.name}, ${s.part}`, by: nearest(s.colour, s.part) })),
    ).filter(({ by }) => !(by < 20))
    expect(far).toEqual([])
  })

  it('are different in character: no two have the same colours in sum', () => {
    const mean = ({ slots }: Read) =>
      chroma.average(
        slots.filter((s) => s.part !== 'greens').map((s) => s.colour),
        'lab',
      )
    for (const a of PALETTES)
      for (const b of PALETTES)
        if (a.name < b.name)
          expect([a.name, b.name, chroma.deltaE(mean(a), mean(b)) > 1.5]).toEqual([a.name, b.name, true])
  })
})
