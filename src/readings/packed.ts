/**
 * Radius of the smallest circle known to hold n circles of radius 1, for n = 1 … 91. Source: E. Specht, The best known
 * packings of equal circles in a circle (packomania.com), to six decimals. Proved the best for n to 14 and 19 (Graham 1968, Pirl
 * 1969, Melissen 1994, Fodor 1999, 2000, 2003, Ekanayake and LaFountain 2024); the others are the best that were found.
 */
// biome-ignore format: ten to a row
export const PACKED: readonly number[] = [
  1, 2, 2.154701, 2.414214, 2.701302, 3, 3, 3.304765, 3.613126, 3.813026,
  3.923804, 4.029602, 4.236068, 4.328429, 4.521357, 4.615426, 4.792034, 4.863703, 4.863703, 5.122321,
  5.252317, 5.439719, 5.545204, 5.651661, 5.752824, 5.828177, 5.906398, 6.014938, 6.138598, 6.197741,
  6.291503, 6.429463, 6.486703, 6.610957, 6.697171, 6.746754, 6.75877, 6.961887, 7.057884, 7.123846,
  7.260012, 7.346796, 7.419945, 7.498037, 7.572912, 7.65018, 7.72417, 7.791271, 7.886871, 7.947515,
  8.027507, 8.084717, 8.179583, 8.203982, 8.211103, 8.38353, 8.447185, 8.524554, 8.5925, 8.64622,
  8.661298, 8.829765, 8.892352, 8.961971, 9.017397, 9.096279, 9.168972, 9.229774, 9.269761, 9.345653,
  9.415797, 9.473891, 9.540346, 9.589233, 9.67203, 9.729597, 9.798912, 9.85771, 9.905063, 9.968152,
  10.010864, 10.050824, 10.116858, 10.149531, 10.163111, 10.298701, 10.363209, 10.432338, 10.500492, 10.546069,
  10.566772,
]

const LAST = PACKED.at(-1)!
/** Of more than the table has: as 91 fill it (0.815). Of 92 to 245 the best known fill 0.806 to 0.840 (Specht). */
const TIGHT = PACKED.length / LAST ** 2

/** The share of the smallest circle that holds n alike which they fill. */
export const densityOf = (n: number): number => (n <= PACKED.length ? n / PACKED[n - 1]! ** 2 : TIGHT)
