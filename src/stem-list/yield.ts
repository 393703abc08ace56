import { type Plant, RECUT_mm, sideLength_mm } from '../catalogue/index.ts'
import type { Yield } from './cutting.ts'

/** What a stem of the catalogue's working length gives once it has been recut on arrival. Lengths in mm. */
export const yieldOf = (plant: Plant): Yield => ({
  main_mm: plant.stem_mm.value - RECUT_mm,
  sides: plant.manyHeaded ? Math.max(0, Math.floor(plant.bloomsPerStem.value) - 1) : 0,
  side_mm: sideLength_mm(plant)?.value ?? 0,
})
