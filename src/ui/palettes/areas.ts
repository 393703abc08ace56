import type { Slot } from '../../arrangement/index.ts'
import { hexOf, labOf, mergeColours } from '../../colour/index.ts'
import type { SeenColours } from '../../state/index.ts'

/** A colour of the arrangement and how much of it is seen. */
export interface Area {
  hex: string
  /** Of all plants that are seen, 0–1. */
  share: number
  /** Place in the palette; −1 for a colour of its own or leaves of the plants. */
  slot: number
  leaf: boolean
}

/**
 * How much of each colour is seen from all sides: flowers from the largest down, then leaves. Greens of the palette come by
 * themselves, leaves of the flowers' own stems joined where the eye takes them as one. Shares add up to 1; none where
 * nothing is seen.
 */
export const areasOf = ({ blooms, leaves }: SeenColours, slots: readonly Slot[]): Area[] => {
  const total = [...blooms, ...leaves].reduce((sum, p) => sum + p.area, 0)
  if (!(total > 0)) return []
  const slotOf = (hex: string): number => slots.findIndex((s) => s.colour.toLowerCase() === hex.toLowerCase())
  const plain = (patches: SeenColours['blooms'], leaf: boolean): Area[] =>
    patches.map(({ hex, area }) => ({ hex, share: area / total, slot: slotOf(hex), leaf }))
  const own = leaves.filter((p) => slotOf(p.hex) < 0)
  const ownArea = own.reduce((sum, p) => sum + p.area, 0)
  const joined = mergeColours(own.map(({ hex, area }) => ({ lab: labOf(hex), area }))).map(
    (group): Area => ({ hex: hexOf(group.lab), share: (group.share * ownArea) / total, slot: -1, leaf: true }),
  )
  const bySize = (p: Area, q: Area): number => q.share - p.share
  const greens = [
    ...plain(
      leaves.filter((p) => slotOf(p.hex) >= 0),
      true,
    ),
    ...joined,
  ]
  return [...plain(blooms, false).sort(bySize), ...greens.sort(bySize)]
}
