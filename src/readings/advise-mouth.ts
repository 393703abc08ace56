import type { Point3 } from '../arrangement/index.ts'
import { type ResolvedStem, viewAxes } from '../geometry/index.ts'
import { stemsOf } from './advise-words.ts'
import { collar, collarHeight, commonCover, isNarrow, likeOf } from './collar.ts'
import type { Engine } from './engine.ts'
import { oneMore, shiftTo } from './mend-stems.ts'
import type { Space } from './negative-space.ts'
import type { Idea, Topic, Values } from './trial.ts'
import { type Lengths, numbered, percent, sideWords } from './words.ts'

/** A bare mouth: a collar of greens, else what is there brought low over it. `most` is wanted to show at most, 0–1. */
export const aboutMouth = (engine: Engine, s: Space, most: number, lengths: Lengths): Topic => {
  const { resolved } = engine
  const { stems, vessel } = resolved
  const half = Math.min(vessel.width, vessel.depth) / 2
  const { toward } = viewAxes({ turn: s.mouthTurn, pitch: 0 })
  const [x, y] = s.gap.centre
  const low = stems
    .filter((x) => x.plant.formClass !== 'line' && x.role !== 'focal')
    .sort((a, b) => Number(b.role === 'greens') - Number(a.role === 'greens') || a.stem.tip[2] - b.stem.tip[2])
    .slice(0, 3)
  const side = sideWords(s.mouthTurn)
  const shows = (v: Values): string =>
    `${percent(v.mouthShowing as number)} of the mouth then shows instead of ${percent(s.mouthShowing)}`
  // From 45° above what stands h over the rim hides what lies h farther back.
  const over = (stem: ResolvedStem): Point3 => {
    const h = 0.15 * half + stem.head_mm / 4
    return [x + toward[0] * h, y + toward[1] * h, h]
  }
  const added = low
    .filter((stem, i) => low.findIndex((x) => x.stem.plant === stem.stem.plant) === i)
    .slice(0, 2)
    .map(
      (like): Idea => ({
        edit: oneMore(resolved, like, over(like)),
        stems: [like.id],
        say: (v) =>
          `Set one more like ${numbered(like)}, low over the bare ${lengths(2 * s.gap.radius)} of the mouth, seen from ${side}: ${shows(v)}.`,
      }),
    )
  const greens = stems.filter((x) => x.role === 'greens' && x.plant.formClass !== 'line')
  const kinds = greens.filter((x, i) => greens.findIndex((y) => y.stem.plant === x.stem.plant) === i).slice(0, 2)
  const covers = kinds.length > 0 ? kinds.map((x) => likeOf(x.stem, x.plant, x.head_mm)) : [commonCover(vessel)]
  const shares = isNarrow(vessel) ? [0.25, 0.5] : [0.1, 0.25]
  const collars = covers.flatMap((like) =>
    (covers.length > 1 ? [shares[0]!] : shares).flatMap((share): Idea[] => {
      const set = collar(resolved, engine.ready, like, collarHeight(vessel, like, share), 0.9 * most)
      if (set.length === 0) return []
      const what = `${set.length > 2 ? 'a ring of ' : ''}${stemsOf(set.length, like.name)} low ${set.length > 2 ? 'round the rim' : 'over the rim'}`
      return [
        {
          edit: { do: 'add-stems', stems: set },
          stems: [],
          say: (v) => `The mouth lies bare: set ${what}; ${shows(v)}.`,
        },
      ]
    }),
  )
  // Toward the one who sees the mouth: the front of the rim at that turn.
  const moved = [0.8, 0.3].flatMap((k) =>
    low.map(
      (stem): Idea => ({
        edit: shiftTo(stem, [toward[0] * half * k, toward[1] * half * k, half * 0.4 + stem.head_mm / 4]),
        stems: [stem.id],
        say: (v) => `Bring ${numbered(stem)}, low over the rim toward ${side}: ${shows(v)}.`,
      }),
    ),
  )
  return {
    ideas: [...collars, ...moved.slice(0, 1), ...added.slice(0, 1), ...moved.slice(1), ...added.slice(1)],
    otherwise: {
      text: `${percent(s.mouthShowing)} of the mouth shows from 45° above, seen from ${side}: low greens, set over the rim, would hide it.`,
      stems: [],
    },
  }
}
