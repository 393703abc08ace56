import type { Plant } from '../../catalogue/index.ts'
import type { Solid } from '../types.ts'
import { cutStem } from './cut.ts'
import { meshOf } from './mesh.ts'
import type { Layout, SolidInput } from './organs.ts'
import { layoutOf } from './plans/index.ts'
import { packStandins } from './standins.ts'
import { tuningOf } from './tune.ts'

export { cutStem } from './cut.ts'
export type { SolidInput } from './organs.ts'

const standinsOf = (input: SolidInput, layout: Layout): Float32Array =>
  packStandins(layout, tuningOf(input, layout, layoutOf, packStandins))

/** The solid of one stem: its mesh and its stand-ins, mm relative to the tip. Same input, same solid. */
export const buildSolid = (input: SolidInput): Solid => {
  const layout = layoutOf(input)
  return { mesh: meshOf(layout, input.detail ?? 1), standins: standinsOf(input, layout) }
}

/** The stand-ins alone, without laying a mesh; packed as geometry/types.ts says. The first stem of a plant measures it. */
export const buildStandins = (input: SolidInput): Float32Array => standinsOf(input, layoutOf(input))

/**
 * Measure a plant's stand-ins ahead of need (tens of ms the first time, then nothing): for a worker that is idle.
 */
export const prepareStandins = (plant: Plant): void => {
  const { headOpen_mm, headClosed_mm } = plant
  const closed = headClosed_mm?.value ?? headOpen_mm.value
  for (const openness of [1, 0.75, 0.5, 0.25, 0]) {
    buildStandins(cutStem(plant, openness, closed + (headOpen_mm.value - closed) * openness, 1))
  }
}
