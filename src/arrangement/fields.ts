import * as v from 'valibot'
import { COLOUR, LIMITS } from './limits.ts'
import { wanted } from './words.ts'

/** What the schemas of this house are put together from: each judges one value and says in a sentence what is allowed. */

type Test = (value: unknown) => boolean

/** Anything for which the test holds. The words say what is allowed, with the unit. */
export const field = (words: string, test: Test) => v.custom<unknown>(test, (issue) => wanted(words, issue.input))

const isNumber: Test = (x) => typeof x === 'number' && !Number.isNaN(x)

/** Two sentences for a number: of the wrong kind, and out of range. */
export const number = (words: string, range: string, test: (x: number) => boolean) =>
  v.pipe(
    field(words, isNumber),
    v.check(
      (x) => test(x as number),
      (issue) => wanted(`${words} ${range}`, issue.input),
    ),
  )

export const between = (words: string, least: number, most: number) =>
  number(words, `from ${least} to ${most}`, (x) => x >= least && x <= most)

const isText = (least: number) => (x: unknown) =>
  typeof x === 'string' && x.length >= least && (x.length <= LIMITS.text || [...x].length <= LIMITS.text)
export const text = field(`a text of at most ${LIMITS.text} characters`, isText(0))
export const name = field(`a text of 1 to ${LIMITS.text} characters`, isText(1))
export const colour = field('a colour as #rrggbb', (x) => typeof x === 'string' && COLOUR.test(x))
export const oneOf = (all: readonly string[]) => field(`one of ${all.join(', ')}`, (x) => all.includes(x as string))

export const isThing = (x: unknown): x is Record<string, unknown> =>
  typeof x === 'object' && x !== null && !Array.isArray(x)

/** An object. A required key that is missing reaches its own field as `undefined`, so that the field's words are used. */
export const thing = (words: string, required: v.ObjectEntries, optional: v.ObjectEntries = {}) => {
  const entries = Object.entries(optional).map(([key, schema]) => [key, v.optional(schema)])
  return v.pipe(
    field(words, isThing),
    v.transform((x) => ({
      ...Object.fromEntries(Object.keys(required).map((key) => [key, undefined])),
      ...(x as object),
    })),
    v.object({ ...required, ...Object.fromEntries(entries) }),
  )
}

/** Its length is looked at first: the items of a list that is far too long are not judged one by one. */
export const list = (words: string, each: v.GenericSchema, least: number, most: number) =>
  v.pipe(
    field(words, (x) => Array.isArray(x) && x.length >= least && x.length <= most),
    v.array(each),
  )
