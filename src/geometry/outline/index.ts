export { findMarks, marksByHand } from './find-marks.ts'
export { type Frame, frameOf, placeIn, pointAt } from './frame.ts'
export {
  addHandle,
  dropHandle,
  handlesOf,
  type Known,
  LEAST_GAP,
  LEAST_HALF,
  lopsided,
  type Measured,
  measuredVessel,
  moveHandle,
} from './outline-to-profile.ts'
export { traceOutline } from './trace.ts'
export type { Marks, Outline, Photo } from './types.ts'
