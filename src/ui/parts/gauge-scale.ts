export type Range = readonly [from: number, to: number]

/** Inside, below or above the band; '' where there is no band. The limits count as inside. */
export const placeInBand = (value: number, band: Range | null): '' | 'inside' | 'under' | 'over' =>
  band === null ? '' : value < band[0] ? 'under' : value > band[1] ? 'over' : 'inside'

/** Place of a value on the gauge, 0–1, held at the ends. */
export const alongScale = (value: number, [from, to]: Range): number =>
  to === from ? 0 : Math.min(1, Math.max(0, (value - from) / (to - from)))
