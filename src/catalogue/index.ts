export { cutsAlong, type OwnStem, RECUT_mm, sideLength_mm, spareShare, TRIM_mm } from './buying.ts'
export { cautionsOf, dangerOf, GENERAL_CAUTIONS, gravestFirst } from './cautions.ts'
export { DENSITIES, MECHANICS_MASS } from './densities.ts'
export type { Ethylene, Keeping, Span } from './keeping.ts'
export { findPlant, keepingOf, PLANTS, plantIds, searchPlants } from './plants.ts'
export { EXAMPLE_PRICES } from './prices.ts'
export {
  type Half,
  halfYearLater,
  type Months,
  type SeasonState,
  type Seasons,
  seasonIn,
  seasonsOf,
  type When,
} from './season.ts'
export { monthName, monthsText, seasonSource, seasonText, seasonWords } from './season-words.ts'
export { MECHANICS_ROWS, TABLES } from './tables.ts'
export * from './types.ts'
export { findVessel, VESSELS } from './vessels.ts'
