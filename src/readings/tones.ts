import { type Lab, labOf } from '../colour/index.ts'
import type { Resolved, ResolvedStem } from '../geometry/index.ts'

/** Colours of a picture for working out contrast; colour 0 is the cloth, the last is the vessel's and nothing else's. */
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

// Colours that were met, each with its number, and which of them the arrangement at hand has.
const numbers = new Map<string, number>()
const hexes: string[] = []
const labs: Lab[] = []
let taken = new Uint8Array(64)
let tone = new Uint8Array(64)
/** Rather begin anew than grow without end. */
const MOST_MET = 5000

const forget = (): void => {
  numbers.clear()
  hexes.length = 0
  labs.length = 0
}

/** A number for a colour (#rrggbb), the same until the next look at an arrangement's tones. */
export const colourNumber = (hex: string): number => {
  const before = numbers.get(hex)
  if (before !== undefined) return before
  labs.push(labOf(hex))
  numbers.set(hex, hexes.length)
  return hexes.push(hex) - 1
}
/** Lab of a colour in daylight, remembered. */
export const labOnce = (hex: string): Lab => labs[colourNumber(hex)]!

const squared = (p: Lab, q: Lab): number => (p[0] - q[0]) ** 2 + (p[1] - q[1]) ** 2 + (p[2] - q[2]) ** 2

/** The place in `kept` of the first colour that is as near as this; −1 where none is. */
const nearest = (kept: readonly number[], lab: Lab, near: number): number => {
  for (let k = 0; k < kept.length; k++) if (squared(labs[kept[k]!]!, lab) <= near * near) return k
  return -1
}

/** Sorts the colours that are met into MOST groups at most, each named by its first: writes `tone`, 1 and up. */
const join = (colours: readonly number[]): number[] => {
  const kept: number[] = []
  // Wide enough steps that what is left is few; with up to MOST colours nothing is joined.
  for (let near = 0; ; near = near * 1.5 + 2) {
    kept.length = 0
    for (let i = 0; i < colours.length; i++) {
      const lab = labs[colours[i]!]!
      const same = nearest(kept, lab, near)
      tone[colours[i]!] = 1 + (same < 0 ? kept.push(colours[i]!) - 1 : same)
      if (kept.length > MOST) break
    }
    if (kept.length <= MOST) return kept
  }
}

/** Which colours there are, each one time, by their #rrggbb. */
const coloursIn = ({ stems }: Resolved): number[] => {
  const found: number[] = []
  const add = (hex: string): void => {
    const n = colourNumber(hex)
    if (n >= taken.length) {
      const wider = new Uint8Array(2 * n)
      wider.set(taken)
      taken = wider
      tone = new Uint8Array(2 * n)
    }
    if (taken[n] === 1) return
    taken[n] = 1
    found.push(n)
  }
  for (let i = 0; i < stems.length; i++) for (let kind = 0; kind < 3; kind++) add(partColour(stems[i]!, kind))
  for (let i = 0; i < found.length; i++) taken[found[i]!] = 0
  return found.sort((a, b) => (hexes[a]! < hexes[b]! ? -1 : 1))
}

const workOutTones = (resolved: Resolved): Tones => {
  const { document, stems, vessel } = resolved
  if (hexes.length > MOST_MET) forget()
  const kept = join(coloursIn(resolved))
  const ofCode = new Uint8Array(stems.length * 4 + 2)
  for (let i = 0; i < stems.length; i++)
    for (let kind = 0; kind < 3; kind++) ofCode[i * 4 + kind + 1] = tone[colourNumber(partColour(stems[i]!, kind))]!
  ofCode[codeOfVessel(stems.length)] = kept.length + 1
  const all = [labOnce(document.setting.linen), ...kept.map((n) => labs[n]!), labOnce(vessel.colour)]
  return { labs: all, ofCode }
}

let latest: { linen: string; body: string; ofKind: string[]; tones: Tones } | null = null

/** Remembered while no colour changes, as in a drag. */
export const tonesOf = (resolved: Resolved): Tones => {
  const { stems, vessel, document } = resolved
  const { linen } = document.setting
  const before = latest
  let same = before !== null && before.linen === linen && before.body === vessel.colour
  const ofKind = before?.ofKind ?? []
  if (ofKind.length !== 3 * stems.length) same = false
  ofKind.length = 3 * stems.length
  for (let i = 0; i < stems.length; i++)
    for (let kind = 0; kind < 3; kind++) {
      const colour = partColour(stems[i]!, kind)
      if (ofKind[3 * i + kind] === colour) continue
      ofKind[3 * i + kind] = colour
      same = false
    }
  if (before && same) return before.tones
  latest = null
  const tones = workOutTones(resolved)
  latest = { linen, body: vessel.colour, ofKind, tones }
  return tones
}
