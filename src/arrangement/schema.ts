import * as v from 'valibot'
import { between, colour, field, isThing, list, name, number, oneOf, text, thing } from './fields.ts'
import { COLOUR, isBand, isDate, LIMITS } from './limits.ts'
import { FORMS, LIGHTS, MATERIALS, MECHANICS, ROLES, VESSEL_PLANS } from './types.ts'
import { shown, wanted } from './words.ts'

/**
 * The one schema of the document. It only judges; what it is given is kept as it is, so unknown keys stay at every
 * level. What depends on two places at once (ids, slots, the wall) is in cross.ts.
 */

const mm = between('a number in mm', -LIMITS.mm, LIMITS.mm)
const size = number('a number in mm', `above 0 and up to ${LIMITS.mm}`, (x) => x > 0 && x <= LIMITS.mm)
const fraction = between('a fraction', 0, 1)
const halfWidth = number(
  'a half-width as a fraction',
  `above 0 and up to ${LIMITS.halfWidth}`,
  (x) => x > 0 && x <= LIMITS.halfWidth,
)
const copies = number(
  'a whole number of copies',
  `from 1 to ${LIMITS.copies}`,
  (x) => Number.isInteger(x) && x >= 1 && x <= LIMITS.copies,
)

const point = (words: string, each: v.GenericSchema[]) =>
  v.pipe(
    field(words, (x) => Array.isArray(x) && x.length === each.length),
    v.tuple(each),
  )

const profile = v.pipe(
  list(
    `a list of 2 to ${LIMITS.profilePoints} points [height, half-width]`,
    point('a point [height, half-width]', [fraction, halfWidth]),
    2,
    LIMITS.profilePoints,
  ),
  v.check(
    (points) => (points as [number, number][]).every(([h], i, all) => i === 0 || h > all[i - 1]![0]),
    () => 'expected heights that rise from point to point, got some that do not',
  ),
)

const vessel = thing(
  'a vessel',
  { width: size, height: size },
  {
    plan: oneOf(VESSEL_PLANS),
    depth: size,
    profile,
    wall: size,
    material: oneOf(MATERIALS),
    colour,
    mechanics: oneOf(MECHANICS),
    waterFill: fraction,
  },
)

const slot = thing('a slot with a colour and a part', { colour }, { part: oneOf(ROLES) })

export const paletteSchema = thing(
  'a palette',
  {},
  { name: text, slots: list(`a list of at most ${LIMITS.slots} slots`, slot, 0, LIMITS.slots) },
)

const slotNumber = field('the whole number of a slot, from 0', (x) => Number.isInteger(x) && (x as number) >= 0)
const stemColour = v.lazy((x) =>
  isThing(x)
    ? thing('a colour', { slot: slotNumber })
    : field('a colour as #rrggbb or a slot as {"slot": 0}', (c) => typeof c === 'string' && COLOUR.test(c)),
)

const stem = (plants: ReadonlySet<string>) =>
  thing(
    'a stem',
    {
      id: name,
      plant: field('the id of a plant in the catalogue', (x) => typeof x === 'string' && plants.has(x)),
      mouth: point('a point [x, y] in mm', [mm, mm]),
      tip: point('a point [x, y, z] in mm', [mm, mm, mm]),
    },
    {
      role: oneOf(ROLES),
      colour: stemColour,
      openness: fraction,
      bend: between('a fraction', -1, 1),
      head: size,
      piece: oneOf(['whole', 'lateral']),
    },
  )

const table = v.lazy((x) =>
  isThing(x) && x.shape === 'rectangular'
    ? thing('a table', { length: size, width: size })
    : thing('a table', { shape: oneOf(['round', 'rectangular']), diameter: size }),
)

const setting = thing(
  'a setting',
  {},
  {
    copies,
    date: field(
      'an ISO 8601 date that exists, such as 2027-06-12 or 2027-06-12T15:00',
      (x) => typeof x === 'string' && isDate(x),
    ),
    light: oneOf(LIGHTS),
    linen: colour,
    table,
  },
)

/** Bands that a person may set, by name, with the least and most that each of its ends may be. */
export type KnownBands = ReadonlyMap<string, readonly [least: number, most: number]>

const ANY: readonly [number, number] = [-LIMITS.band, LIMITS.band]
const bandProblem = (value: unknown, [low, high]: readonly [number, number]): string =>
  `expected a band [least, most], each a number from ${low} to ${high} or one of them null, the least first, got ${
    Array.isArray(value) && value.length > 0 && value.length <= 3 ? `[${value.map(shown).join(', ')}]` : shown(value)
  }`

const ownBands = (known: KnownBands | undefined) =>
  v.pipe(
    field('an object of bands by name', isThing),
    v.rawCheck(({ dataset, addIssue }) => {
      for (const [key, value] of Object.entries(dataset.value as object)) {
        const path = [{ type: 'object', origin: 'value', input: dataset.value, key, value }] as const
        const range = known ? known.get(key) : ANY
        if (!range)
          addIssue({
            message: wanted(`one of ${[...known!.keys()].join(', ')}`, key),
            path: [...path] as never,
          })
        else if (!isBand(value, range)) addIssue({ message: bandProblem(value, range), path: [...path] as never })
      }
    }),
  )

/**
 * @param plants the ids that are in the catalogue
 * @param bands the bands that a person may set; any if absent
 */
export const documentSchema = (plants: ReadonlySet<string>, bands?: KnownBands): v.GenericSchema =>
  thing(
    'an arrangement',
    { vessel },
    {
      title: text,
      form: oneOf(FORMS),
      palette: paletteSchema,
      stems: list(`a list of at most ${LIMITS.stems} stems`, stem(plants), 0, LIMITS.stems),
      setting,
      bands: ownBands(bands),
    },
  )
