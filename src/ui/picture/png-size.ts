import { crc32 } from '../../storage/index.ts'

/** Dots per metre of a sheet that is printed at 300 to the inch (1 in = 25.4 mm exactly). */
export const DOTS_PER_METRE = Math.round(300 / 0.0254)
/** Where the first chunk of a PNG ends: 8 bytes of signature, 25 of IHDR (PNG specification, 3rd edition, 5.2 and 11.2.1). */
const AFTER_HEADER = 33

/** A pHYs chunk (PNG specification, 11.3.4.3): so many dots per metre both ways. */
export const sizeChunk = (perMetre: number = DOTS_PER_METRE): Uint8Array<ArrayBuffer> => {
  const chunk = new Uint8Array(21)
  const view = new DataView(chunk.buffer)
  view.setUint32(0, 9)
  chunk.set([0x70, 0x48, 0x59, 0x73], 4)
  view.setUint32(8, perMetre)
  view.setUint32(12, perMetre)
  chunk[16] = 1
  view.setUint32(17, crc32(chunk.subarray(4, 17)))
  return chunk
}

/** The same PNG, saying how large it is on paper, so that it prints as the A4 sheet that it is. */
export const withPaperSize = (png: Blob, perMetre: number = DOTS_PER_METRE): Blob =>
  new Blob([png.slice(0, AFTER_HEADER), sizeChunk(perMetre), png.slice(AFTER_HEADER)], { type: 'image/png' })
