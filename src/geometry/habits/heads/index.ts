import type { HeadMaker } from '../organs.ts'
import { crane } from './crane.ts'
import { cup } from './cup.ts'
import { dome } from './dome.ts'
import { globe } from './globe.ts'
import { knot } from './knot.ts'
import { orchid } from './orchid.ts'
import { pincushion } from './pincushion.ts'
import { protea } from './protea.ts'
import { quilled } from './quilled.ts'
import { ray } from './ray.ts'
import { rosette } from './rosette.ts'
import { berry, pea, speck } from './small.ts'
import { spathe } from './spathe.ts'
import { trumpet } from './trumpet.ts'
import { umbel } from './umbel.ts'

/** Every kind of head by name; the names are those of the habits, and `berry`, `speck`, `pea` for small ones, `knot` for clouds, `crane` (strelitzia) and `protea`. */
export const HEADS: Record<string, HeadMaker> = {
  rosette,
  quilled,
  ray,
  pincushion,
  globe,
  umbel,
  cup,
  trumpet,
  spathe,
  dome,
  orchid,
  berry,
  speck,
  knot,
  pea,
  crane,
  protea,
}
