import type { HeadMaker } from '../organs.ts'
import { ray } from './ray.ts'
import { rosette } from './rosette.ts'

/** Every kind of head by name. */
export const HEADS: Record<string, HeadMaker> = { rosette, ray }
