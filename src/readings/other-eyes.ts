import { deltaE2000, type Lab, labAsSeenBy, labOf, VISIONS, type Vision } from '../colour/index.ts'

/** A colour and how much of it is seen. */
export interface Patch {
  hex: string
  area: number
}

export interface OtherEyes {
  /** Mean ΔE00 of flowers to greens, both by visible area; null where one of them is missing. */
  againstGreens: number | null
  /** The same for those to whom it is least, and who they are. */
  againstGreensLeast: number | null
  leastFor: Vision | null
  /** Pairs of flower colours that are plainly two for most and hardly so for some, the largest by area first. */
  alike: { first: string; second: string; vision: Vision; apart: number; left: number }[]
}

/**
 * Two colours this far apart are plainly two, and under the lower number hardly so, ΔE00. Ours; side by side about 1 is
 * just seen (CIEDE2000 is scaled so), across an arrangement it takes several times that.
 */
const PLAIN = 15
const HARDLY = 7

/** So many flower colours and greens are looked at, the largest by area: more are never told apart at a table. Ours. */
const MOST_FLOWERS = 12
const MOST_GREENS = 6

const EYES = ['all', ...VISIONS] as const
type Eyes = (typeof EYES)[number]

/** Colours that were met, each with its number, and as each of these eyes sees it; differences by pair of numbers. */
let numbers = new Map<string, number>()
let labs: Record<Eyes, Lab>[] = []
let apartness: Record<Eyes, Map<number, number>>

const forget = (): void => {
  numbers = new Map()
  labs = []
  apartness = { all: new Map(), protan: new Map(), deutan: new Map(), tritan: new Map() }
}
forget()
/** Rather begin anew than grow without end: colours of a long session of trying. */
const MOST = 500

const numberOf = (hex: string): number => {
  const known = numbers.get(hex)
  if (known !== undefined) return known
  const seenBy = (vision: Vision): Lab => labAsSeenBy(hex, vision)
  labs.push({ all: labOf(hex), protan: seenBy('protan'), deutan: seenBy('deutan'), tritan: seenBy('tritan') })
  numbers.set(hex, labs.length - 1)
  return labs.length - 1
}

const apart = (a: Numbered, b: Numbered, eyes: Eyes): number => {
  const key = a.number < b.number ? a.number * 65536 + b.number : b.number * 65536 + a.number
  const known = apartness[eyes].get(key)
  if (known !== undefined) return known
  const delta = deltaE2000(labs[a.number]![eyes], labs[b.number]![eyes])
  apartness[eyes].set(key, delta)
  return delta
}

type Numbered = Patch & { number: number }

const meanApart = (flowers: readonly Numbered[], greens: readonly Numbered[], eyes: Eyes): number => {
  let [sum, weight] = [0, 0]
  for (const f of flowers)
    for (const g of greens) {
      sum += f.area * g.area * apart(f, g, eyes)
      weight += f.area * g.area
    }
  return sum / weight
}

const largerFirst = (a: Patch, b: Patch): number =>
  a.area === b.area ? (a.hex < b.hex ? -1 : 1) : a.area > b.area ? -1 : 1

const largestOf = (patches: readonly Patch[], most: number): Numbered[] => {
  const sorted = patches.slice().sort(largerFirst)
  const largest: Numbered[] = []
  for (let i = 0; i < Math.min(most, sorted.length); i++) {
    const { hex, area } = sorted[i]!
    largest.push({ hex, area, number: numberOf(hex) })
  }
  return largest
}

/** How flowers stand off the greens, and which flower colours run together, for guests who see fewer colours; in daylight. */
export const throughOtherEyes = (allFlowers: readonly Patch[], allGreens: readonly Patch[]): OtherEyes => {
  if (numbers.size > MOST) forget()
  const flowers = largestOf(allFlowers, MOST_FLOWERS)
  const greens = largestOf(allGreens, MOST_GREENS)
  const both = flowers.length > 0 && greens.length > 0
  let [least, leastFor]: [number | null, Vision | null] = [null, null]
  if (both)
    for (const vision of VISIONS) {
      const mean = meanApart(flowers, greens, vision)
      if (least === null || mean < least) [least, leastFor] = [mean, vision]
    }
  const alike: OtherEyes['alike'] = []
  for (let i = 0; i < flowers.length; i++)
    for (let j = i + 1; j < flowers.length; j++) {
      const first = flowers[i]!
      const second = flowers[j]!
      const plain = apart(first, second, 'all')
      if (plain < PLAIN) continue
      let worst: { vision: Vision; left: number } | null = null
      for (const vision of VISIONS) {
        const left = apart(first, second, vision)
        if (left < HARDLY && (!worst || left < worst.left)) worst = { vision, left }
      }
      if (worst) alike.push({ first: first.hex, second: second.hex, apart: plain, ...worst })
    }
  return {
    againstGreens: both ? meanApart(flowers, greens, 'all') : null,
    againstGreensLeast: least,
    leastFor,
    alike,
  }
}
