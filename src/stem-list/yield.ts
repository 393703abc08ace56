import { cutsAlong, type OwnStem, type Plant, RECUT_mm, sideLength_mm } from '../catalogue/index.ts'
import type { Yield } from './pieces.ts'

type Stemmed = Pick<Plant, 'id' | 'formClass' | 'habit' | 'manyHeaded' | 'stem_mm' | 'bloomsPerStem'>

/**
 * A stem as it comes: the person's own figures where there are any, else the catalogue's. Side stems that nobody measured
 * follow the length of the stem by the catalogue's rule. Lengths in mm; a plant with one head has no side stems.
 */
export const stemAsItComes = (plant: Stemmed, own: OwnStem = {}): Required<OwnStem> => {
  const { stem_mm = plant.stem_mm.value } = own
  const pieces = cutsAlong(plant) ? (own.pieces ?? 1) : 1
  if (!plant.manyHeaded) return { stem_mm, heads: 1, side_mm: 0, pieces }
  const side = sideLength_mm({ ...plant, stem_mm: { ...plant.stem_mm, value: stem_mm } })
  return {
    stem_mm,
    heads: own.heads ?? Math.max(1, Math.floor(plant.bloomsPerStem.value)),
    side_mm: own.side_mm ?? side?.value ?? 0,
    pieces,
  }
}

/**
 * What a stem gives once it has been recut on arrival; no side stem gives more than the stem it grows on. Lengths in mm.
 * @param own what the stems that came are like, instead of the catalogue's working figures
 */
export const yieldOf = (plant: Stemmed, own?: OwnStem): Yield => {
  const { stem_mm, heads, side_mm, pieces } = stemAsItComes(plant, own)
  const main_mm = Math.max(0, stem_mm - RECUT_mm)
  return {
    main_mm,
    sides: side_mm > 0 ? heads - 1 : 0,
    side_mm: Math.min(side_mm, main_mm),
    ...(pieces > 1 ? { along: pieces } : {}),
  }
}
