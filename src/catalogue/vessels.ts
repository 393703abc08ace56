import type { VesselRow } from './types.ts'
import listed from './vessels.json' with { type: 'json' }

/** Where sizes come from. 1 in = 25.4 mm. Walls, colours and curves are ours. */
const SIZES: Record<string, string> = {
  O: 'ours, a common size',
  T1: 'from memory: footed bowls are 5–8 in across and 4–7 in high',
  T2: 'from memory: bud vases have a neck of 12–30 mm and are 100–200 mm high',
  T3: 'from memory: cylinders are 4–6 in across and 6–24 in high',
  T4: 'common practice: cubes of 4, 5 and 6 in',
  T5: 'from memory: urns are 7–12 in',
  T6: 'from memory: a vase for a dozen is 8–10 in high with a neck of 4–5 in',
}

type Row = Omit<VesselRow, 'source'> & { from: string }

/** Vessels of real sizes; profiles run from the table to the rim, half-widths over the mouth's. */
export const VESSELS: readonly VesselRow[] = (listed as unknown as Row[]).map(({ from, ...vessel }) => ({
  ...vessel,
  source: SIZES[from] ?? 'not known',
}))

/** The vessel of this id; undefined when there is none. */
export const findVessel = (id: string): VesselRow | undefined => VESSELS.find((v) => v.id === id)
