export { type ColourCluster, clusterColours } from './cluster.ts'
export { contrastRatio } from './contrast.ts'
export { type ColourCell, countColours } from './count-colours.ts'
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
export { NEARNESS, type Nearness, NOT_NEAR, nearestColours, nearness } from './nearest.ts'
export { linearOfOklab, type Oklab, oklabOfLinear } from './oklab.ts'
export { hexOfOklch, type Oklch, oklchOf, oklchToLinear } from './oklch.ts'
export { type PaletteHarmony, paletteHarmony } from './palette-harmony.ts'
export {
  FINE_CLUSTERS,
  type PhotoColour,
  type PhotoColours,
  type PhotoGround,
  photoColours,
} from './photo-colours.ts'
export {
  decode as linearOfChannel,
  hexOfLinear,
  isHex,
  type Linear,
  linearOf,
  linearToSrgb8,
  srgb8ToLinear,
} from './srgb.ts'
export { asSeenBy, labAsSeenBy, VISIONS, type Vision } from './vision.ts'

/** Colour names are fetched when first asked for: `const { colourName } = await loadColourNames()`. */
export const loadColourNames = () => import('./names.ts')
