export { buildMesh } from './build-mesh.ts'
export { endTangent, facingAxis } from './facing.ts'
export { type Air, createGapSpace, type GapSpace, measureAir } from './gaps.ts'
export { buildSolid, type SolidInput } from './habits/index.ts'
export { latticePoints, polygonArea } from './hull.ts'
export * from './outline/index.ts'
export { PART_STRIDE, preparedParts, reachAlong } from './parts.ts'
export {
  type Axes,
  clearLayer,
  copyLayer,
  createLayer,
  EMPTY_DEPTH,
  type Grid,
  type Layer,
  ownerCode,
  splatParts,
  stemOf,
  typedAxes,
  VESSEL_PIXEL,
} from './raster.ts'
export {
  bareCount,
  COVER_WIDTH,
  type Cover,
  coverParts,
  coverPixel,
  createCover,
  isCovered,
  isFull,
} from './raster-cover.ts'
export { cutStamp, putStamp, type Stamp } from './raster-stamp.ts'
export { splatVessel, splatVesselPlan } from './raster-vessel.ts'
export { colourOf, headOf, resolveArrangement, seedOf } from './resolve.ts'
export { solidInput, standinsOf } from './solid.ts'
export { type Spill, spillOf } from './spill.ts'
export { bowDirection } from './stem-arcs.ts'
export { stemCurve } from './stem-curve.ts'
export * from './types.ts'
export {
  areaOf,
  floorFraction,
  type HalfSection,
  heightFraction,
  innerSection,
  innerVolume_mm3,
  outerSection,
  reachIn,
  shownHalfWidth,
  vesselHalfWidth,
  waterlineZ,
  waterVolume_mm3,
  widestSection,
} from './vessel.ts'
export { type Body, shellOf, surfaceMoment_mm4, waterOf } from './vessel-body.ts'
export { cosSin, projectPoint, unprojectElevation, unprojectPlan, viewAxes } from './view.ts'
