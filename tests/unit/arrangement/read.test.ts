import { describe, expect, it } from 'vitest'
import { consequence, LIMITS, paletteProblems, readArrangement } from '../../../src/arrangement/index.ts'
import { bowlRaw, fixture, known, lines, read } from './helpers.ts'

const partly = (raw: unknown) => {
  const result = read(raw)
  if (result.kind !== 'partly') throw new Error(JSON.stringify(result))
  return result
}

describe('reading a design file', () => {
  it('says where, what was there and what is allowed', () => {
    const raw = bowlRaw()
    raw.stems[1].tip[2] = 'high'
    expect(lines(raw)).toEqual(['stems[1].tip[2]: expected a number in mm, got "high"'])
  })

  it('lists every problem in the order of the file, not only the first', () => {
    const raw = bowlRaw()
    raw.form = 'heap'
    raw.vessel.colour = 'white'
    raw.vessel['odd key'] = 1
    raw.stems[0].openness = 1.5
    raw.stems[2].id = 's1'
    raw.setting.date = '2027-02-30'
    expect(lines(raw)).toEqual([
      'form: expected one of round, low, airy, vertical, triangle, crescent, cascade, got "heap"',
      'vessel.colour: expected a colour as #rrggbb, got "white"',
      'stems[0].openness: expected a fraction from 0 to 1, got 1.5',
      'stems[2].id: expected an id of its own (stems[0] has it already), got "s1"',
      'setting.date: expected an ISO 8601 date that exists, such as 2027-06-12 or 2027-06-12T15:00, got "2027-02-30"',
    ])
  })

  it('stops listing at 200 and says how many more there are', () => {
    const raw = bowlRaw()
    raw.stems = Array.from({ length: 150 }, (_, i) => ({
      id: `s${i}`,
      plant: 'rose-garden',
      mouth: [0, 0],
      tip: [null, 'x', 1],
    }))
    const all = lines(raw)
    expect(all).toHaveLength(LIMITS.problems + 1)
    expect(all.at(-1)).toBe(': and 100 more')
  })

  it.each<[string, (raw: ReturnType<typeof bowlRaw>) => void, string]>([
    ['a number that is not finite', (d) => { d.stems[0].tip[0] = 'INF' }, 'stems[0].tip[0]: expected a number in mm from -5000 to 5000, got Infinity'],
    ['a number that is not finite in a key we do not know', (d) => { d.vessel.extra = ['INF'] }, 'vessel.extra[0]: expected a finite number, got Infinity'],
    ['a stem five metres out', (d) => { d.stems[0].mouth[1] = 5001 }, 'stems[0].mouth[1]: expected a number in mm from -5000 to 5000, got 5001'],
    ['a vessel of no width', (d) => { d.vessel.width = 0 }, 'vessel.width: expected a number in mm above 0 and up to 5000, got 0'],
    ['a missing height', (d) => { delete d.vessel.height }, 'vessel.height: expected a number in mm, got nothing'],
    ['a round vessel that is not', (d) => { d.vessel.depth = 120 }, 'vessel.depth: expected the width, 140 mm, since the vessel is round, got 120'],
    ['an oval without a depth', (d) => { d.vessel.plan = 'oval'; delete d.vessel.depth }, 'vessel.depth: expected a number in mm (only a round vessel may leave it out), got nothing'],
    ['walls that meet', (d) => { d.vessel.wall = 70 }, 'vessel.wall: expected a wall in mm under half of the least inner size (under 0), got 70'],
    ['a profile that doubles back', (d) => { d.vessel.profile[2][0] = 0.5 }, 'vessel.profile: expected heights that rise from point to point, got some that do not'],
    ['a profile of nothing', (d) => { d.vessel.profile[1][1] = 0 }, 'vessel.profile[1][1]: expected a half-width as a fraction above 0 and up to 5, got 0'],
    ['too many copies', (d) => { d.setting.copies = 10001 }, 'setting.copies: expected a whole number of copies from 1 to 10000, got 10001'],
    ['half a copy', (d) => { d.setting.copies = 1.5 }, 'setting.copies: expected a whole number of copies from 1 to 10000, got 1.5'],
    ['a slot that is not there', (d) => { d.stems[0].colour.slot = 2 }, 'stems[0].colour.slot: expected a slot of the palette, from 0 to 1, got 2'],
    ['a plant known only to the language', (d) => { d.stems[0].plant = 'constructor' }, 'stems[0].plant: expected the id of a plant in the catalogue, got "constructor"'],
    ['a form known only to the language', (d) => { d.form = 'toString' }, 'form: expected one of round, low, airy, vertical, triangle, crescent, cascade, got "toString"'],
    ['a title without end', (d) => { d.title = 'x'.repeat(501) }, `title: expected a text of at most 500 characters, got "${'x'.repeat(37)}"…`],
    ['a light nobody has', (d) => { d.setting.light = 'moon' }, 'setting.light: expected one of daylight, overcast, warm-lamp, candle, got "moon"'],
    ['a setting that is a list', (d) => { d.setting = [] }, 'setting: expected a setting, got an empty list'],
    ['a point of two in place of three', (d) => { d.stems[0].tip = [1, 2] }, 'stems[0].tip: expected a point [x, y, z] in mm, got a list of 2'],
    ['a stem that is null', (d) => { d.stems[1] = null }, 'stems[1]: expected a stem, got null'],
    ['a head of null', (d) => { d.stems[0].head = null }, 'stems[0].head: expected a number in mm, got null'],
    ['a stem without a plant', (d) => { delete d.stems[0].plant }, 'stems[0].plant: expected the id of a plant in the catalogue, got nothing'],
  ])('refuses %s', (_, change, line) => {
    const raw = bowlRaw()
    change(raw)
    const result = readArrangement(JSON.stringify(raw).replaceAll('"INF"', '1e999'), known)
    expect(result.kind === 'ok' ? [] : result.problems.map((p) => `${p.path}: ${p.message}`)).toEqual([line])
  }) // biome-ignore format: a table

  it('takes an emoji for one character', () => {
    const raw = bowlRaw()
    raw.title = '🌹'.repeat(500)
    expect(read(raw).kind).toBe('ok')
  })

  it.each(['2028-02-29', '2027-06-12T15:00', '2027-06-12T15:00:30.5Z', '2027-06-12T15:00+02:00'])(
    'takes the date %s',
    (date) => {
      const raw = bowlRaw()
      raw.setting.date = date
      expect(read(raw).kind).toBe('ok')
    },
  )

  it.each([
    '2027-02-29',
    '2100-02-29',
    '2027-13-01',
    '2027-00-10',
    '2027-04-31',
    '12.6.2027',
    '2027-06-12T24:00',
    '2027-06-12T15:60',
    '2027-6-1',
    '2027-06-12T',
    '',
  ])('refuses the date %s', (date) => {
    const raw = bowlRaw()
    raw.setting.date = date
    expect(lines(raw).map((l) => l.split(':')[0])).toEqual(['setting.date'])
  })

  it('takes a byte order mark', () => {
    expect(readArrangement(`\uFEFF${fixture('v1-least.json')}`, known).kind).toBe('ok')
  })

  it.each<[string, string, string]>([
    ['nothing at all', '', 'expected JSON, got an empty file'],
    ['half a file', '{"format": "pedicel-arr', 'expected JSON, got something else: "{\\"format\\": \\"pedicel-arr"'],
    ['a list', '[]', 'expected an arrangement, got an empty list'],
    ['a shopping list', '{"items": []}', 'expected "pedicel-arrangement", got nothing'],
    [
      'a newer version',
      '{"format": "pedicel-arrangement", "version": 2}',
      'expected version 1 or older, got 2: it was written by a newer Pedicel',
    ],
    [
      'a version in words',
      '{"format": "pedicel-arrangement", "version": "1"}',
      'expected a whole number from 1, got "1"',
    ],
    ['nests within nests', '['.repeat(100_000), 'expected at most 32 levels of nesting, got 100000'],
    ['33 levels', '['.repeat(33) + ']'.repeat(33), 'expected at most 32 levels of nesting, got 33'],
    ['more than 2 MB', ' '.repeat(2_000_001), 'expected a file of at most 2 MB, got more'],
    ['more than 2 MB in fewer characters', 'é'.repeat(1_000_001), 'expected a file of at most 2 MB, got more'],
  ])('refuses %s with one clear sentence', (_, text, message) => {
    const result = readArrangement(text, known)
    expect(result.kind === 'refused' && result.problems.map((p) => p.message)).toEqual([message])
  })

  it('counts only brackets outside of texts as nesting', () => {
    const raw = bowlRaw()
    raw.title = '[[[[['.repeat(50)
    raw.notes = '"[{\\'
    expect(read(raw).kind).toBe('ok')
  })

  it('fills in what is not there', () => {
    const result = readArrangement(fixture('v1-least.json'), known)
    expect(result.kind === 'ok' && result.document).toMatchObject({
      title: 'Untitled',
      form: 'round',
      vessel: { plan: 'round', depth: 95, wall: 4, mechanics: 'netting' },
      palette: { name: '', slots: [] },
      stems: [{ role: 'mass', openness: 0.7, bend: 0, piece: 'whole', colour: '#b8b2a7' }],
      setting: { copies: 1, light: 'daylight', table: { shape: 'round', diameter: 1524 } },
    })
  })

  it('gives a thimble a wall that fits it', () => {
    const result = read({ format: 'pedicel-arrangement', version: 1, vessel: { width: 8, height: 20 } })
    expect(result.kind === 'ok' && result.document.vessel.wall).toBeLessThan(2)
  })

  it('keeps keys that it does not know, at every level, whatever their names', () => {
    const text = fixture('v1-window-sill-bowl.json').replace('"notes"', '"__proto__": {"a": 1}, "valueOf": 7, "notes"')
    const result = readArrangement(text, known)
    if (result.kind !== 'ok') throw new Error('refused')
    const d = result.document as unknown as Record<string, unknown>
    expect(JSON.stringify(d.notes)).toBe('["kept as it is",{"constructor":1,"toString":null}]')
    expect(Object.hasOwn(d, '__proto__')).toBe(true)
    expect(d.valueOf).toBe(7)
    expect(result.document.vessel).toHaveProperty('maker')
    expect(result.document.palette.slots[1]).toHaveProperty('note', 'dusty')
    expect(result.document.stems[1]).toHaveProperty('tied', { to: 's1' })
  })
})

