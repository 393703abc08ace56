import {
  type Arrangement,
  type Known,
  LIMITS,
  type Palette,
  type Problem,
  paletteProblems,
  problemLine,
  readArrangement,
  type Slot,
} from '../arrangement/index.ts'
import type { Got } from './packing.ts'

/** A palette on offer; a slot may have a word for its colour. */
export interface OfferedPalette {
  name: string
  slots: (Slot & { name?: string })[]
}

/** What goes to the partner: the design, the palettes to choose from, and what was ticked. */
export interface Parcel {
  design: Arrangement
  /** The one on the sheet first. */
  offers: OfferedPalette[]
  units: 'in' | 'cm' | 'mm'
  /** Only if ticked: the prices of the plants that stand in it. */
  prices: { currency: string; perBunch: Record<string, number>; packs?: Record<string, Pack[]> } | null
  /** Only if ticked. */
  note: string
}

/** Palettes that go along at most. */
export const MOST_OFFERS = 6
const UNITS: readonly string[] = ['in', 'cm', 'mm'] satisfies Parcel['units'][]

const pick = <T extends object>(thing: T, keys: readonly (keyof T)[]): T =>
  Object.fromEntries(keys.filter((k) => thing[k] !== undefined).map((k) => [k, thing[k]])) as T

const plainPalette = ({ name, slots }: OfferedPalette): OfferedPalette => ({
  name,
  slots: slots.map((s) => pick(s, ['colour', 'part', 'name'])),
})

/** The design without what the document does not know by name (a person's own remarks in a file) and without own bands. */
export const plainDesign = (design: Arrangement): Arrangement => ({
  ...pick(design, ['format', 'version', 'title', 'form']),
  vessel: pick(design.vessel, [
    'plan',
    'width',
    'depth',
    'height',
    'profile',
    'wall',
    'material',
    'colour',
    'mechanics',
    'waterFill',
  ]),
  palette: { name: design.palette.name, slots: design.palette.slots.map((s) => pick(s, ['colour', 'part'])) },
  stems: design.stems.map((s) => ({
    ...pick(s, ['id', 'plant', 'role', 'colour', 'openness', 'mouth', 'tip', 'bend', 'head', 'piece']),
    colour: typeof s.colour === 'string' ? s.colour : { slot: s.colour.slot },
  })),
  setting: {
    ...pick(design.setting, ['copies', 'date', 'light', 'linen']),
    table:
      design.setting.table.shape === 'round'
        ? pick(design.setting.table, ['shape', 'diameter'])
        : pick(design.setting.table, ['shape', 'length', 'width']),
  },
})

/** Stems sold together, and what they cost in minor units; what is no pack counts as none (stem-list's packs). */
interface Pack {
  stems: number
  minor: number
}

/** As JSON. Nothing goes along that the parcel does not name. */
export const writeParcel = ({ design, offers, units, prices, note }: Parcel): string => {
  const plants = new Set(design.stems.map((s) => s.plant))
  const own = <T>(all: Record<string, T>) => Object.entries(all).filter(([plant]) => plants.has(plant))
  const packs = own(prices?.packs ?? {})
  return JSON.stringify({
    design: plainDesign(design),
    offers: offers.slice(0, MOST_OFFERS).map(plainPalette),
    units,
    ...(prices
      ? {
          prices: {
            currency: prices.currency,
            perBunch: Object.fromEntries(own(prices.perBunch)),
            ...(packs.length > 0 ? { packs: Object.fromEntries(packs) } : {}),
          },
        }
      : {}),
    ...(note ? { note } : {}),
  })
}

const isThing = (x: unknown): x is Record<string, unknown> => typeof x === 'object' && x !== null && !Array.isArray(x)
const textOf = (x: unknown, most: number = LIMITS.text): string =>
  typeof x === 'string' ? [...x].slice(0, most).join('') : ''

const offerOf = (x: unknown): OfferedPalette | null => {
  if (paletteProblems(x).length > 0) return null
  const { name = '', slots = [] } = x as Partial<Palette>
  return {
    name,
    slots: slots.map((s: Slot & { name?: unknown }) => ({
      colour: s.colour,
      part: s.part ?? 'mass',
      ...(typeof s.name === 'string' && s.name ? { name: textOf(s.name, 80) } : {}),
    })),
  }
}

const looksLikePack = (x: unknown): boolean =>
  isThing(x) && Number.isSafeInteger(x.stems) && Number.isSafeInteger(x.minor)

const pricesOf = (x: unknown): Parcel['prices'] => {
  if (!isThing(x) || !/^[A-Z]{3}$/.test(String(x.currency)) || !isThing(x.perBunch)) return null
  const right = Object.entries(x.perBunch).filter(([, n]) => Number.isSafeInteger(n) && (n as number) >= 0)
  const packs = Object.entries(isThing(x.packs) ? x.packs : {}).filter(
    ([, all]) => Array.isArray(all) && all.every(looksLikePack),
  )
  return {
    currency: String(x.currency),
    perBunch: Object.fromEntries(right) as Record<string, number>,
    ...(packs.length > 0 ? { packs: Object.fromEntries(packs) as Record<string, Pack[]> } : {}),
  }
}

/**
 * A parcel from its text; the design in it is read as any file is. Where something of it is wrong, what is good is given
 * with the list of what was left out; refused in words where nothing is.
 */
export const readParcel = (text: string, known: Known): Got<{ parcel: Parcel; problems: Problem[] }> => {
  let raw: unknown
  try {
    raw = JSON.parse(text)
  } catch {
    raw = null
  }
  if (!isThing(raw)) return { ok: false, message: 'There is no design in it.' }
  const read = readArrangement(JSON.stringify(raw.design ?? null), known)
  if (read.kind === 'refused')
    return { ok: false, message: `The design in it can’t be read: ${problemLine(read.problems[0]!)}` }
  const design = read.kind === 'ok' ? read.document : read.good
  const offers = (Array.isArray(raw.offers) ? raw.offers.slice(0, MOST_OFFERS) : []).flatMap((o) => offerOf(o) ?? [])
  return {
    ok: true,
    value: {
      parcel: {
        design,
        offers: offers.length > 0 ? offers : [design.palette],
        units: UNITS.includes(String(raw.units)) ? (raw.units as Parcel['units']) : 'cm',
        prices: pricesOf(raw.prices),
        note: textOf(raw.note),
      },
      problems: read.kind === 'ok' ? [] : read.problems,
    },
  }
}
