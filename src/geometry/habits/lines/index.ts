import type { RopeMaker } from '../organs.ts'
import { catkin, plume, rope } from './plume.ts'
import { spike } from './spike.ts'

/** Every kind of flowering length by name. */
export const ROPES: Record<string, RopeMaker> = { spike, plume, rope, catkin }
