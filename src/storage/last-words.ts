import { type Arrangement, type Known, readArrangement, writeArrangement } from '../arrangement/index.ts'
import { newName } from './names.ts'
import type { DesignStore } from './types.ts'

/**
 * A page that goes away is not waited for: a database answers too late for its last change. So what is not yet known to
 * be written is put down at once in the browser's small store, which answers on the spot, and is carried over into the
 * database when the site is next opened.
 */
export interface Unwritten {
  document: Arrangement
  /** The revision that the database held, as far as the page knew. */
  revision: number
  /** A state whose writing was under way: it may have arrived or not. */
  underWay: Arrangement | null
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
export const leaveLastWords = (
  store: SmallStore | null,
  id: string,
  { document, revision, underWay }: Unwritten,
): boolean => {
  const words: Words = {
    text: writeArrangement(document),
    revision,
    underWay: underWay && writeArrangement(underWay),
  }
  try {
    store?.setItem(PREFIX + id, JSON.stringify(words))
    return store !== null
  } catch {
    return false
  }
}

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

/** Writes one design's last words. @returns true when they are safe in the database */
const carry = async (designs: DesignStore, id: string, words: Words, known: Known): Promise<boolean> => {
  const read = readArrangement(words.text, known)
  if (read.kind !== 'ok') return false
  const there = await designs.raw(id)
  if (!there.ok && there.why !== 'missing') return false
  if (there.ok && there.text === words.text) return true
  const now = await designs.load(id)
  const revision = now.ok && there.ok && there.text === words.underWay ? now.revision : words.revision
  const saved = await designs.save(id, read.document, revision)
  if (saved.ok) return true
  // Another page went on with the design since, or it can't be read: both stay.
  return (
    (saved.why === 'conflict' || saved.why === 'unreadable') && (await designs.save(newName(), read.document, 0)).ok
  )
}

/**
 * Carries all last words over into the database. What is newer there is never written over: the words then become a
 * design of their own. Words that can't be read or written stay where they are.
 * @param claim asks for the right to write a design; null while another page has it, whose words are then left alone
 * @returns how many designs were carried over
 */
export const carryLastWords = async (
  store: SmallStore | null,
  designs: DesignStore,
  known: Known,
  claim: (id: string) => Promise<(() => void) | null>,
): Promise<number> => {
  if (!store) return 0
  const keys = Array.from({ length: store.length }, (_, i) => store.key(i) ?? '').filter((k) => k.startsWith(PREFIX))
  let carried = 0
  for (const key of keys) {
    const words = parse(store.getItem(key))
    const id = key.slice(PREFIX.length)
    const release = words && (await claim(id))
    if (!words || !release) continue
    if (await carry(designs, id, words, known)) {
      store.removeItem(key)
      carried += 1
    }
    release()
  }
  return carried
}
