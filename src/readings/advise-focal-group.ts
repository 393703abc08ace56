import type { Edit } from '../arrangement/index.ts'
import type { ResolvedStem } from '../geometry/index.ts'
import { counted, grouped, stemsOf } from './advise-words.ts'
import type { Engine } from './engine.ts'
import type { Prominence } from './focal-prominence.ts'
import { becomeLike, moreLike, placesAbout } from './regroup.ts'
import type { Idea, Values } from './trial.ts'
import { type Lengths, numbered, steps } from './words.ts'

type Then = (v: Values) => string

/** Moves a stem along the way its head faces. */
export const along = (stem: ResolvedStem, mm: number): Edit => ({
  do: 'shift-stems',
  ids: [stem.id],
  by: [stem.axis[0] * mm, stem.axis[1] * mm, stem.axis[2] * mm],
})

const apart = (a: ResolvedStem, b: ResolvedStem): number => Math.hypot(...a.stem.tip.map((v, i) => v - b.stem.tip[i]!))

/** More of the flower that leads beside it: with two a group of three, with four one of five. */
export const addGroup = ({ resolved }: Engine, focal: ResolvedStem, more: number, then: Then): Idea[] => [
  {
    edit: moreLike(resolved, focal, placesAbout(focal, more)),
    stems: [focal.id],
    say: (v) =>
      more === 1
        ? `Set one more beside ${numbered(focal)}: ${then(v)}.`
        : `Set ${stemsOf(more, focal.plant.name)} beside ${numbered(focal)}, so that a group of ${counted(more + 1)} leads: ${then(v)}.`,
  },
]

/** What stands nearest to the flower that leads is exchanged for more of it. */
export const becomeFocal = (
  { resolved: { stems } }: Engine,
  focal: ResolvedStem,
  count: number,
  then: Then,
): Idea[] => {
  const near = stems
    .filter((s) => s.role !== 'focal' && s.role !== 'line')
    .sort((a, b) => apart(a, focal) - apart(b, focal))
    .slice(0, count)
  if (near.length < count) return []
  return [
    {
      edit: becomeLike(near, focal),
      stems: [...near, focal].map((s) => s.id),
      say: (v) =>
        `Exchange ${grouped(near)}, next to ${numbered(focal)}, for more of it, so that a group of ${counted(count + 1)} leads: ${then(v)}.`,
    },
  ]
}

/** All focal flowers at once, out by half of a head. */
export const forward = ({ resolved: { stems } }: Engine, p: Prominence, lengths: Lengths, then: Then): Idea[] => {
  const focal = p.focal.map((i) => stems[i]!)
  if (focal.length < 2) return []
  const mm = steps(0.5 * focal[0]!.head_mm)
  return [
    {
      edit: { do: 'many', label: 'brought out', edits: focal.map((s): Edit => along(s, mm)) },
      stems: focal.map((s) => s.id),
      say: (v) => `Bring ${grouped(focal)} out together, each by ${lengths(mm)} the way it faces: ${then(v)}.`,
    },
  ]
}

/** Most greens that are taken out at once. Ours. */
const GREENS = 4

/** Greens that stand round the flower that leads, taken out at once. */
export const thinGreens = ({ resolved: { stems } }: Engine, focal: ResolvedStem, then: Then): Idea[] => {
  const greens = stems
    .filter((s) => s.role === 'greens' && apart(s, focal) < 1.5 * focal.head_mm + s.head_mm / 2)
    .sort((a, b) => apart(a, focal) - apart(b, focal))
    .slice(0, GREENS)
  if (greens.length < 2) return []
  return [
    {
      edit: { do: 'remove-stems', ids: greens.map((s) => s.id) },
      stems: greens.map((s) => s.id),
      say: (v) => `Take ${grouped(greens)} out, in which ${numbered(focal)}, is lost: ${then(v)}.`,
    },
  ]
}
