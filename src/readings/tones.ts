import { type Lab, labOf } from '../colour/index.ts'
import type { Resolved, ResolvedStem } from '../geometry/index.ts'

/** Colours of a picture for working out contrast; colour 0 is the ground (the linen). */
export interface Tones {
  labs: Lab[]
  /** Colour of each owner code. */
  ofCode: Uint8Array
}

/** More colours than this are joined with their nearest, to keep contrast quick. Ours. */
const MOST = 16

export const codeOfVessel = (stems: number): number => stems * 4 + 1

/** #rrggbb of a stem's part: bloom, leaf or bare stem. Foliage stems carry their colour in the leaf. */
export const partColour = (stem: ResolvedStem, kind: number): string =>
  kind === 0 || (kind === 1 && stem.plant.formClass === 'foliage') ? stem.colour : stem.plant.leafColour

const labs = new Map<string, Lab>()
/** Lab of a colour in daylight, remembered. */
export const labOnce = (hex: string): Lab => {
  const before = labs.get(hex)
  if (before) return before
  if (labs.size > 5000) labs.clear()
  const lab = labOf(hex)
  labs.set(hex, lab)
  return lab
}

const join = (colours: string[]): Map<string, Lab> => {
  const sorted = [...new Set(colours)].sort()
  const kept: Lab[] = []
  const map = new Map<string, Lab>()
  // Wide enough steps that what is left is few; with up to MOST colours nothing is joined.
  for (let near = 0; ; near = near * 1.5 + 2) {
    kept.length = 0
    map.clear()
    for (const hex of sorted) {
      const lab = labOnce(hex)
      const same = kept.find((k) => (k[0] - lab[0]) ** 2 + (k[1] - lab[1]) ** 2 + (k[2] - lab[2]) ** 2 <= near * near)
      if (!same) kept.push(lab)
      map.set(hex, same ?? lab)
    }
    if (kept.length <= MOST) return map
  }
}

let latest: { colours: string[]; tones: Tones } | null = null

/** Remembered while no colour changes, as in a drag. */
export const tonesOf = (resolved: Resolved): Tones => {
  const { stems, vessel, document } = resolved
  const colours = [document.setting.linen, vessel.colour]
  for (const s of stems) for (let kind = 0; kind < 3; kind++) colours.push(partColour(s, kind))
  const before = latest
  const same = before?.colours.length === colours.length && colours.every((c, i) => c === before.colours[i])
  if (before && same) return before.tones
  const tones = workOutTones(resolved, colours.slice(2))
  latest = { colours, tones }
  return tones
}

const workOutTones = ({ document, stems, vessel }: Resolved, ofKind: string[]): Tones => {
  const joined = join([...ofKind, vessel.colour])
  const list: Lab[] = [labOnce(document.setting.linen)]
  const numbers = new Map<Lab, number>()
  for (const lab of joined.values())
    if (!numbers.has(lab)) {
      numbers.set(lab, list.length)
      list.push(lab)
    }
  const number = (hex: string): number => numbers.get(joined.get(hex)!)!
  const ofCode = new Uint8Array(stems.length * 4 + 2)
  for (let i = 0; i < stems.length; i++)
    for (let kind = 0; kind < 3; kind++) ofCode[i * 4 + kind + 1] = number(ofKind[3 * i + kind]!)
  ofCode[codeOfVessel(stems.length)] = number(vessel.colour)
  return { labs: list, ofCode }
}
