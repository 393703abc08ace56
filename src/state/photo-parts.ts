import type { Role, Slot } from '../arrangement/index.ts'
import { oklchOf, type PhotoColour } from '../colour/index.ts'

export interface PhotoPart extends Slot {
  /** Of the photo, 0–1; absent where it is not from the photo. */
  share?: number
}

/** What a leaf looks like, OKLCH: from olive to blue green, neither grey nor as light as a lime flower. Ours. */
const LEAF = { hue: [100, 165], chroma: 0.025, lightness: 0.72 } as const
const isLeaf = (hex: string): boolean => {
  const [l, c, h] = oklchOf(hex)
  return h >= LEAF.hue[0] && h <= LEAF.hue[1] && c >= LEAF.chroma && l <= LEAF.lightness
}

/** Walls, roads and shadows: hardly any flower is a grey. Whites are none of them, nor is black. Ours. */
const GREY = { chroma: 0.03, lightness: [0.28, 0.88] } as const
const isGrey = (hex: string): boolean => {
  const [l, c] = oklchOf(hex)
  return c < GREY.chroma && l > GREY.lightness[0] && l < GREY.lightness[1]
}

/** Parts for flower colours from the largest down; all after that are filler. Ours: what is seen most leads. */
const BY_SIZE: readonly Role[] = ['focal', 'mass', 'form', 'line']

/**
 * Proposes the part that each colour of a photo plays, by its area: the largest flower colour leads. Leaf colours are
 * greens and greys are filler, unless there is nothing else. A photo without leaves keeps the greens of the design, at the
 * end.
 */
export const partsOfPhoto = (colours: readonly PhotoColour[], before: readonly Slot[]): PhotoPart[] => {
  const lead = colours.find((c) => !isLeaf(c.hex) && !isGrey(c.hex)) ?? colours[0]
  let flowers = 0
  const partOf = (colour: PhotoColour): Role => {
    if (colour !== lead && isLeaf(colour.hex)) return 'greens'
    return colour !== lead && isGrey(colour.hex) ? 'filler' : (BY_SIZE[flowers++] ?? 'filler')
  }
  const parts = colours.map((c): PhotoPart => ({ colour: c.hex, part: partOf(c), share: c.share }))
  if (parts.some((p) => p.part === 'greens')) return parts
  return [...parts, ...before.filter((s) => s.part === 'greens').map(({ colour, part }) => ({ colour, part }))]
}
