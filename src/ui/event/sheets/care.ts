import { findPlant, type Plant } from '../../../catalogue/index.ts'
import { cautionLines } from '../../../telling/index.ts'

/** Whose word goes before ours. */
export const DEFER =
  'The venue’s and the local rules come before this sheet, and a person trained in them before what is said here.'

/** Where all are named that a sheet has no room for. */
export const allAre = (withCare: boolean): string =>
  withCare ? 'All are on the sheet Take care.' : 'Print the sheet Take care: it names all.'

/**
 * What is to be minded of these plants and whose word goes before ours: first with all plants by name, then with fewer.
 * @param withCare the sheet Take care is printed too
 */
export const careOf = (ids: readonly string[], withCare: boolean): string[] => {
  const plants = [...new Set(ids)].map(findPlant).filter((p): p is Plant => p !== undefined)
  return cautionLines(plants, allAre(withCare)).map((line) => [line, DEFER].filter((text) => text !== '').join(' '))
}
