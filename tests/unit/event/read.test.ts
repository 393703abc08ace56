import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type Arrangement, newArrangement } from '../../../src/arrangement/index.ts'
import { newEvent, readEvent, type WholeEvent, withOwnStem, writeEvent } from '../../../src/event/index.ts'
import { promise } from '../../promise.ts'

const known = { plants: new Set(['rose', 'rose-spray', 'lisianthus', 'myrtle', 'peony']) }
const bowl: Arrangement = { ...newArrangement(), title: 'Bowl' }
const newStem = { role: 'focal', colour: '#d98a9c', bend: 0, piece: 'whole' }
const event = (over: Partial<WholeEvent> = {}): WholeEvent => ({
  ...newEvent('Europe/Lisbon'),
  title: 'Forty tables',
  date: '2027-06-12T15:00',
  parts: [
    { design: 'bowl', copies: 12, place: 'guest tables' },
    { design: 'cup', copies: 24, place: '' },
  ],
  designs: { bowl, cup: { ...bowl, title: 'Cup' } },
  ...over,
})
const readOver = (over: object) => readEvent(JSON.stringify({ ...event(), ...over }), known)
const problemsOf = (over: object): string[] => {
  const read = readOver(over)
  return read.kind === 'ok' ? [] : read.problems.map((p) => `${p.path}: ${p.message}`)
}

