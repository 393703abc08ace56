import { type Lab, labOfLinear } from './lab.ts'
import { apply, type Matrix3 } from './matrix.ts'
import { hexOfLinear, linearOf } from './srgb.ts'

/** Ways of seeing colour without one of the three kinds of cone. */
export const VISIONS = ['protan', 'deutan', 'tritan'] as const
export type Vision = (typeof VISIONS)[number]

/**
 * Severity 1.0, linear sRGB to linear sRGB. Machado, Oliveira and Fernandes, A physiologically-based model for simulation
 * of color vision deficiency, IEEE TVCG 15(6):1291–1298, 2009. For tritan the authors call it an approximation.
 */
const MATRICES: Record<Vision, Matrix3> = {
  protan: [0.152286, 1.052583, -0.204868, 0.114503, 0.786281, 0.099216, -0.003882, -0.048116, 1.051998],
  deutan: [0.367322, 0.860646, -0.227968, 0.280085, 0.672501, 0.047413, -0.01182, 0.04294, 0.968881],
  tritan: [1.255528, -0.076749, -0.178779, -0.078411, 0.930809, 0.147602, 0.004733, 0.691367, 0.3039],
}

const clipped = (v: number): number => Math.min(1, Math.max(0, v))

/** A colour #rrggbb as someone who lacks that kind of cone sees it, clipped to the screen. */
export const asSeenBy = (hex: string, vision: Vision): string => hexOfLinear(apply(MATRICES[vision], linearOf(hex)))

/** The same as CIELAB, clipped but not rounded to bytes: for measuring. */
export const labAsSeenBy = (hex: string, vision: Vision): Lab => {
  const [r, g, b] = apply(MATRICES[vision], linearOf(hex))
  return labOfLinear([clipped(r), clipped(g), clipped(b)])
}
