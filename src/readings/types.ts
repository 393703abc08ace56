import type { Edit, Form, Point2 } from '../arrangement/index.ts'

export const READING_IDS = [
  'focal-prominence',
  'negative-space',
  'palette-harmony',
  'proportion',
  'visual-balance',
  'stability',
  'mechanics',
  'sight-line',
] as const
export type ReadingId = (typeof READING_IDS)[number]

/** `elevation` marks hold for one way round (turn, degrees) and give [X, z]; `plan` marks give [X, Y] at turn 0. mm. */
export type MarkView = { view: 'elevation'; turn: number } | { view: 'plan' }

export type Mark =
  | ({ kind: 'circle'; centre: Point2; radius: number; label: string } & MarkView)
  | ({ kind: 'outline'; points: Point2[]; label: string } & MarkView)
  /** A level line in the elevation, any way round. */
  | { kind: 'level'; z: number; label: string }
  /** A dimension between two points. */
  | ({ kind: 'span'; from: Point2; to: Point2; label: string } & MarkView)
  /** Whole stems, by id. */
  | { kind: 'stems'; ids: string[]; label: string }

export interface Advice {
  /** A whole sentence naming the stems: what to move and why. */
  text: string
  stems: string[]
  edit?: Edit
  /**
   * What was measured when the edit was tried: the main value of its own reading, and the scores of the readings that were
   * held against it.
   */
  after?: { value: number; scores: Partial<Record<ReadingId, number>> }
}

/** One measured value held against a band. */
export interface Held {
  /** Key in `values`. */
  key: string
  /** Words for the screen. */
  name: string
  value: number
  unit: string
  /** Ends of the gauge on screen. */
  scale: [number, number]
  band: [number, number] | null
  /** What being under and over the band is called, where there are better words. */
  beyond?: [under: string, over: string]
  /** It counts: `13`, never `13.0`. */
  whole?: true
  /** The rule in a sentence, and where it is from; `ours` and `common practice` are said as such. */
  rule: string
  source: string
  /**
   * Name of the band in the document, where the person may set their own; with the ends in force, null for no end, and the
   * range within which they may lie.
   */
  wants?: {
    name: string
    ends: [least: number | null, most: number | null]
    own: boolean
    range: readonly [least: number, most: number]
  }
}

export interface Because {
  /** The value that the row on screen shows. */
  main: Held
  others: Held[]
  /** How the score follows, in a sentence. */
  how: string
  /** How far to trust it. */
  trust: string
}

/** One value from every way round: the first at turn 0, the others evenly from there. null where it can't be said. */
export interface WaysRound {
  name: string
  unit: string
  scale: [number, number]
  /** Which end is the worse one; null where neither is. */
  worst: 'least' | 'most' | null
  values: (number | null)[]
}

export interface ReadingResult {
  id: ReadingId
  /** 0–100, or null when the reading does not apply. */
  score: number | null
  /** Why it does not apply; '' otherwise. */
  notApplicable: string
  values: Record<string, number | string | readonly string[] | readonly number[] | null>
  because: Because | null
  advice: Advice[]
  marks: Mark[]
  /** Only where advice was asked for as well. */
  ways?: WaysRound
}

export interface Band {
  reading: ReadingId
  key: string
  form: Form
  band: [number, number]
  /** How far outside the band the score falls to zero, in the value's unit. */
  fall: number
  source: string
  /** The person's, not the table's. */
  own?: true
}
