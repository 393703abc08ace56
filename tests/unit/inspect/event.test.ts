import { describe, expect, it } from 'vitest'
import { type Arrangement, newArrangement, type Stem } from '../../../src/arrangement/index.ts'
import { newEvent, writeEvent } from '../../../src/event/index.ts'
import { inspectFile } from '../../../src/inspect/index.ts'

const stem = (id: string, over: Partial<Stem>): Stem => ({
  id,
  plant: 'rose-spray',
  role: 'mass',
  colour: '#d98a9c',
  openness: 0.8,
  mouth: [0, 0],
  tip: [0, 0, 90],
  bend: 0,
  piece: 'lateral',
  ...over,
})
const design = (title: string, ...stems: Stem[]): Arrangement => ({ ...newArrangement(), title, stems })
const text = writeEvent({
  ...newEvent('Europe/Lisbon'),
  title: 'June',
  date: '2027-06-12T15:00',
  parts: [
    { design: 'a', copies: 3, place: '' },
    { design: 'b', copies: 4, place: 'the bar' },
  ],
  spare: { 'rose-spray': 0 },
  designs: { a: design('Bowl', stem('1', {})), b: design('Cup', stem('1', {})) },
})
const inspected = (over: string = text, copies: number | null = null) =>
  inspectFile({ file: 'june.event.json', text: over }, copies)

describe('an event’s file by the command', () => {
  it('is one order: three sprigs and four come from two stems of four heads, not from one stem and one', () => {
    expect(inspected()).toMatchObject({
      file: 'june.event.json',
      title: 'June',
      designs: [
        { design: 'a', title: 'Bowl', copies: 3, pieces: 1 },
        { design: 'b', title: 'Cup', copies: 4, pieces: 1, place: 'the bar' },
      ],
      purchase: { copies: 7, lines: [{ plant: 'rose-spray', pieces: 7, stems: 2, spareStems: 0 }] },
    })
  })
  it('its costs add up, and its plan ends with taking down', () => {
    const line = inspected()
    if (!('plan' in line)) throw new Error('refused')
    expect(line.designs.reduce((sum, d) => sum + d.cost, 0)).toBeCloseTo(line.purchase.total, 9)
    expect(line.plan.tasks[0]).toMatchObject({ kind: 'book' })
    expect(line.plan.tasks.at(-1)).toMatchObject({ kind: 'clear', daysBefore: 0 })
    expect(line.plan.tasks.filter((t) => t.kind === 'arrive').every((t) => t.plants.includes('rose-spray'))).toBe(true)
  })
  it('is refused with the place of what is wrong, and with a number of copies', () => {
    expect(inspected(text.replace('"copies": 4', '"copies": 0'))).toMatchObject({
      error: 'parts[1].copies: expected a whole number of copies from 1 to 10000, got 0',
    })
    expect(inspected(text, 12)).toMatchObject({ error: expect.stringMatching(/^--copies is for a design/) })
  })
})
