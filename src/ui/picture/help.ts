import type { Arrangement } from '../../arrangement/index.ts'
import type { ViewAngle } from '../../drawing/index.ts'
import { projectPoint } from '../../geometry/index.ts'
import type { Painter } from '../../state/index.ts'

interface Large {
  document: Arrangement
  angle: ViewAngle
  /** Dots per mm. */
  scale: number
  lane: string
}

export interface Help {
  /** Another painter joins in once it has done its own. */
  joinAfter(aside: Painter, own: readonly Promise<unknown>[]): void
  /** The view is done, or given up. */
  end(): void
}

const nearestFirst = ({ stems }: Arrangement, angle: ViewAngle): string[] =>
  stems
    .map(({ id, tip }) => ({ id, near: projectPoint(tip, angle)[2] }))
    .sort((a, b) => b.near - a.near)
    .map(({ id }) => id)

/**
 * Help with a fine view that a painter is at. The large view of a sheet is more than half of its work. A painter lays stems
 * from the farthest to the nearest; the others make sprites for it from the nearest on, until they meet.
 */
export const helpWith = (painter: Pick<Painter, 'give'>, { document, angle, scale, lane }: Large): Help => {
  const left = nearestFirst(document, angle)
  let ended = false
  const help = async (aside: Painter): Promise<void> => {
    for (let id = left.shift(); id !== undefined && !ended; id = left.shift()) {
      const sprites = await aside.sprites(`${lane} ${id}`, document, [id], angle, scale, 'fine')
      if (sprites && !ended) painter.give({ document, angle, scale, quality: 'fine', sprites })
    }
  }
  const end = (): void => {
    ended = true
  }
  return {
    // Who fails stops helping: the painter makes what is not given, and tells if that can't be made.
    joinAfter: (aside, own) =>
      void Promise.all(own)
        .then(() => help(aside), end)
        .catch(end),
    end,
  }
}
