import * as v from 'valibot'
import { crossFaults } from './cross.ts'
import { complete } from './defaults.ts'
import { isThing } from './fields.ts'
import { LIMITS } from './limits.ts'
import { CURRENT_VERSION, migrate } from './migrate.ts'
import { leaveOut } from './salvage.ts'
import { documentSchema, type KnownBands, paletteSchema } from './schema.ts'
import { notFinite, parseText, withoutMinusZero } from './text.ts'
import type { Problem, ReadResult } from './types.ts'
import { asProblem, type Fault, type Path, wanted, writtenPath } from './words.ts'

/** What the reader has to be told, since the document's room does not know the catalogue. */
export interface Known {
  plants: ReadonlySet<string>
  /** Bands that a person may set, with the range of each; any if absent. */
  bands?: KnownBands
}

const ORDER = ['format', 'version', 'title', 'form', 'vessel', 'palette', 'stems', 'setting', 'bands']

const schemaFaults = (schema: v.GenericSchema, raw: unknown): Fault[] =>
  (v.safeParse(schema, raw).issues ?? []).map((issue) => ({
    path: (issue.path ?? []).map((item) => item.key as string | number),
    message: issue.message,
  }))

const placeOf = ({ path }: Fault): number[] => {
  const at = ORDER.indexOf(String(path[0]))
  return [path.length === 0 ? -1 : at < 0 ? ORDER.length : at, path.find((key) => typeof key === 'number') ?? -1]
}

/** Everything wrong with data that says it is a document of the current version, in the order of the document. */
const faultsOf = (raw: Record<string, unknown>, known: Known): Fault[] => {
  const own = schemaFaults(documentSchema(known.plants, known.bands), raw)
  const paths = new Set<string>()
  for (const { path } of own) for (let n = 0; n <= path.length; n += 1) paths.add(JSON.stringify(path.slice(0, n)))
  const exact = new Set(own.map(({ path }) => JSON.stringify(path)))
  const wrong = (...path: Path): boolean =>
    paths.has(JSON.stringify(path)) || path.some((_, n) => exact.has(JSON.stringify(path.slice(0, n))))
  const unseen = notFinite(raw).filter(({ path }) => !wrong(...path))
  return [...own, ...crossFaults(raw, wrong), ...unseen]
    .map((fault) => ({ fault, place: placeOf(fault) }))
    .sort((a, b) => a.place[0]! - b.place[0]! || a.place[1]! - b.place[1]!)
    .map(({ fault }) => fault)
}

/** At most so many problems, the last of which says how many more there are. */
const listed = (faults: readonly Fault[]): Problem[] => {
  const more = faults.length - LIMITS.problems
  const first = faults.slice(0, LIMITS.problems).map(asProblem)
  return more > 0 ? [...first, { path: '', message: `and ${more} more` }] : first
}

/** Is it a document of ours, of a version that we know? Checked first, so that a foreign file gets one clear sentence. */
const doorFault = (raw: unknown): Fault | null => {
  if (!isThing(raw)) return { path: [], message: wanted('an arrangement', raw) }
  const { format, version } = raw
  if (format !== 'pedicel-arrangement') return { path: ['format'], message: wanted('"pedicel-arrangement"', format) }
  if (typeof version !== 'number' || !Number.isInteger(version) || version < 1)
    return { path: ['version'], message: wanted('a whole number from 1', version) }
  if (version > CURRENT_VERSION)
    return {
      path: ['version'],
      message: `${wanted(`version ${CURRENT_VERSION} or older`, version)}: it was written by a newer Pedicel`,
    }
  return null
}

const readRaw = (given: unknown, known: Known): ReadResult => {
  const refused = (faults: readonly Fault[]): ReadResult => ({ kind: 'refused', problems: listed(faults) })
  const door = doorFault(given)
  if (door) return refused([door])
  let raw: Record<string, unknown> = migrate(given as Record<string, unknown>)
  let all: Fault[] = []
  // Leaving one thing out can bring another to light (a wall that no longer fits): a few rounds are enough.
  for (let round = 0; round < 5; round += 1) {
    const faults = faultsOf(raw, known)
    const told = new Set(all.map(({ path }) => writtenPath(path)))
    all = all.concat(faults.filter(({ path }) => !told.has(writtenPath(path))))
    if (faults.length === 0) {
      const document = complete(raw)
      return all.length === 0 ? { kind: 'ok', document } : { kind: 'partly', good: document, problems: listed(all) }
    }
    const rest = leaveOut(raw, faults)
    if (!rest) return refused(all)
    raw = rest
  }
  return refused(all)
}

/**
 * Reads the text of a design file.
 *
 * Everything wrong is listed with its path, what was there and what is allowed. Of a file that is only partly right:
 * a stem without a right id, plant, mouth or tip is left out (of two with one id, the second); an optional value gets its
 * default; a slot of the palette that cannot be read becomes a grey one in its place; a stem whose slot does not exist
 * gets the first slot of its part; more than 2,000 stems: the first 2,000. Without a right format, version and vessel size
 * it is refused. Unknown keys are kept everywhere. Never throws, whatever the text.
 * @param text JSON, at most 2 MB of UTF-8; a byte order mark may stand in front
 */
export const readArrangement = (text: string, known: Known): ReadResult => {
  const parsed = parseText(text)
  if ('fault' in parsed) return { kind: 'refused', problems: [asProblem(parsed.fault)] }
  return readRaw(withoutMinusZero(parsed.raw), known)
}

/** What is wrong with a palette, such as one of the files in `palettes/`: the same rules as inside a document. */
export const paletteProblems = (palette: unknown): Problem[] => listed(schemaFaults(paletteSchema, palette))
