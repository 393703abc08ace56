import type { Arrangement } from '../arrangement/index.ts'
import type { Unwritten } from './last-words.ts'
import type { Failure, Keeper, Loaded, SaveState } from './types.ts'

export interface AutosaveOptions {
  /** Hears every change of the state. */
  onState: (state: SaveState) => void
  /** How long a hand has to rest before a save, ms. Ours: short enough to lose nothing, long enough for a drag. */
  delay?: number
  /** Waits between tries after a failure, ms; then only the next change tries again. Ours. */
  retries?: readonly number[]
  /** Another tab writes this design: look, but never write. */
  readOnly?: boolean
}

export interface Autosaver<D = Arrangement, L = Loaded<D> | Failure> {
  /** What came of the first load; nothing is written before. A design that is missing is a new one. */
  loaded: Promise<L>
  /** The document has changed. Before the load has finished it is kept and written after. */
  changed(document: D): void
  /** Writes what is waiting, now; resolves true when nothing is left unwritten, false if it could not be. For page-hide and closing. */
  flush(): Promise<boolean>
  /** Flushes and ends. */
  stop(): Promise<boolean>
  state(): SaveState
  /** The revision that is known to be stored. */
  revision(): number
  /** What is not known to be written; null if nothing, or if it may not be. */
  unwritten(): Unwritten<D> | null
}

/**
 * Keeps one design, or another text, saved. The document in memory is the truth; here it is carried to the store after each rest, one
 * write at a time, always the newest. A failure stays in the state until a save succeeds. After a conflict nothing more
 * is written (state `elsewhere`). A stored record that can't be read is never written over.
 */
export const autosaver = <D, L extends Loaded<D> | Failure = Loaded<D> | Failure>(
  store: Keeper<D, L>,
  id: string,
  options: AutosaveOptions,
): Autosaver<D, L> => {
  const { onState, delay = 400, retries = [2000, 8000, 30_000], readOnly = false } = options
  let state: SaveState = { state: 'loading' }
  let waiting: D | null = null
  let saved: D | null = null
  let underWay: D | null = null
  let revision = 0
  let timer: ReturnType<typeof setTimeout> | undefined
  let writing: Promise<boolean> | null = null
  let failures = 0
  let ended = false
  /** Null until the store has said what it holds: only then is it known what may be written. */
  let ready: boolean | null = null

  const show = (next: SaveState): void => {
    state = next
    onState(next)
  }
  const failed = (why: string): false => {
    show({ state: 'failed', why })
    const wait = retries[failures]
    failures += 1
    if (wait !== undefined && !ended) schedule(wait)
    return false
  }
  const schedule = (ms: number): void => {
    clearTimeout(timer)
    timer = setTimeout(() => void flush(), ms)
  }

  const load = async (): Promise<L> => {
    const result = await store.load(id)
    if (result.ok) {
      revision = result.revision
      saved = result.document
      ready = !readOnly
      show(readOnly ? { state: 'elsewhere' } : waiting ? { state: 'saving' } : { state: 'saved', at: result.savedAt })
    } else if (result.why === 'missing') {
      ready = !readOnly
      if (readOnly) show({ state: 'elsewhere' })
      else if (waiting) show({ state: 'saving' })
    } else if (result.why === 'unreadable') {
      ready = false
      show({ state: 'failed', why: result.message })
    } else failed(result.message)
    return result
  }

  const writeAll = async (): Promise<boolean> => {
    if (ready === null) await load()
    while (ready && waiting) {
      const document = waiting
      waiting = null
      underWay = document
      const result = await store.save(id, document, revision)
      underWay = null
      if (result.ok) {
        revision = result.revision
        saved = document
        failures = 0
        show(waiting ? { state: 'saving' } : { state: 'saved', at: result.savedAt })
        continue
      }
      waiting ??= document
      if (result.why !== 'conflict') return failed(result.message)
      ready = false
      show({ state: 'elsewhere' })
    }
    return !waiting
  }

  const flush = async (): Promise<boolean> => {
    clearTimeout(timer)
    await first
    if (writing) await writing
    if (writing) return flush()
    if (!waiting && ready !== null) return true
    writing = writeAll().finally(() => {
      writing = null
    })
    return writing
  }

  const first = load()
  const loaded = first.then((result) => {
    if (waiting && ready) schedule(delay)
    return result
  })

  return {
    loaded,
    changed: (document) => {
      if (ended || (document === saved && !waiting && !writing)) return
      waiting = document
      if (ready && state.state === 'saved') show({ state: 'saving' })
      if (ready && state.state === 'loading') show({ state: 'saving' })
      if (ready !== false && (ready || state.state === 'failed')) schedule(delay)
    },
    flush,
    stop: async () => {
      ended = true
      const result = await flush()
      clearTimeout(timer)
      return result
    },
    state: () => state,
    revision: () => revision,
    unwritten: () => {
      const document = waiting ?? underWay
      if (ready === false || !document) return null
      return { document, revision, underWay: waiting && underWay }
    },
  }
}
