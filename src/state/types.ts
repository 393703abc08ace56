import type { Arrangement, Edit, Problem } from '../arrangement/index.ts'
import type { ReadingId, ReadingResult } from '../readings/index.ts'
import type { CsvKind, PriceBook } from '../stem-list/index.ts'
import type { SaveState } from '../storage/index.ts'
import type { Units } from '../units/index.ts'

export type { SaveState }

/** The sheets of the house. */
export type Sheet = 'start' | 'drawing' | 'palettes' | 'picture' | 'event'

export interface StudioState {
  /** The part that undo covers: the document and the words for the last step. */
  document: Arrangement
  lastDone: string

  /** The document as it looks during a gesture; null outside one. Readings and views follow it, undo does not. */
  draft: Arrangement | null
  /** Ids of stems, in the order of selection. */
  selection: string[]
  /** The stem that the keyboard stands on in list or canvas; '' for none. */
  focused: string
  /** Stems lit because a piece of advice or a row is pointed at. */
  lit: string[]
  /** Reading whose row is open, and the one whose marks are shown (hover or focus; else the open one). */
  openReading: ReadingId | null
  markedReading: ReadingId | null
  /** A previewed edit of a piece of advice, drawn as a phantom. */
  phantom: Edit | null
  /** Turn of both views, degrees 0–360. */
  turn: number
  sheet: Sheet
  /** Plant and colour in hand: the next touch of a view places one. */
  placing: { plant: string; colour: string } | null
  units: Units
  /** Which spreadsheet a CSV is for. */
  csv: CsvKind
  prices: PriceBook
  readings: ReadingResult[]
  save: SaveState
  /** The design of which more than a sketch has been drawn: until then the machine belongs to its picture. */
  drawn: string
  /** Key of the stored design, '' before the first one is open. */
  designId: string
  /** A file with something wrong in it, waiting for the person's word. */
  opening: { name: string; problems: Problem[]; good: Arrangement | null } | null
  /** Said aloud, politely. */
  message: string
}
