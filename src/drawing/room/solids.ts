import type { ThingKind } from './types.ts'

/** [radius, height over the table], mm, from the foot up: what is turned about an upright axis. */
export type Profile = readonly (readonly [radius: number, height: number])[]

export interface ThingSolid {
  /** Widest radius and height, mm. */
  radius: number
  height: number
  /** Height on which it stands, mm: a cup stands in its saucer. */
  stands: number
  profile: Profile
  /** Circles that are drawn as lines: rims, the edge of a well, what is in it. */
  rings: Profile
  /** One sees through it. */
  clear: boolean
}

/** Dinner plate: 270 mm (10½ in), 20 high. Common practice; the well at two thirds, ours. */
const PLATE_RINGS: Profile = [
  [86, 8],
  [89, 9],
  [132, 19.4],
  [135, 20],
]
/** Side plate: 170 mm, 15 high. Common practice (150 to 180). */
const SIDE_RINGS: Profile = [
  [54, 6],
  [56, 6.6],
  [83, 14.6],
  [85, 15],
]
/** Wine glass: 80 mm at the widest, 210 high, foot of 70, filled to where the bowl is widest. Common practice; its curve, ours. */
const WINE: Profile = [
  [35, 0],
  [35, 1.5],
  [20, 3.5],
  [8, 7],
  [4.4, 13],
  [4, 40],
  [4.2, 78],
  [6.5, 88],
  [18, 98],
  [31, 113],
  [38.5, 134],
  [40, 152],
  [38, 178],
  [33.5, 210],
]
/** Water glass: a tumbler of 76 mm, 115 high, filled to two thirds. Common practice. */
const TUMBLER: Profile = [
  [29, 0],
  [30, 2],
  [38, 115],
]
/** Coffee cup: 86 mm across, 62 high, in a saucer of 150. Common practice. */
const CUP: Profile = [
  [22, 0],
  [24, 3],
  [36, 22],
  [42, 45],
  [43, 62],
]
const SAUCER_RINGS: Profile = [
  [28, 4],
  [73, 15.6],
  [75, 16],
]
/** Candle: a pillar of 60 mm (2⅜ in), 115 high (4½ in). Common practice (50 to 75, 75 to 150); low, so that its flame is below the eyes of those who sit. */
const CANDLE: Profile = [
  [30, 0],
  [30, 113],
  [28.5, 115],
]
/** A flame over its wick: 26 mm high and 10 wide. From memory. */
export const FLAME = { wick: 8, height: 26, width: 10 }

const solid = (profile: Profile, rings: Profile, more: Partial<ThingSolid> = {}): ThingSolid => ({
  radius: Math.max(...profile.map(([r]) => r)),
  height: profile.at(-1)![1],
  stands: 0,
  profile,
  rings,
  clear: false,
  ...more,
})

/** Each thing as a turned solid; the source of a size is beside it. */
export const SOLIDS: Record<ThingKind, ThingSolid> = {
  'dinner-plate': solid(
    [
      [78, 0],
      [80, 3],
      [135, 20],
    ],
    PLATE_RINGS,
  ),
  'side-plate': solid(
    [
      [48, 0],
      [50, 3],
      [85, 15],
    ],
    SIDE_RINGS,
  ),
  'wine-glass': solid(
    WINE,
    [
      [35, 0],
      [34.4, 2],
      [39.9, 150],
      [33.5, 210],
    ],
    { clear: true },
  ),
  'water-glass': solid(
    TUMBLER,
    [
      [29, 0],
      [35, 76],
      [38, 115],
    ],
    { clear: true },
  ),
  saucer: solid(
    [
      [42, 0],
      [44, 3],
      [75, 16],
    ],
    SAUCER_RINGS,
  ),
  cup: solid(
    CUP,
    [
      [40.5, 54],
      [41.4, 61.6],
      [43, 62],
    ],
    { stands: 4 },
  ),
  candle: solid(CANDLE, [
    [22, 114],
    [28.5, 115],
  ]),
}

const DERIVATIVE = 1e-3

/** Radius at a height, between the points of the profile by straight lines. */
const straightAt = (profile: Profile, height: number): number => {
  const last = profile.length - 1
  for (let i = 1; i <= last; i++) {
    const [r1, h1] = profile[i]!
    const [r0, h0] = profile[i - 1]!
    if (height <= h1 || i === last) {
      const t = h1 === h0 ? 1 : Math.min(1, Math.max(0, (height - h0) / (h1 - h0)))
      return r0 + t * (r1 - r0)
    }
  }
  return profile[0]![0]
}

/** So far to each side a profile is evened out, mm: a curve instead of corners. Ours. */
const EVEN = 4

/** Radius at a height, and how it grows with height; evened out but at the ends. Both mm. */
export const radiusAt = (profile: Profile, height: number): { radius: number; growth: number } => {
  const top = profile.at(-1)![1]
  const at = (h: number): number => {
    const half = Math.min(EVEN, h, top - h)
    if (half <= 0) return straightAt(profile, h)
    let sum = 0
    for (const [k, share] of [
      [-1, 1],
      [-0.5, 2],
      [0, 2],
      [0.5, 2],
      [1, 1],
    ] as const)
      sum += share * straightAt(profile, h + k * half)
    return sum / 8
  }
  const [low, high] = [Math.max(0, height - DERIVATIVE), Math.min(top, height + DERIVATIVE)]
  return { radius: at(height), growth: (at(high) - at(low)) / Math.max(high - low, 1e-9) }
}
