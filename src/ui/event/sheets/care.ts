import { findPlant, type Plant } from '../../../catalogue/index.ts'
import { cautionLine } from '../../../telling/index.ts'

/** Whose word goes before ours. */
export const DEFER =
  'The venue’s and the local rules come before this sheet, and a person trained in them before what is said here.'

/** What is to be minded of these plants, in a line or two, and whose word goes before ours. */
export const careOf = (ids: readonly string[]): string => {
  const plants = [...new Set(ids)].map(findPlant).filter((p): p is Plant => p !== undefined)
  return [cautionLine(plants, ': see the sheet Take care'), DEFER].filter((text) => text !== '').join(' ')
}
