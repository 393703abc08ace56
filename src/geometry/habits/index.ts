import type { Solid } from '../types.ts'
import { fittedOf } from './fitted.ts'
import { meshOf } from './mesh.ts'
import type { SolidInput } from './organs.ts'
import { layoutOf } from './plans/index.ts'
import { packStandins } from './standins.ts'

export { cutStem } from './cut.ts'
export type { SolidInput } from './organs.ts'

/** The solid of one stem: its mesh and its stand-ins, mm relative to the tip. Same input, same solid. */
export const buildSolid = (input: SolidInput): Solid => {
  const layout = layoutOf(input)
  return {
    mesh: meshOf(layout, input.detail ?? 1),
    standins: packStandins(layout, fittedOf(input.plant), input.openness),
  }
}

/** The stand-ins alone, without laying a mesh; packed as geometry/types.ts says. Nothing is measured: see fitted.ts. */
export const buildStandins = (input: SolidInput): Float32Array =>
  packStandins(layoutOf(input), fittedOf(input.plant), input.openness)
