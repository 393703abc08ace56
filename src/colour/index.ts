export { contrastRatio } from './contrast.ts'
export { deltaE2000 } from './difference.ts'
export { type Harmony, harmonyScale, twoColourHarmony } from './harmony.ts'
export { chromaHueOf, hexOf, type Lab, labOf, labOfLinear } from './lab.ts'
export {
  castMatrix,
  degreeOfAdaptation,
  type LightName,
  labUnderLight,
  lightMatrix,
  linearUnderLight,
  underLight,
} from './light.ts'
export type { Matrix3 } from './matrix.ts'
export { type ColourArea, type ColourGroup, mergeColours, SAME_COLOUR } from './merge.ts'
export { hexOfOklch, type Oklch, oklchOf, oklchToLinear } from './oklch.ts'
export { type PaletteHarmony, paletteHarmony } from './palette-harmony.ts'
export { hexOfLinear, isHex, type Linear, linearOf, linearToSrgb8 } from './srgb.ts'
export { asSeenBy, labAsSeenBy, VISIONS, type Vision } from './vision.ts'

/** Colour names are fetched when first asked for: `const { colourName } = await loadColourNames()`. */
export const loadColourNames = () => import('./names.ts')