describe('the file of an event', () => {
  it('comes back as it was written, with the designs that stand in it', () => {
    const spare = { ...event(), designs: { ...event().designs, left: bowl } }
    expect(readEvent(writeEvent(spare), known)).toEqual({ kind: 'ok', event: event() })
  })
  it('keeps keys it does not know', () => {
    const read = readOver({ music: 'a quartet' })
    expect(read.kind === 'ok' && read.event).toMatchObject({ music: 'a quartet' })
  })
  it('fills in what is missing', () => {
    const read = readEvent('{"format":"pedicel-event","version":1}', known)
    expect(read).toEqual({ kind: 'ok', event: { ...newEvent('UTC'), designs: {} } })
  })
  it('keeps its id and the currency of its budget, and says what can be neither', () => {
    const read = readOver({ id: 'a-1', budget: 150_000, currency: 'JPY' })
    expect(read.kind === 'ok' && read.event).toMatchObject({ id: 'a-1', budget: 150_000, currency: 'JPY' })
    expect(read.kind === 'ok' && readEvent(writeEvent(read.event), known)).toEqual(read)
    expect(problemsOf({ id: 7 })).toEqual(['id: expected a text of at most 100 characters, got 7'])
    expect(problemsOf({ id: 'x'.repeat(101) })[0]).toMatch(/^id: expected a text of at most 100 characters/)
    expect(problemsOf({ currency: 'euro' })).toEqual(['currency: expected a currency such as "EUR", or "", got "euro"'])
    const parts = [{ design: 'bowl', copies: 1, title: 7 }]
    expect(problemsOf({ parts })[0]).toMatch(/^parts\[0\]\.title: expected a text/)
  })
  it('sets back only the field that is wrong: what stands beside it stays', () => {
    const parts = [{ design: 'bowl', copies: 12, place: 7, placing_min: 20, corner: 'north' }]
    const work = {
      people: 0,
      names: ['Ana'],
      who: { trial: [1], bind: [0] },
      from: '08:00',
      minutes: { stem: 2 },
      van: 1,
    }
    const cut = readOver({
      parts,
      work,
      spare: { rose: 0.2, peony: 3 },
      deliveries: { days: [3, 99, 1], of: { rose: 2, peony: 'soon' } },
      done: ['book', 7, 'trial'],
      cooler: { celsius: 90, stems: 10 },
    })
    expect(cut.kind).toBe('partly')
    if (cut.kind !== 'partly') return
    expect(cut.problems.map((p) => p.path).sort()).toEqual(
      [
        'parts[0].place',
        'work.people',
        'work.who.bind',
        'spare.peony',
        'deliveries.days[1]',
        'deliveries.of.peony',
        'done[1]',
        'cooler.celsius',
      ].sort(),
    )
    expect(cut.good.parts).toEqual([{ design: 'bowl', copies: 12, place: '', placing_min: 20, corner: 'north' }])
    expect(cut.good.work).toMatchObject({ people: 2, names: ['Ana'], who: { trial: [1] }, from: '08:00', van: 1 })
    expect(cut.good.work.minutes.stem).toBe(2)
    expect(cut.good.spare).toEqual({ rose: 0.2 })
    expect(cut.good.deliveries).toEqual({ days: [3, 1], of: { rose: 2 } })
    expect(cut.good.done).toEqual(['book', 'trial'])
    expect(cut.good.cooler).toBe(null)
  })
  it('names plants that the catalogue does not list', () => {
    expect(problemsOf({ spare: { rosse: 0.1 }, deliveries: { of: { rosse: 1 } } })).toEqual([
      'spare.rosse: expected the id of a plant of the catalogue, got "rosse"',
      'deliveries.of.rosse: expected the id of a plant of the catalogue, got "rosse"',
    ])
  })
  it('reads whatever it has written: twenty designs of 500 stems, and a design as deep as one may be', () => {
    const stem = { id: '', plant: 'rose', mouth: [1.5, 2.5], tip: [100.25, 30.125, 150.5], openness: 0.5 }
    const stems = Array.from({ length: 500 }, (_, i) => ({ ...newStem, ...stem, id: `s${i}` })) as Arrangement['stems']
    const deep = JSON.parse('['.repeat(30) + ']'.repeat(30))
    const keys = Array.from({ length: 20 }, (_, i) => `d${i}`)
    const large = event({
      parts: keys.map((design) => ({ design, copies: 1, place: '' })),
      designs: Object.fromEntries(keys.map((key) => [key, { ...bowl, stems, deep } as Arrangement])),
    })
    expect(readEvent(writeEvent(large), known)).toEqual({ kind: 'ok', event: large })
  })
  it('names the place of what is wrong, and keeps the rest', () => {
    expect(problemsOf({ hours: 'long' })).toEqual(['hours: expected hours, got "long"'])
    expect(problemsOf({ zone: 'Mars/Base' })).toEqual([
      'zone: expected a time zone such as "Europe/Lisbon", got "Mars/Base"',
    ])
    expect(problemsOf({ date: '2027-02-30T10:00' })[0]).toMatch(/^date: expected a local date/)
    expect(problemsOf({ date: '2027-02-20T10:00Z' })[0]).toMatch(/^date: expected a local date/)
    expect(problemsOf({ work: { from: '25:00' } })).toEqual([
      'work.from: expected a time of day as "09:00", got "25:00"',
    ])
    expect(problemsOf({ work: { minutes: { stem: -1 } } })).toEqual([
      'work.minutes.stem: expected minutes from 0 to 1440, got -1',
    ])
    const read = readOver({
      parts: [
        { design: 'bowl', copies: 0 },
        { design: 'cup', copies: 24 },
        { design: 'gone', copies: 1 },
        { design: 'cup', copies: 2 },
      ],
    })
    expect(read.kind === 'partly' && read.problems.map((p) => p.path)).toEqual([
      'parts[0].copies',
      'parts[2].design',
      'parts[3].design',
    ])
    expect(read.kind === 'partly' && read.good.parts).toEqual([{ design: 'cup', copies: 24, place: '' }])
  })
  it('keeps whose seasons hold, and takes what the zone says where that is wrong or missing', () => {
    const read = readOver({ seasons: 'south' })
    expect(read.kind === 'ok' && read.event.seasons).toBe('south')
    expect(problemsOf({ seasons: 'east' })).toEqual(['seasons: expected "north", "south" or null, got "east"'])
    expect(newEvent('UTC').seasons).toBeNull()
  })
  it('keeps what stems are like as they came, by plant, and names the place of a wrong figure', () => {
    const stems = {
      'rose-spray': { stem_mm: 400, heads: 3, side_mm: 180 },
      lisianthus: { heads: 5, bought: 'Monday' },
      myrtle: { pieces: 2 },
    }
    const read = readOver({ stems })
    expect(read.kind === 'ok' && read.event.stems).toEqual(stems)
    expect(problemsOf({ stems: [] })).toEqual([
      'stems: expected an object of stems by plant, such as {"rose-spray": {"heads": 3}}, got an empty list',
    ])
    expect(problemsOf({ stems: { rose: 400 } })).toEqual([
      'stems.rose: expected a stem as {"stem_mm": 400, "heads": 3, "side_mm": 180}, got 400',
    ])
    expect(problemsOf({ stems: { rose: { stem_mm: 40 } } })).toEqual([
      'stems.rose.stem_mm: expected a number in mm from 50 to 3000, got 40',
    ])
    expect(problemsOf({ stems: { rose: { heads: 2.5 } } })).toEqual([
      'stems.rose.heads: expected a whole number of heads from 1 to 50, got 2.5',
    ])
    expect(problemsOf({ stems: { rose: { side_mm: 'long' } } })).toEqual([
      'stems.rose.side_mm: expected a number in mm, got "long"',
    ])
    // Only the plant that is wrong goes back to the catalogue.
    const mended = readOver({ stems: { ...stems, rose: { heads: 0 } } })
    expect(mended.kind === 'partly' && mended.good.stems).toEqual(stems)
  })
  it('a figure of a stem that is taken back leaves the others; a plant without any is left out', () => {
    const three = withOwnStem({}, 'rose-spray', { heads: 3 })
    const short = withOwnStem(three, 'rose-spray', { stem_mm: 400 })
    expect(short).toEqual({ 'rose-spray': { heads: 3, stem_mm: 400 } })
    expect(withOwnStem(short, 'rose-spray', { stem_mm: undefined })).toEqual(three)
    expect(withOwnStem(three, 'rose-spray', { heads: undefined })).toEqual({})
  })
  it('hands by name, days on which flowers come and minutes of one design come back; what is wrong in them is named', () => {
    const work = { ...event().work, people: 3, names: ['Ana', 'Rui'], who: { carry: [2, 3] } }
    const given = event({
      work,
      deliveries: { days: [4, 2], of: { rose: 3 } },
      parts: [{ design: 'bowl', copies: 12, place: '', placing_min: 27.5 }],
      designs: { bowl },
    })
    expect(readEvent(writeEvent(given), known)).toEqual({ kind: 'ok', event: given })
    const old = readOver({ work: { people: 3 }, deliveries: undefined })
    expect(old.kind === 'ok' && [old.event.work.names, old.event.work.who, old.event.deliveries]).toEqual([
      [],
      {},
      { days: [], of: {} },
    ])
    expect(problemsOf({ deliveries: { days: [2, 15] } })).toEqual([
      'deliveries.days[1]: expected a whole number of days from 0 to 14, got 15',
    ])
    expect(problemsOf({ deliveries: { of: { rose: -1 } } })[0]).toMatch(
      /^deliveries.of.rose: expected a whole number of days/,
    )
    expect(problemsOf({ work: { names: ['Ana', ''] } })[0]).toMatch(/^work.names\[1\]: expected a text/)
    expect(problemsOf({ work: { evening: 'yes' } })).toEqual(['work.evening: expected true or false, got "yes"'])
    for (const hands of [[], [0], [1, 1], [1.5], 'Ana'])
      expect(problemsOf({ work: { who: { carry: hands } } })[0]).toMatch(/^work.who.carry: expected numbers of hands/)
    expect(problemsOf({ parts: [{ design: 'bowl', copies: 1, placing_min: -1 }] })).toEqual([
      'parts[0].placing_min: expected minutes from 0 to 1440, got -1',
    ])
  })
  it('judges a design as its own file would be, with the path in front', () => {
    const stems = [{ id: 's', plant: 'rose', mouth: [0, 0], tip: [0, 0, 'high'] }]
    expect(problemsOf({ designs: { ...event().designs, bowl: { ...bowl, stems } } })).toEqual([
      'designs.bowl.stems[0].tip[2]: expected a number in mm, got "high"',
    ])
  })
  it('is refused when it is none', () => {
    for (const text of [
      '',
      '{',
      '[]',
      '{"format":"pedicel-arrangement","version":1}',
      '{"format":"pedicel-event","version":2}',
    ])
      expect(readEvent(text, known).kind).toBe('refused')
  })
  it('never throws, whatever is put in any place', () => {
    let runs = 0
    fc.assert(
      fc.property(fc.constantFrom(...Object.keys(event())), fc.json(), (key, value) => {
        runs += 1
        const read = readEvent(JSON.stringify({ ...event(), [key]: JSON.parse(value) }), known)
        if (read.kind === 'partly') expect(readEvent(writeEvent(read.good), known).kind).toBe('ok')
      }),
      { numRuns: 400 },
    )
    promise(`E1 an event with anything in any place is read, mended or refused: ${runs} files, 0 failures`)
  })
})
