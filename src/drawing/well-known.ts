/** Colours of the parts of a flower that do not follow the colour asked for, #rrggbb. */
export interface OwnColours {
  disc?: string
  pollen?: string
  second?: string
}

/**
 * Eyes, anthers, lips and crowns of well-known plants, where the catalogue's row does not say them (its `shape` may, as
 * discColour, pollenColour and secondColour). From botanical plates and memory.
 */
export const WELL_KNOWN: Record<string, OwnColours> = {
  anemone: { disc: '#221c2c', pollen: '#2e2740' },
  gerbera: { disc: '#5b3d22', pollen: '#d9b45c' },
  'gerbera-mini': { disc: '#4a3320', pollen: '#d9b45c' },
  sunflower: { disc: '#3b2617', pollen: '#7a4d1f' },
  'chrys-spray': { disc: '#b9a83a', pollen: '#d8c24a' },
  'aster-china': { disc: '#d0a52c', pollen: '#e2bd4a' },
  cornflower: { disc: '#4a3f86', pollen: '#6a5aa0' },
  zinnia: { disc: '#4f2f1d', pollen: '#e0ac2e' },
  daffodil: { second: '#e8922a' },
  iris: { pollen: '#eec23c' },
  'lily-oriental': { pollen: '#7f3a17' },
  'lily-asiatic': { pollen: '#6b2d15' },
  alstroemeria: { second: '#ecd27a' },
  calla: { pollen: '#e6b93c' },
  'calla-mini': { pollen: '#e6b93c' },
  anthurium: { pollen: '#e9cf78' },
  strelitzia: { second: '#3a4d9c' },
  cymbidium: { second: '#a5405e', pollen: '#ecd27a' },
  phalaenopsis: { second: '#b03c78', pollen: '#ecd27a' },
  ranunculus: { disc: '#5c6b2e' },
  hydrangea: { second: '#cfd3a8' },
  tulip: { pollen: '#3a2c33' },
  bells: { second: '#eef0dc' },
  waxflower: { second: '#a0455f' },
}
