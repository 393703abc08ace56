import * as v from 'valibot'
import { fields, isDate, LIMITS } from '../arrangement/index.ts'

const { between, field, list, name, number, text, thing } = fields

/** The limits at the event's door. Ours: far above what one event needs. Its designs lie two levels deep in it. */
export const EVENT_LIMITS = {
  file_bytes: 20_000_000,
  nesting: LIMITS.nesting + 2,
  plants: 1_000,
  parts: 100,
  tables: 10_000,
  hours: 240,
  people: 100,
  minutes: 1_440,
  money: 1e12,
  done: 2_000,
  /** The earliest day before the event on which flowers come. */
  daysBefore: 14,
  id: 100,
  /** Shortest and longest stem that is sold, mm; a side stem may be none at all. */
  stem_mm: [50, 3_000],
  heads: 50,
  pieces: 10,
} as const

/** HH:MM of a day. */
export const isClock = (x: unknown): boolean => typeof x === 'string' && /^([01]\d|2[0-3]):[0-5]\d$/.test(x)

/** A time zone that this machine knows. */
export const isZone = (x: unknown): boolean => {
  if (typeof x !== 'string' || x.length === 0 || x.length > 80) return false
  try {
    new Intl.DateTimeFormat('en', { timeZone: x })
    return true
  } catch {
    return false
  }
}

const whole = (words: string, least: number, most: number) =>
  number(words, `from ${least} to ${most}`, (x) => Number.isInteger(x) && x >= least && x <= most)
const minutes = between('minutes', 0, EVENT_LIMITS.minutes)
const clock = field('a time of day as "09:00"', isClock)

/** An object with one value a key, each judged by itself. */
const byKey = (words: string, each: v.GenericSchema, most: number = EVENT_LIMITS.plants) =>
  v.pipe(
    field(words, (x) => fields.isThing(x) && Object.keys(x).length <= most),
    v.record(v.string(), each),
  )

/** What stems are like by plant: an object of its own for each. */
const ownStems = byKey(
  'an object of stems by plant, such as {"rose-spray": {"heads": 3}}',
  thing(
    'a stem as {"stem_mm": 400, "heads": 3, "side_mm": 180}',
    {},
    {
      stem_mm: between('a number in mm', ...EVENT_LIMITS.stem_mm),
      heads: whole('a whole number of heads', 1, EVENT_LIMITS.heads),
      side_mm: between('a number in mm', 0, EVENT_LIMITS.stem_mm[1]),
      pieces: whole('a whole number of pieces along a stem', 1, EVENT_LIMITS.pieces),
    },
  ),
)

const part = thing(
  'a part of the event',
  { design: name, copies: whole('a whole number of copies', 1, LIMITS.copies) },
  { place: text, title: text, placing_min: minutes },
)

const handMinutes = thing(
  'minutes of work',
  {},
  {
    stem: minutes,
    piece: minutes,
    receiving: minutes,
    conditioning: minutes,
    vessel: minutes,
    binding: minutes,
    watering: minutes,
    packing: minutes,
    setting: minutes,
  },
)

const isWhole = (x: unknown, least: number, most: number): boolean =>
  Number.isInteger(x) && (x as number) >= least && (x as number) <= most

/** The hands at a task: numbers from 1, none twice. */
const hands = field(
  `numbers of hands from 1 to ${EVENT_LIMITS.people}, such as [1, 2]`,
  (x) =>
    Array.isArray(x) &&
    x.length > 0 &&
    new Set(x).size === x.length &&
    x.every((h) => isWhole(h, 1, EVENT_LIMITS.people)),
)

const dayBefore = field(`a whole number of days from 0 to ${EVENT_LIMITS.daysBefore}`, (x) =>
  isWhole(x, 0, EVENT_LIMITS.daysBefore),
)

const deliveries = thing(
  'when flowers come',
  {},
  {
    days: list('a list of days before the event', dayBefore, 0, EVENT_LIMITS.daysBefore + 1),
    of: byKey(`an object of days before the event by plant, from 0 to ${EVENT_LIMITS.daysBefore}`, dayBefore),
  },
)

const work = thing(
  'how the work is done',
  {},
  {
    people: whole('a whole number of people', 1, EVENT_LIMITS.people),
    names: list(`a list of at most ${EVENT_LIMITS.people} names`, name, 0, EVENT_LIMITS.people),
    who: byKey('an object of hands by task, such as {"trial": [1, 2]}', hands, EVENT_LIMITS.done),
    from: clock,
    to: clock,
    evening: field('true or false', (x) => typeof x === 'boolean'),
    drive: minutes,
    minutes: handMinutes,
  },
)

const cooler = thing('a cooler as {"celsius": 3, "stems": 400} or null', {
  celsius: between('°C', -5, 25),
  stems: whole('a whole number of stems', 0, 100_000),
})

const nothingOr = (words: string, test: (x: unknown) => boolean) => field(words, (x) => x === null || test(x))

export const eventSchema: v.GenericSchema = thing(
  'an event',
  {},
  {
    id: field(
      `a text of at most ${EVENT_LIMITS.id} characters`,
      (x) => typeof x === 'string' && x.length <= EVENT_LIMITS.id,
    ),
    title: text,
    date: field(
      'a local date and time that exists, such as 2027-06-12T15:00, or ""',
      (x) => x === '' || (typeof x === 'string' && isDate(x) && !/[Z+]|-\d\d:?\d\d$/.test(x.slice(10))),
    ),
    zone: field('a time zone such as "Europe/Lisbon"', isZone),
    seasons: nothingOr('"north", "south" or null', (x) => x === 'north' || x === 'south'),
    hours: between('hours', 0, EVENT_LIMITS.hours),
    tables: whole('a whole number of tables', 0, EVENT_LIMITS.tables),
    parts: list(`a list of at most ${EVENT_LIMITS.parts} parts`, part, 0, EVENT_LIMITS.parts),
    trim_mm: between('a number in mm', 0, 500),
    spare: byKey('an object of shares from 0 to 1 by plant', between('a share', 0, 1)),
    stems: ownStems,
    budget: nothingOr(
      'a whole number of minor units (cents) or null',
      (x) => Number.isSafeInteger(x) && (x as number) >= 0 && (x as number) <= EVENT_LIMITS.money,
    ),
    currency: field(
      'a currency such as "EUR", or ""',
      (x) => x === '' || (typeof x === 'string' && /^[A-Z]{3}$/.test(x)),
    ),
    work,
    deliveries,
    cooler: v.nullable(cooler),
    done: list(`a list of at most ${EVENT_LIMITS.done} tasks`, name, 0, EVENT_LIMITS.done),
  },
)
