import type { Arrangement, Edit, Point2, Stem, Vessel } from '../arrangement/index.ts'
import { innerSection, type Resolved, type ResolvedStem, reachIn } from '../geometry/index.ts'
import type { StemRow } from './types.ts'

/** The angle by which leaves and florets follow each other without falling in line, 360° × (2 − φ). Vogel, Math. Biosci. 44:179–189 (1979). */
const GOLDEN = Math.PI * (3 - Math.sqrt(5))
/** Golden turns tried at one distance from the axis, and the distances, in head widths from the copied stem's own. Ours. */
const TURNS = 21
const RINGS = [0, 0.6, -0.6, 1.2, -1.2, 1.8]
/** Heads may touch, and press into each other by a tenth. Ours. */
const PRESS = 0.9

interface Taken {
  tip: readonly [number, number, number]
  mouth: Point2
  head: number
  thickness: number
}

const takenBy = (s: ResolvedStem): Taken => ({
  tip: s.stem.tip,
  mouth: s.stem.mouth,
  head: s.head_mm,
  thickness: s.plant.stemDiameter_mm.value,
})

/** Turns a point about the axis by an angle, as an oval vessel turns: y counts as it does against the vessel's depth. */
const turned = ([x, y]: readonly [number, number], angle: number, stretch: number, grow: number): Point2 => {
  const [c, s] = [Math.cos(angle), Math.sin(angle)]
  const v = y / stretch
  const length = Math.hypot(x, v)
  const k = length > 0 ? Math.max(0, length + grow) / length : 1
  const [p, q] = length > 0 ? [x * k, v * k] : [grow, 0]
  return [p * c - q * s, (p * s + q * c) * stretch]
}

/** Pulls a crossing inside the vessel's mouth, its own thickness away from the wall. */
const inside = (vessel: Vessel, [x, y]: Point2, thickness: number): Point2 => {
  const { a, b } = innerSection(vessel, 1)
  const section = { a: a - thickness / 2, b: b - thickness / 2 }
  const reach = reachIn(vessel, section, x, y)
  if (!Number.isFinite(reach)) return [0, 0]
  return reach > 1 ? [x / reach, y / reach] : [x, y]
}

/** Files hold tenths of a millimetre; a crossing is rounded toward the axis, to stay inside. */
const tenth = (mm: number): number => Math.round(mm * 10) / 10 || 0
const tenthInward = (mm: number): number => Math.trunc(mm * 10) / 10 || 0

/** How far clear of everything: 0 or more is free; below, the worst overlap in mm. */
const clearance = (place: Taken, taken: readonly Taken[]): number => {
  let least = Number.POSITIVE_INFINITY
  for (const t of taken) {
    const heads = Math.hypot(place.tip[0] - t.tip[0], place.tip[1] - t.tip[1], place.tip[2] - t.tip[2])
    const stems = Math.hypot(place.mouth[0] - t.mouth[0], place.mouth[1] - t.mouth[1])
    least = Math.min(least, heads - (PRESS * (place.head + t.head)) / 2, stems - (place.thickness + t.thickness) / 2)
  }
  return least
}

/** The first free place, or else the freest. */
const freePlace = (vessel: Vessel, from: Taken, taken: readonly Taken[]): Taken => {
  const stretch = vessel.depth / vessel.width
  let best: Taken | null = null
  let most = Number.NEGATIVE_INFINITY
  for (const ring of RINGS)
    for (let k = 1; k <= TURNS; k += 1) {
      const [x, y] = turned([from.tip[0], from.tip[1]], k * GOLDEN, stretch, ring * from.head)
      const [u, v] = inside(vessel, turned(from.mouth, k * GOLDEN, stretch, ring * from.thickness * 2), from.thickness)
      const tip = [tenth(x), tenth(y), from.tip[2]] as const
      const place: Taken = { ...from, tip, mouth: [tenthInward(u), tenthInward(v)] }
      const clear = clearance(place, taken)
      if (clear >= 0) return place
      if (clear > most) [best, most] = [place, clear]
    }
  return best ?? from
}

/**
 * The edit that gives a row `count` pieces (whole number from 0 up). Those taken out are the last added. Each added one is a
 * copy of the row's last stem, put in a free place around: turned from it by golden angles about the vertical axis, further
 * out or in where that is taken, clear of every other head and stem if anywhere is, its crossing kept inside the mouth.
 * `newId` gives an
 * id that is not yet in the document it is handed. Throws a RangeError for any other count.
 */
export const changeCount = (
  document: Arrangement,
  resolved: Resolved,
  row: StemRow,
  count: number,
  newId: (grown: Arrangement) => string,
): Edit => {
  if (!Number.isSafeInteger(count) || count < 0)
    throw new RangeError(`count: expected a whole number from 0 up, got ${count}`)
  const mine = resolved.stems.filter((s) => row.ids.includes(s.id)).sort((a, b) => a.index - b.index)
  if (count < mine.length) return { do: 'remove-stems', ids: mine.slice(count).map((s) => s.id) }
  const last = mine.at(-1)
  const added: Stem[] = []
  if (last) {
    const taken = resolved.stems.map(takenBy)
    const from = takenBy(last)
    for (let n = mine.length; n < count; n += 1) {
      const place = freePlace(document.vessel, from, taken)
      taken.push(place)
      const [x, y, z] = place.tip
      added.push({
        ...last.stem,
        id: newId({ ...document, stems: [...document.stems, ...added] }),
        mouth: [...place.mouth],
        tip: [x, y, z],
      })
    }
  }
  return { do: 'add-stems', stems: added }
}
