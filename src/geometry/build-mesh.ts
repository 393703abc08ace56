import { meshOf } from './habits/mesh.ts'
import type { SolidInput } from './habits/organs.ts'
import { layoutOf } from './habits/plans/index.ts'
import type { Mesh } from './types.ts'

/** The mesh of one stem alone, mm relative to the tip, as buildSolid makes it; its stand-ins are left out. */
export const buildMesh = (input: SolidInput): Mesh => meshOf(layoutOf(input), input.detail ?? 1)
