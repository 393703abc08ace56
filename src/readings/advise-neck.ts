import type { Vessel } from '../arrangement/index.ts'
import { neckOf, thicknessOf } from './crowding.ts'
import type { Engine } from './engine.ts'
import { type Mechanical, stemsWhere } from './measure-mechanics.ts'
import type { Topic } from './trial.ts'
import { type Lengths, leftOf, named } from './words.ts'

/** A neck takes a stem with ease that is a fifth wider than the stem. Ours, as the slack of stems that cross (bands.ts). */
const EASE = 1.2
/** Widths of mouths go in steps of so much, and no vessel is tried that is more than so many times as wide. Ours. mm */
const STEP = 5
const WIDEST = 4

/** The same vessel, so much wider that its neck takes a stem of this thickness; null where none does. */
const widerFor = (vessel: Vessel, thick_mm: number): Pick<Vessel, 'width' | 'depth'> | null => {
  for (let width = STEP * Math.ceil(vessel.width / STEP); width <= WIDEST * vessel.width; width += STEP) {
    const wider = { width, depth: (vessel.depth * width) / vessel.width }
    const neck = neckOf({ ...vessel, ...wider })
    if (2 * Math.min(neck.a, neck.b) >= EASE * thick_mm) return wider
  }
  return null
}

/** Stems that are thicker than the neck: another vessel, or another stem. */
export const aboutNeck = (engine: Engine, m: Mechanical, lengths: Lengths): Topic => {
  const { vessel } = engine.resolved
  const thick = stemsWhere(engine, (i) => m.holds[i]!.loose === 'neck')
  const ids = thick.map((s) => s.id)
  const most = Math.max(...thick.map(thicknessOf))
  const neck = neckOf(vessel)
  const one = thick.length === 1
  const text = `${named(thick)}, ${one ? 'does' : 'do'} not go into the neck: it is ${lengths(2 * Math.min(neck.a, neck.b))} wide, the ${one ? 'stem' : 'thickest stem'} ${lengths(most)}. `
  const wider = widerFor(vessel, most)
  return {
    ideas: wider
      ? [
          {
            edit: { do: 'set-vessel', set: wider },
            stems: ids,
            say: (v) =>
              `${text}Set ${one ? 'it' : 'them'} in a vessel like this one, ${lengths(wider.width)} wide at the mouth${leftOf(v.unsupported)}.`,
          },
        ]
      : [],
    otherwise: {
      text: `${text}Choose a vessel with a wider neck, or ${one ? 'a thinner stem' : 'thinner stems'}.`,
      stems: ids,
    },
  }
}
