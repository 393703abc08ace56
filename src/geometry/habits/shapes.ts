import type { Plant } from '../../catalogue/types.ts'
import type { Shape } from './organs.ts'

/**
 * What tells well-known plants from others of their habit, where the catalogue's row does not say it. From botanical
 * plates and memory; the row's own `shape` wins key by key.
 */
const WELL_KNOWN: Record<string, Shape> = {
  rose: { petals: 28 },
  'rose-garden': { petals: 46, cupping: 0.25, ruffle: 1.4 },
  'rose-sweetheart': { petals: 22 },
  'rose-spray': { head: 'rose', petals: 18 },
  carnation: { petals: 38, fringe: 0.16, ruffle: 2.5, leafRatio: 0.1, leaves: 4, leafOutline: 'sword' },
  'carnation-spray': { head: 'rosette', petals: 18, fringe: 0.16, ruffle: 2.2, leafRatio: 0.12 },
  peony: { petals: 60, tightness: 0.35, cupping: 0.5, ruffle: 2 },
  ranunculus: { petals: 60, tightness: 1, cupping: 0.6 },
  lisianthus: { head: 'rosette', petals: 14, cupping: 0.5, heads: 5 },
  'chrys-disbud': { petals: 120, narrow: 0.55, incurve: 0.7 },
  'chrys-spray': { head: 'ray', rays: 22, rows: 2, disc: 0.3, heads: 7 },
  anemone: { rays: 9, rows: 1, disc: 0.17, outline: 'round', width: 0.36 },
  gerbera: { rays: 34, rows: 2, disc: 0.24, leaves: 0 },
  'gerbera-mini': { rays: 28, rows: 2, disc: 0.26, leaves: 0 },
  sunflower: { rays: 26, rows: 2, disc: 0.45, outline: 'point' },
  zinnia: { rays: 14, rows: 3 },
  'aster-china': { rays: 26, rows: 3, disc: 0.24, outline: 'strap' },
  cornflower: { rays: 9, rows: 2, disc: 0.34, width: 0.2, notch: 0.3 },
  dahlia: { petals: 92 },
  protea: { kind: 'protea' },
  scabiosa: {},
  eryngium: { kind: 'thistle', leaves: 0 },
  craspedia: {},
  allium: { kind: 'stars' },
  bupleurum: { rays: 9, florets: 8, height: 0.4, bracts: 5 },
  trachelium: { florets: 110, petals: 3, height: 0.55 },
  delphinium: { floret: 'bee', florets: 44 },
  larkspur: { floret: 'bee', florets: 40 },
  snapdragon: { floret: 'snap' },
  stock: { floret: 'double' },
  hyacinth: { floret: 'trumpet', florets: 40, taper: 0.5, leaves: 0 },
  gladiolus: { floret: 'trumpet', oneSided: 1, florets: 12, leafRatio: 0.08 },
  liatris: { floret: 'thread', leafRatio: 0.08 },
  bells: { floret: 'bell', florets: 42, taper: 0.5 },
  tuberose: { floret: 'trumpet', florets: 22, taper: 0.6 },
  veronica: {},
  statice: { flames: 30, florets: 8, arch: 0.3 },
  solidago: { arch: 0.5 },
  solidaster: { arch: 0.4 },
  lilac: { flames: 44, florets: 9 },
  celosia: { flames: 46, florets: 9 },
  astilbe: {},
  alstroemeria: { flower: 'alstroemeria', heads: 5 },
  'lily-oriental': { flower: 'lily', heads: 3 },
  'lily-asiatic': { flower: 'amaryllis', heads: 4, leaves: 6 },
  amaryllis: { flower: 'amaryllis', heads: 4, leaves: 0 },
  freesia: { flower: 'freesia', heads: 6, leaves: 0 },
  iris: { flower: 'iris', heads: 1, leaves: 2, leafRatio: 0.08 },
  daffodil: { flower: 'daffodil', heads: 1, leaves: 0 },
  calla: { kind: 'calla', leaves: 0 },
  'calla-mini': { kind: 'calla', leaves: 0 },
  anthurium: { kind: 'anthurium', leaves: 0 },
  strelitzia: { kind: 'crane', leaves: 0 },
  cymbidium: { kind: 'cymbidium' },
  dendrobium: { kind: 'dendrobium' },
  phalaenopsis: { kind: 'moth' },
  'sweet-pea': { head: 'pea', heads: 4, leaves: 0 },
  gypsophila: { head: 'speck' },
  limonium: { head: 'blossom', pairs: 34 },
  waxflower: { head: 'blossom', pairs: 18 },
  'euc-silver': { outline: 'disc', ratio: 0.85 },
  'euc-seeded': { outline: 'lance', ratio: 0.3 },
  myrtle: { ratio: 0.42, outline: 'leaf', pairs: 14 },
  boxwood: { ratio: 0.55, outline: 'leaf', pairs: 14 },
  olive: { ratio: 0.2, outline: 'lance', pairs: 12 },
  salal: { ratio: 0.62, outline: 'egg', leaves: 8 },
  'ruscus-israeli': { ratio: 0.42, leaves: 16 },
  'ruscus-italian': { ratio: 0.3, outline: 'lance', leaves: 18 },
  pittosporum: { ratio: 0.5, leaves: 22, whorl: 1, wave: 1 },
  leatherleaf: { kind: 'leather' },
  asparagus: { kind: 'plumosus' },
  'dusty-miller': { kind: 'leather', pinnae: 6 },
  aspidistra: { kind: 'aspidistra' },
  monstera: { kind: 'monstera' },
  ivy: { kind: 'ivy' },
  amaranthus: { kind: 'rope' },
}

const merged = new WeakMap<Plant, Shape>()

/** The numbers that shape a plant: its row's own over what is well known of it. One object per plant. */
export const shapeOf = (plant: Plant): Shape => {
  const known = merged.get(plant)
  if (known) return known
  const shape = { ...WELL_KNOWN[plant.id], ...plant.shape }
  merged.set(plant, shape)
  return shape
}
