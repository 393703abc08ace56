// INTERIM, uncommitted: stands in until the catalogue helper writes the real one over it.

import interim from './interim.json' with { type: 'json' }
import type { Caution, MechanicsRow, Plant, TableRow, VesselRow } from './types.ts'

export * from './types.ts'
export const PLANTS = interim as unknown as Plant[]
const BY = new Map(PLANTS.map((p) => [p.id, p]))
export const findPlant = (id: string): Plant | undefined => BY.get(id)
export const plantIds: ReadonlySet<string> = new Set(BY.keys())
export const searchPlants = (t: string): Plant[] => PLANTS.filter((p) => p.name.toLowerCase().includes(t.toLowerCase()))
export const VESSELS: VesselRow[] = [
  {
    id: 'bowl',
    name: 'Bowl',
    plan: 'round',
    width: 140,
    depth: 140,
    height: 84,
    wall: 4,
    material: 'ceramic',
    colour: '#f1ece2',
    mechanics: 'netting',
    waterFill: 0.8,
    source: 'interim',
  },
]
export const findVessel = (id: string): VesselRow | undefined => VESSELS.find((v) => v.id === id)
export const MECHANICS_ROWS: MechanicsRow[] = []
export const TABLES: TableRow[] = []
export const EXAMPLE_PRICES = { currency: 'EUR', perBunch: {} as Record<string, number> }
export const GENERAL_CAUTIONS: Caution[] = []