describe('saving what is good of a file', () => {
  it('leaves out a bad stem and keeps the others as they are', () => {
    const raw = bowlRaw()
    raw.stems[1].mouth = 'left'
    const { good, problems } = partly(raw)
    expect(good.stems.map((s) => s.id)).toEqual(['s1', 's3'])
    expect(problems.map(consequence)).toEqual(['this stem is left out'])
  })

  it('does not lose a good stem because a bad one before it has the same id', () => {
    const raw = bowlRaw()
    raw.stems[0] = { id: 's3', plant: 'no-such-plant', mouth: [0, 0], tip: [0, 0, 1] }
    expect(partly(raw).good.stems.map((s) => s.id)).toEqual(['s2', 's3'])
  })

  it('of two stems with one id, keeps the first', () => {
    const raw = bowlRaw()
    raw.stems[2].id = 's1'
    expect(partly(raw).good.stems.map((s) => s.plant)).toEqual(['rose-garden', 'eucalyptus-silver-dollar'])
  })

  it('gives a bad optional value its default', () => {
    const raw = bowlRaw()
    raw.stems[0].openness = -1
    raw.vessel.profile = 3
    raw.setting.table = { shape: 'round' }
    const { good } = partly(raw)
    expect(good.stems[0]?.openness).toBe(0.7)
    expect(good.vessel).not.toHaveProperty('profile')
    expect(good.setting.table).toEqual({ shape: 'round', diameter: 1524 })
    expect(good.setting.copies).toBe(12)
  })

  it('greys a bad slot in its place, so that stems keep theirs', () => {
    const raw = bowlRaw()
    raw.palette.slots[0] = null
    const { good } = partly(raw)
    expect(good.palette.slots.map((s) => s.colour)).toEqual(['#b8b2a7', '#8fa07a'])
    expect(good.stems[1]?.colour).toEqual({ slot: 1 })
    raw.palette.slots[0] = { colour: 3, part: 'focal', note: 1 }
    expect(partly(raw).good.palette.slots[0]).toEqual({ colour: '#b8b2a7', part: 'focal', note: 1 })
  })

  it('gives a stem whose slot does not exist the first slot of its part', () => {
    const raw = bowlRaw()
    raw.stems[1].colour.slot = 9
    expect(partly(raw).good.stems[1]?.colour).toEqual({ slot: 1 })
  })

  it('keeps the first 2,000 of too many stems, and judges those', () => {
    const raw = bowlRaw()
    raw.stems = Array.from({ length: 2300 }, (_, i) => ({
      id: `s${i}`,
      plant: i === 5 ? 'nix' : 'rose-garden',
      mouth: [0, 0],
      tip: [0, 0, 9],
    }))
    const { good, problems } = partly(raw)
    expect(good.stems).toHaveLength(1999)
    expect(problems.map((p) => p.path)).toEqual(['stems', 'stems[5].plant'])
  })

  it('brings to light what another fault hid', () => {
    const raw = bowlRaw()
    raw.vessel.plan = 'pentagon'
    raw.vessel.depth = 60
    raw.vessel.wall = 20
    const { good, problems } = partly(raw)
    expect(good.vessel).toMatchObject({ plan: 'oval', depth: 60, wall: 4 })
    expect(problems.map((p) => p.path)).toEqual(['vessel.plan', 'vessel.wall'])
  })

  it('refuses a file whose vessel has no right size', () => {
    const raw = bowlRaw()
    raw.vessel.height = null
    raw.stems[0].tip = 0
    const result = read(raw)
    expect(result.kind).toBe('refused')
    expect(lines(raw)).toHaveLength(2)
  })

  it('judges a palette alone by the same rules', () => {
    expect(paletteProblems({ name: 'A', slots: [{ colour: '#c9717b', part: 'focal' }], from: 'a field' })).toEqual([])
    expect(paletteProblems({ slots: [{ colour: 'pink', part: 'star' }] }).map((p) => p.path)).toEqual([
      'slots[0].colour',
      'slots[0].part',
    ])
  })
})
