/** Least and most that a value can be held against. */
export type BandRange = readonly [least: number, most: number]

const SHARE: BandRange = [0, 1]
/** Of ratios and multiples; no vessel bears more. Ours. */
const TIMES: BandRange = [0, 100]
const TILT: BandRange = [0, 90]

/**
 * Within which a person's own band of a value has to lie, by the band's name and in the value's unit: shares and tilts by
 * what they are, offsets by their definition (−1 … 1 of the reach), ranks by the most stems a design may have.
 */
export const BAND_RANGES: Readonly<Record<string, BandRange>> = {
  'proportion.heightRatio': TIMES,
  'proportion.spreadRatio': TIMES,
  'proportion.vesselShare': SHARE,
  'proportion.topOverTable_mm': [0, 10000],
  'negative-space.voidFraction': SHARE,
  'negative-space.holeShare': SHARE,
  'negative-space.mouthShowing': SHARE,
  'focal-prominence.focalShare': SHARE,
  'focal-prominence.focalVisible': SHARE,
  'focal-prominence.focalRank': [1, 2000],
  'focal-prominence.focalLead': TIMES,
  'focal-prominence.vesselPull': TIMES,
  'visual-balance.offsetWorst': [-1, 1],
  'visual-balance.topHeaviness': SHARE,
  'stability.tippingAngle_deg': TILT,
  'stability.spillAngle_deg': TILT,
  // More than 1 would be fuller than circles are known to pack.
  'mechanics.crowding': SHARE,
  'mechanics.heldShare': SHARE,
  'mechanics.dryShare': SHARE,
  'mechanics.underWaterShare': SHARE,
  'mechanics.throughTableShare': SHARE,
  'sight-line.blockedFraction': SHARE,
  'sight-line.blockedWorst': SHARE,
}

/** Bands that a document may carry, with the range of each: what reading a document has to be told. */
export const OWN_BANDS: ReadonlyMap<string, BandRange> = new Map(Object.entries(BAND_RANGES))
