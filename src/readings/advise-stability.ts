import type { Edit, Point2 } from '../arrangement/index.ts'
import { bandOf } from './bands.ts'
import type { Engine } from './engine.ts'
import { measureStability, type Stability } from './stability.ts'
import type { Idea, Topic } from './trial.ts'
import { loadOf } from './weight.ts'
import { type Lengths, named, round, steps } from './words.ts'

const degrees = (value: unknown): string => `${round(value as number)}°`

/** A moved tip moves about this part of a stem's weight: its head, and half of its stalk. Ours. */
const MOVED = 0.75

/** All stems set back, against the way (c, s) in which it falls, so far that their weight lies over the foot again, with enough water besides: for what is far gone. */
const setBack = (engine: Engine, m: Stability, [c, s]: Point2, text: string, lengths: Lengths): Idea[] => {
  const { stems, vessel } = engine.resolved
  const { centre, mass_g, stems_g } = m.weight
  const off = centre[0] * c + centre[1] * s
  if (stems.length === 0 || off < 5 || stems_g <= 0) return []
  const ids = stems.map((x) => x.id)
  const by = Math.min(steps((off * mass_g) / stems_g / MOVED), 300)
  const shift: Edit = { do: 'shift-stems', ids, by: [-by * c, -by * s, 0] }
  const fill: Edit[] = vessel.waterFill < 0.8 ? [{ do: 'set-vessel', set: { waterFill: 0.8 } }] : []
  const also = fill.length > 0 ? ', and fill it to four fifths' : ''
  return [
    {
      edit: { do: 'many', label: 'Stems set back over the vessel', edits: [shift, ...fill] },
      stems: ids,
      say: (v) =>
        `${text}Set all stems back over the vessel by ${lengths(by)}${also}: then it goes over at ${degrees(v.tippingAngle_deg)}.`,
    },
  ]
}

const aboutTipping = (engine: Engine, m: Stability, least: number, lengths: Lengths): Topic => {
  const { stems, vessel } = engine.resolved
  const text = `It goes over at a tilt of ${degrees(m.tipping_deg)}, wanted at least ${least}°. `
  const way = (m.toward_deg * Math.PI) / 180
  const [c, s] = [Math.cos(way), Math.sin(way)]
  const moment = (i: number): number => {
    const { mass_g, centre } = loadOf(stems[i]!)
    return mass_g * (centre[0] * c + centre[1] * s)
  }
  const outward = stems.map((_, i) => i).sort((a, b) => moment(b) - moment(a))
  const high = stems.toSorted((a, b) => loadOf(b).mass_g * b.stem.tip[2] - loadOf(a).mass_g * a.stem.tip[2])
  const ideas: Idea[] = []
  for (const part of [1 / 6, 1 / 3]) {
    const some = outward.slice(0, Math.max(1, Math.round(stems.length * part))).map((i) => stems[i]!)
    if (some.length === 0) continue
    const by = steps(0.6 * Math.max(20, vessel.width / 3))
    const edit: Edit = { do: 'shift-stems', ids: some.map((x) => x.id), by: [-by * c, -by * s, 0] }
    ideas.push({
      edit,
      stems: some.map((x) => x.id),
      say: (v) =>
        `${text}Lean ${named(some)} back over the vessel by ${lengths(by)}: then it goes over at ${degrees(v.tippingAngle_deg)}.`,
    })
  }
  ideas.push(...setBack(engine, m, [c, s], text, lengths))
  for (const part of [1 / 4, 1]) {
    const some = high.slice(0, Math.max(1, Math.round(stems.length * part)))
    if (some.length === 0) continue
    ideas.push({
      edit: { do: 'lengthen-stems', ids: some.map((x) => x.id), factor: 0.85 },
      stems: some.map((x) => x.id),
      say: (v) => `${text}Shorten ${named(some)} by 15 %: then it goes over at ${degrees(v.tippingAngle_deg)}.`,
    })
  }
  if (vessel.waterFill < 0.8)
    ideas.push({
      edit: { do: 'set-vessel', set: { waterFill: 0.8 } },
      stems: [],
      say: (v) => `${text}Fill it with water to four fifths: then it goes over at ${degrees(v.tippingAngle_deg)}.`,
    })
  return {
    ideas,
    otherwise: {
      text: `${text}A vessel with a wider foot, or weight on its floor (a pin-holder, pebbles), steadies it.`,
      stems: high.slice(0, 2).map((x) => x.id),
    },
  }
}

const aboutSpilling = (engine: Engine, angle: number, least: number): Topic => {
  const { vessel } = engine.resolved
  const text = `Water spills at a tilt of ${degrees(angle)}, wanted at least ${least}°. `
  return {
    ideas: [0.9, 0.8, 0.7]
      .filter((part) => part * vessel.waterFill >= 0.3)
      .map((part): Idea => {
        const fill = Math.round(100 * part * vessel.waterFill) / 100
        return {
          edit: { do: 'set-vessel', set: { waterFill: fill } },
          stems: [],
          say: (v) =>
            `${text}Fill it to ${round(100 * fill)} % only: then at ${degrees(v.spillAngle_deg)}. Top up on the table.`,
        }
      }),
    otherwise: { text: `${text}Carry it empty, and fill it where it stands.`, stems: [] },
  }
}

/** What is amiss with how it stands, and ideas against it. */
export const adviseStability = (engine: Engine, lengths: Lengths): Topic[] => {
  const m = measureStability(engine)
  const { document } = engine.resolved
  const tip = bandOf('stability', 'tippingAngle_deg', document)?.band[0] ?? 0
  const spill = bandOf('stability', 'spillAngle_deg', document)?.band[0] ?? 0
  const topics: Topic[] = []
  if (m.tipping_deg < tip) topics.push(aboutTipping(engine, m, tip, lengths))
  if (m.spill && m.spill.angle_deg < spill) topics.push(aboutSpilling(engine, m.spill.angle_deg, spill))
  return topics
}
