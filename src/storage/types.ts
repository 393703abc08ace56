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

export interface Loaded {
  ok: true
  document: Arrangement
  revision: number
  savedAt: number
}

/** A record that is wrong in whole or in part: what is good of it, if anything, for the person to decide on. */
export interface Unreadable extends Failure {
  why: 'unreadable'
  problems: Problem[]
  good: Arrangement | null
}

/** Where designs live. Nothing here throws: each call says what came of it. */
export interface DesignStore {
  /** Newest first. */
  list(): Promise<{ ok: true; designs: StoredDesign[] } | Failure>
  load(id: string): Promise<Loaded | Unreadable | Failure>
  /**
   * Saves if the store still holds `revision` (0: nothing yet). A design that was evicted is written anew. Success means
   * that the transaction has completed; the first save of a session is also read back and compared.
   */
  save(
    id: string,
    document: Arrangement,
    revision: number,
  ): Promise<{ ok: true; revision: number; savedAt: number } | Failure>
  remove(id: string): Promise<{ ok: true } | Failure>
  /** The record as it lies there, as text, without judging it: the way out when it can't be read. */
  raw(id: string): Promise<{ ok: true; text: string } | Failure>
  /** A setting such as prices or units; undefined where there is none. The caller judges what comes back. */
  setting(key: string): Promise<{ ok: true; value: unknown } | Failure>
  putSetting(key: string, value: unknown): Promise<{ ok: true } | Failure>
  /** Like a setting, but written only if the store still holds `revision` (0: nothing yet); else another tab has written a newer one. */
  putRevision(key: string, value: unknown, revision: number): Promise<{ ok: true; revision: number } | Failure>
  /** What putRevision wrote; revision 0 and undefined where there is nothing. */
  revision(key: string): Promise<{ ok: true; value: unknown; revision: number } | Failure>
}

/** Shown beside the title; the same as in the state. */
export type SaveState =
  | { state: 'loading' }
  | { state: 'saved'; at: number }
  | { state: 'saving' }
  | { state: 'failed'; why: string }
  | { state: 'elsewhere' }
