import type { OwnStem } from '../catalogue/index.ts'
import type { EventPlan } from './types.ts'

/** The figures of one stem, without those that were taken back. */
const left = (own: { [key in keyof OwnStem]?: OwnStem[key] | undefined }): OwnStem =>
  Object.fromEntries(Object.entries(own).filter(([, figure]) => figure !== undefined))

/**
 * What stems are like with some figures of one plant's put in; `undefined` takes one back to what the catalogue has, and a plant
 * without any is left out.
 */
export const withOwnStem = (
  stems: EventPlan['stems'],
  plant: string,
  change: { [key in keyof OwnStem]?: OwnStem[key] | undefined },
): EventPlan['stems'] => {
  const { [plant]: before, ...others } = stems
  const own = left({ ...before, ...change })
  return Object.keys(own).length > 0 ? { ...others, [plant]: own } : others
}
