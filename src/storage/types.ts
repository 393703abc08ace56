import type { Arrangement, Problem } from '../arrangement/index.ts'

/**
 * Why something did not happen.
 * - conflict: another tab has saved a newer state of this design; nothing was written
 * - full: the browser has no room left
 * - unavailable: the store can't be reached (private window, blocked, connection lost)
 * - unreadable: what is stored under this name can't be read; it is left as it is
 * - missing: nothing is stored under this name
 */
export type Why = 'conflict' | 'full' | 'unavailable' | 'unreadable' | 'missing'

export interface Failure {
  ok: false
  why: Why
  /** A whole sentence for the person. */
  message: string
}

export interface StoredDesign {
  id: string
  title: string
  /** Milliseconds since 1970. */
  savedAt: number
  /** 1 for the first state, one more for each that follows. */
  revision: number
  stems: number
  /** False: the record is broken; `raw` still gives it, and nothing overwrites it. */
  readable: boolean
}

export interface Loaded<D = Arrangement> {
  ok: true
  document: D
  revision: number
  savedAt: number
}
export type Saved = { ok: true; revision: number; savedAt: number } | Failure

/** What saving by itself needs of a store. */
export interface Keeper<D, L = Loaded<D> | Failure> {
  load(id: string): Promise<L>
  save(id: string, document: D, revision: number): Promise<Saved>
  /** The record as it lies there, as text, without judging it: the way out when it can't be read. */
  raw(id: string): Promise<{ ok: true; text: string } | Failure>
}

/** A record that is wrong in whole or in part: what is good of it, if anything, for the person to decide on. */
export interface Unreadable extends Failure {
  why: 'unreadable'
  problems: Problem[]
  good: Arrangement | null
}

/** Where designs live. Nothing here throws: each call says what came of it. */
export interface DesignStore extends Keeper<Arrangement, Loaded | Unreadable | Failure> {
  /** Newest first. */
  list(): Promise<{ ok: true; designs: StoredDesign[] } | Failure>
  /**
   * Saves if the store still holds `revision` (0: nothing yet). A design that was evicted is written anew. Success means
   * that the transaction has completed; the first save of a session is also read back and compared.
   */
  save(id: string, document: Arrangement, revision: number): Promise<Saved>
  remove(id: string): Promise<{ ok: true } | Failure>
  /** A setting such as prices or units; undefined where there is none. The caller judges what comes back. */
  setting(key: string): Promise<{ ok: true; value: unknown } | Failure>
  putSetting(key: string, value: unknown): Promise<{ ok: true } | Failure>
  /** Puts what `change` makes of the setting that is there now: what another tab has put meanwhile is seen. */
  changeSetting(key: string, change: (there: unknown) => unknown): Promise<{ ok: true } | Failure>
}

export interface KeptText {
  id: string
  /** As it lies there; that of a broken record is the record. */
  text: string
  /** 0: the record is broken, and nothing overwrites it. */
  revision: number
  /** Milliseconds since 1970. */
  savedAt: number
  /** Thrown away, but still here. */
  thrown: boolean
}

/** Where texts of one kind live, such as events. Nothing here throws: each call says what came of it. */
export interface TextStore extends Keeper<string> {
  /** Newest first, those that were thrown away among them. */
  list(): Promise<{ ok: true; texts: KeptText[] } | Failure>
  /** Throws a text away, or takes that back; a page that goes on with it takes it back too. */
  mark(id: string, thrown: boolean): Promise<{ ok: true } | Failure>
  /** For good. */
  remove(id: string): Promise<{ ok: true } | Failure>
  /** Moves what an older version kept under a key of its own to `id`, exactly once, however many pages try. */
  adopt(key: string, id: string): Promise<{ ok: true; adopted: boolean } | Failure>
}

/** Shown beside the title; the same as in the state. */
export type SaveState =
  | { state: 'loading' }
  | { state: 'saved'; at: number }
  | { state: 'saving' }
  | { state: 'failed'; why: string }
  | { state: 'elsewhere' }
