import { type Arrangement, type Known, readArrangement, writeArrangement } from '../arrangement/index.ts'
import { newName } from './names.ts'
import type { DesignStore, Failure, Keeper, Loaded } from './types.ts'

/**
 * A page that goes away is not waited for: a database answers too late for its last change. So what is not yet known to
 * be written is put down at once in the browser's small store, which answers on the spot, and is carried over into the
 * database when the site is next opened.
 */
export interface Unwritten<D = Arrangement> {
  document: D
  /** The revision that the database held, as far as the page knew. */
  revision: number
  /** A state whose writing was under way: it may have arrived or not. */
  underWay: D | null
}

/** The browser's small store; what of it is used. */
export type SmallStore = Pick<Storage, 'getItem' | 'setItem' | 'removeItem' | 'key' | 'length'>

const PREFIX = 'pedicel-unwritten-'

interface Words {
  text: string
  revision: number
  underWay: string | null
}

const isWords = (x: unknown): x is Words => {
  const w = x as Words | null
  return typeof w === 'object' && w !== null && typeof w.text === 'string' && Number.isSafeInteger(w.revision)
}

/** The small store, or null where the browser forbids it. */
export const smallStore = (): SmallStore | null => {
  try {
    return globalThis.localStorage ?? null
  } catch {
    return null
  }
}

/** Puts down what is not written yet. @returns false where there is no room or no store */
export const leaveWords = (
  store: SmallStore | null,
  key: string,
  { document, revision, underWay }: Unwritten<string>,
): boolean => {
  const words: Words = { text: document, revision, underWay }
  try {
    store?.setItem(key, JSON.stringify(words))
    return store !== null
  } catch {
    return false
  }
}

/** Puts down what is not written yet of a design. */
export const leaveLastWords = (
  store: SmallStore | null,
  id: string,
  { document, revision, underWay }: Unwritten,
): boolean =>
  leaveWords(store, PREFIX + id, {
    document: writeArrangement(document),
    revision,
    underWay: underWay && writeArrangement(underWay),
  })

/** Forgets them: everything is written. */
export const forgetLastWords = (store: SmallStore | null, id: string): void => store?.removeItem(PREFIX + id)

const parse = (text: string | null): Words | null => {
  try {
    const words: unknown = JSON.parse(text ?? '')
    return isWords(words) ? words : null
  } catch {
    return null
  }
}

/** How the words of one kind are carried over. */
export interface Carrying<D> {
  /** What their keys in the small store begin with. */
  prefix: string
  /** The id of what a key's words are of, behind the prefix; as it stands there if not given. */
  idOf?: (key: string) => string
  store: Keeper<D, Loaded<D> | Failure>
  /** What is to be stored; null for what can't be read. */
  read: (text: string) => D | null
  /** Words that became a document of their own under this id, as it is to be stored. */
  beside?: (document: D, id: string) => D
}

/** Writes one document's last words. @returns true when they are safe in the database */
const carry = async <D>(
  { store, read, beside = (document) => document }: Carrying<D>,
  id: string,
  words: Words,
): Promise<boolean> => {
  const document = read(words.text)
  if (document === null) return false
  const there = await store.raw(id)
  if (!there.ok && there.why !== 'missing') return false
  if (there.ok && there.text === words.text) return true
  const now = await store.load(id)
  const revision = now.ok && there.ok && there.text === words.underWay ? now.revision : words.revision
  const saved = await store.save(id, document, revision)
  if (saved.ok) return true
  if (saved.why !== 'conflict' && saved.why !== 'unreadable') return false
  // Another page went on with it since, or it can't be read: both stay.
  const other = newName()
  return (await store.save(other, beside(document, other), 0)).ok
}

/**
 * Carries all last words of one kind over into the database. What is newer there is never written over: the words then become
 * a document of their own. Words that can't be read or written stay where they are.
 * @param claim asks for the right to write; null while another page has it, whose words are then left alone
 * @returns how many were carried over
 */
export const carryWords = async <D>(
  small: SmallStore | null,
  kind: Carrying<D>,
  claim: (key: string) => Promise<(() => void) | null>,
): Promise<number> => {
  if (!small) return 0
  const keys = Array.from({ length: small.length }, (_, i) => small.key(i) ?? '')
  let carried = 0
  for (const whole of keys.filter((k) => k.startsWith(kind.prefix))) {
    const words = parse(small.getItem(whole))
    const key = whole.slice(kind.prefix.length)
    const release = words && (await claim(key))
    if (!words || !release) continue
    if (await carry(kind, kind.idOf?.(key) ?? key, words)) {
      small.removeItem(whole)
      carried += 1
    }
    release()
  }
  return carried
}

/** Carries the last words of designs over. */
export const carryLastWords = (
  small: SmallStore | null,
  designs: DesignStore,
  known: Known,
  claim: (id: string) => Promise<(() => void) | null>,
): Promise<number> => {
  const read = (text: string): Arrangement | null => {
    const result = readArrangement(text, known)
    return result.kind === 'ok' ? result.document : null
  }
  return carryWords(small, { prefix: PREFIX, store: designs, read }, claim)
}
