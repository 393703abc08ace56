import type { Solid } from '../types.ts'
import { meshOf } from './mesh.ts'
import type { SolidInput } from './organs.ts'
import { layoutOf } from './plans/index.ts'
import { standinsOf } from './standins.ts'

export type { SolidInput } from './organs.ts'

/** The solid of one stem: its mesh and its stand-ins, mm relative to the tip. Same input, same solid. */
export const buildSolid = (input: SolidInput): Solid => {
  const layout = layoutOf(input)
  return { mesh: meshOf(layout, input.detail ?? 1), standins: standinsOf(layout) }
}

/** The stand-ins alone, without laying a mesh; packed as geometry/types.ts says. */
export const buildStandins = (input: SolidInput): Float32Array => standinsOf(layoutOf(input))
