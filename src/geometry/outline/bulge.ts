import { median, middleOf, sampleInto, toOklab } from './ground.ts'
import type { Photo } from './types.ts'

/** The wall above the vessel is looked at in this share of the height, in so many rows. Ours. */
const TOP = { share: 0.06, rows: 6 } as const
/** Pixels across a row that are looked at: enough for what is smooth. */
const ACROSS = 200
/** As much as a lens or a lamp before a wall will do, share of Oklab's values; more is no bulge. Ours. */
const MOST = 0.3
/** At the quarters the wall has to be as the bulge foretells, within this share: else something hangs there. Ours. */
const NEAR = 0.03

/** Light over light of a straight mix of both ends, at a share (0–1) of the photo's width. */
const raised = (bulge: number, t: number): number => 1 + 4 * bulge * t * (1 - t)

/**
 * How much lighter the middle of a photo is than a straight mix of its left and right: a lens darkens toward its edges, a
 * lamp lights the middle of a wall. Seen on the bare wall above the vessel, as a share of Oklab's values, which a factor on
 * the light scales alike (by its cube root); 0 where that is no plain wall.
 */
export const bulgeOf = (photo: Photo): number => {
  const found = Array.from({ length: TOP.rows }, (_, j) => {
    const y = ((j + 0.5) / TOP.rows) * TOP.share * photo.height - 0.5
    const row = new Float64Array(ACROSS * 3)
    for (let i = 0; i < ACROSS; i++) sampleInto(photo, ((i + 0.5) / ACROSS) * photo.width - 0.5, y, row, i * 3)
    toOklab(row, 1)
    const about = (t: number): number =>
      middleOf(row, Math.round((t - 0.04) * ACROSS), Math.round((t + 0.04) * ACROSS))[0]
    const mix = (t: number): number => about(0.04) + ((about(0.96) - about(0.04)) * (t - 0.04)) / 0.92
    const bulge = about(0.5) / Math.max(1e-6, mix(0.5)) - 1
    const fits = [0.25, 0.75].every((t) => Math.abs(about(t) / (mix(t) * raised(bulge, t)) - 1) < NEAR)
    return fits && Math.abs(bulge) < MOST ? bulge : 0
  })
  return median(found)
}

/** Takes the bulge out of a row in Oklab. @param shareAt where each pixel of it lies, as a share of the photo's width */
export const flatten = (row: Float64Array, bulge: number, shareAt: (i: number) => number): void => {
  for (let i = 0; i < row.length / 3; i++) {
    const by = 1 / raised(bulge, shareAt(i))
    for (let c = 0; c < 3; c++) row[i * 3 + c]! *= by
  }
}
