import type { ColourCluster } from './cluster.ts'
import { deltaE2000 } from './difference.ts'
import { type Lab, labOfLinear } from './lab.ts'
import { SAME_COLOUR } from './merge.ts'
import { linearOfOklab, type Oklab } from './oklab.ts'
import { hexOfLinear } from './srgb.ts'

/** A colour of a photo. */
export interface PhotoColour {
  hex: string
  /** Of the photo's pixels, 0–1. */
  share: number
}

/** What seems to lie behind it all. */
export interface PhotoGround extends PhotoColour {
  kind: 'near white' | 'near black'
  /** Of the photo's edge, 0–1. */
  edgeShare: number
}

export interface PhotoColours {
  /** Largest first. */
  colours: PhotoColour[]
  /** What was left out; empty where nothing was. */
  ground: PhotoGround[]
}

/** So many clusters are looked for at first, more than are kept: what the eye takes as one is joined afterwards. Ours. */
export const FINE_CLUSTERS = 16
/** Less of a photo than this is counted with the colour nearest to it. Ours. */
const LEAST_SHARE = 0.01
/** Limits of near white and near black, Oklab; ours, from papers, walls and boards of studios. */
const WHITE = { l: 0.93, chroma: 0.03 }
const BLACK = { l: 0.25, chroma: 0.04 }
/** Behind a thing lies what makes up at least so much of the edge. Ours. */
const GROUND_EDGE = 0.5

const kindOf = ([l, a, b]: Oklab): PhotoGround['kind'] | null => {
  const chroma = Math.hypot(a, b)
  if (l >= WHITE.l && chroma <= WHITE.chroma) return 'near white'
  return l <= BLACK.l && chroma <= BLACK.chroma ? 'near black' : null
}

const joined = (p: ColourCluster, q: ColourCluster): ColourCluster => {
  const share = p.share + q.share
  const mean = (i: 0 | 1 | 2): number => (p.oklab[i] * p.share + q.oklab[i] * q.share) / share
  return { oklab: [mean(0), mean(1), mean(2)], share, edgeShare: p.edgeShare + q.edgeShare }
}

const labOfCluster = (c: ColourCluster): Lab => labOfLinear(linearOfOklab(c.oklab))
const hexOfCluster = (c: ColourCluster): string => hexOfLinear(linearOfOklab(c.oklab))

/** The pair to be joined next: the smallest colour with its nearest while it is too small, else the nearest two. */
const nextPair = (clusters: readonly ColourCluster[], labs: readonly Lab[], most: number): [number, number] | null => {
  let small = -1
  clusters.forEach((c, i) => {
    if (c.share < LEAST_SHARE && (small < 0 || c.share < clusters[small]!.share)) small = i
  })
  let best: [number, number] | null = null
  let least = Number.POSITIVE_INFINITY
  for (let i = 0; i < clusters.length; i++)
    for (let j = i + 1; j < clusters.length; j++) {
      if (small >= 0 && i !== small && j !== small) continue
      const apart = deltaE2000(labs[i]!, labs[j]!)
      if (apart < least) [best, least] = [[i, j], apart]
    }
  return best && (small >= 0 || least < SAME_COLOUR || clusters.length > most) ? best : null
}

/** By colour difference and not by area, so that a small colour that stands out is kept before a second shade of a large one. */
const joinNearest = (clusters: readonly ColourCluster[], most: number): ColourCluster[] => {
  const all = [...clusters]
  const labs = all.map(labOfCluster)
  for (let pair = nextPair(all, labs, most); pair; pair = nextPair(all, labs, most)) {
    const [i, j] = pair
    all[i] = joined(all[i]!, all[j]!)
    labs[i] = labOfCluster(all[i]!)
    all.splice(j, 1)
    labs.splice(j, 1)
  }
  return all.sort((p, q) => q.share - p.share || p.oklab[0] - q.oklab[0])
}

/**
 * The colours of a photo, at most `most` (1 and up) and fewer where the eye takes more of them as one: clusters that are
 * nearer than ΔE00 5 are joined, then the nearest until there are no more than asked for. Near white or near black that
 * makes up half of the photo's edge or more is taken for its ground and left out, unless `withGround`, or nothing is left.
 */
export const photoColours = (clusters: readonly ColourCluster[], most: number, withGround = false): PhotoColours => {
  const ground: PhotoGround[] = []
  let rest = [...clusters]
  for (const kind of ['near white', 'near black'] as const) {
    const alike = rest.filter((c) => kindOf(c.oklab) === kind)
    if (alike.length === 0 || alike.length === rest.length) continue
    const whole = alike.reduce(joined)
    if (whole.edgeShare < GROUND_EDGE) continue
    ground.push({ hex: hexOfCluster(whole), share: whole.share, kind, edgeShare: whole.edgeShare })
    rest = rest.filter((c) => !alike.includes(c))
  }
  const kept = joinNearest(withGround ? clusters : rest, Math.max(1, most))
  return { colours: kept.map((c) => ({ hex: hexOfCluster(c), share: c.share })), ground }
}
