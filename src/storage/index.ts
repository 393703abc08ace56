import { databaseRecords } from './database.ts'
import { memoryRecords } from './memory.ts'
import { designStore, type StoreOptions } from './store.ts'
import { textStore } from './texts.ts'
import type { DesignStore, TextStore } from './types.ts'

export {
  ANSWER,
  type Answer,
  answerFits,
  answerFragment,
  answerText,
  fingerprint,
  MOST_NAME,
  readAnswer,
} from './answer.ts'
export { type AutosaveOptions, type Autosaver, autosaver } from './autosave.ts'
export { CHUNK, carryDesign, designInPicture, PICTURE_BYTES } from './carry-png.ts'
export { claimDesign, type Release } from './claim.ts'
export { crc32 } from './crc32.ts'
export {
  carryLastWords,
  carryWords,
  forgetLastWords,
  leaveLastWords,
  leaveWords,
  type SmallStore,
  smallStore,
  type Unwritten,
} from './last-words.ts'
export { LONG_LINK, readShow, SHOW, showFragment } from './link.ts'
export { memoryRecords, type Shelves, type StorageCall } from './memory.ts'
export { fileName, newName } from './names.ts'
export type { Got } from './packing.ts'
export { MOST_OFFERS, type OfferedPalette, type Parcel, readParcel, writeParcel } from './parcel.ts'
export type { StoreOptions } from './store.ts'
export type * from './types.ts'

/** Designs in the browser's database. Works where there is none too: each call then says that it can't be reached. */
export const browserStore = (options: StoreOptions & { name?: string }): DesignStore =>
  designStore(databaseRecords(options.name), options)

/** Texts of one kind in the browser's database, beside the designs. */
export const browserTexts = (prefix: string, name?: string): TextStore => textStore(databaseRecords(name), prefix)

/** Designs in memory, gone at the end of the page. */
export const memoryStore = (options: StoreOptions & { records?: ReturnType<typeof memoryRecords> }): DesignStore =>
  designStore(options.records ?? memoryRecords(), options)

/** Asks the browser not to clear what is stored; true if it promises. It may still be cleared by hand: a file is the safe copy. */
export const askToKeep = async (): Promise<boolean> => {
  try {
    return (await globalThis.navigator?.storage?.persist?.()) ?? false
  } catch {
    return false
  }
}
