import { applyEdit, type OwnBands, type Problem, problemLine, readArrangement } from '../arrangement/index.ts'
import { EXAMPLE_PRICES, plantIds } from '../catalogue/index.ts'
import { resolveArrangement } from '../geometry/index.ts'
import { type Advice, OWN_BANDS, type ReadingResult, readAll } from '../readings/index.ts'
import { type Purchase, purchase, type StemRow, stemList } from '../stem-list/index.ts'
import type { FileText } from './files.ts'
import { type InspectedEvent, inspectEvent, isEventText } from './inspect-event.ts'

/** The line of a file that was read. Lengths in mm, money in the currency's main unit. */
export interface Inspected {
  file: string
  title: string
  /** Bands of the person's own that the readings were held against. */
  ownBands?: OwnBands
  readings: Record<
    string,
    { score: number | null; values: ReadingResult['values']; advice: Advice[]; notApplicable?: string }
  >
  stemList: StemRow[]
  purchase: Purchase
}

/** The line of a file that was not: the first problem with its path in front, and all of them. */
export interface Refused {
  file: string
  error: string
  problems?: Problem[]
}

/** A mistake of ours, not of the file, is said at its line; the other files are still read. */
const guarded = <T>(file: string, work: () => T): T | Refused => {
  try {
    return work()
  } catch (error) {
    return { file, error: `it could not be worked out: ${error instanceof Error ? error.message : String(error)}` }
  }
}

/**
 * What one design file has to say, priced by the example prices (invented, and they say so). A file with anything wrong in it is refused whole.
 * @param copies instead of the number in the file; null for that one. An event's designs have numbers of their own: it is refused with one
 */
export const inspectFile = (given: FileText, copies: number | null): Inspected | InspectedEvent | Refused => {
  if ('error' in given) return given
  const { file, text } = given
  if (isEventText(text))
    return copies === null
      ? guarded(file, () => inspectEvent(file, text))
      : { file, error: '--copies is for a design: the designs of an event have numbers of their own' }
  const read = readArrangement(text, { plants: plantIds, bands: OWN_BANDS })
  if (read.kind !== 'ok')
    return {
      file,
      error: read.problems[0] ? problemLine(read.problems[0]) : 'it can’t be read',
      problems: read.problems,
    }
  return guarded(file, () => {
    const document = copies === null ? read.document : applyEdit(read.document, { do: 'set-setting', set: { copies } })
    const resolved = resolveArrangement(document)
    const readings = readAll(resolved).map(({ id, score, values, advice, notApplicable }) => [
      id,
      { score, values, advice, ...(notApplicable ? { notApplicable } : {}) },
    ])
    return {
      file,
      title: document.title,
      ...(document.bands && { ownBands: document.bands }),
      readings: Object.fromEntries(readings),
      stemList: stemList(resolved),
      purchase: purchase(resolved, document.setting.copies, EXAMPLE_PRICES),
    }
  })
}
