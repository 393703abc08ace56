import type { Arrangement, Form, Role, Vessel } from '../arrangement/index.ts'
import type { Plant } from '../catalogue/index.ts'
import { vesselHalfWidth } from '../geometry/index.ts'

/** What a shape looks like to someone who doesn't know the trade's word for it. Ours. */
const FORM_WORDS: Record<Form, string> = {
  round: 'a round',
  low: 'a low, wide',
  airy: 'a loose, airy',
  vertical: 'a tall, upright',
  triangle: 'a three-sided',
  crescent: 'a curved',
  cascade: 'a falling',
}

/** From what leads to what fills: the order of the plants on the sheet. */
export const ROLE_ORDER: readonly Role[] = ['focal', 'form', 'mass', 'line', 'filler', 'greens']

/** A stalk counts as a foot when the vessel is so much slimmer there than at the rim and below it. Ours. */
const FOOT = 0.6

const hasFoot = (vessel: Vessel): boolean => {
  const wideAt = (h: number): number => vesselHalfWidth(vessel, h)
  const waist = Math.min(...[0.08, 0.12, 0.16, 0.2, 0.26, 0.32].map(wideAt))
  return waist < FOOT * wideAt(1) && waist < 0.85 * wideAt(0)
}

/** A plain noun for the vessel by its proportions: bowl, dish, vase, cup, trough. Ours. */
export const vesselWord = (vessel: Vessel): string => {
  const across = Math.min(vessel.width, vessel.depth)
  const along = Math.max(vessel.width, vessel.depth)
  if (vessel.plan !== 'round' && along > 2 * across && vessel.height < across * 1.6) return 'trough'
  if (vessel.height > 1.25 * across) return 'vase'
  if (vessel.height < 0.35 * across) return 'dish'
  if (hasFoot(vessel)) return 'footed bowl'
  if (along < 100) return 'cup'
  return vessel.plan === 'rectangular' && vessel.height > 0.8 * across ? 'box' : 'bowl'
}

/** `a loose, airy arrangement in a footed bowl, for each of 14 tables`. */
export const subtitle = ({ form, vessel, stems, setting }: Arrangement): string => {
  const what =
    stems.length === 0 ? `a ${vesselWord(vessel)}` : `${FORM_WORDS[form]} arrangement in a ${vesselWord(vessel)}`
  return setting.copies > 1 ? `${what}, for each of ${setting.copies} tables` : what
}

const WRITTEN = /^(\d{4})-(\d{2})-(\d{2})(?:T(\d{2}):(\d{2}))?/

/** The day as people write it, `9 October 2027`; the clock on the wall as in the document, whatever the zone. '' if none. */
export const dateWords = (iso: string | undefined, language: string): string => {
  const parts = WRITTEN.exec(iso ?? '')
  if (!parts) return ''
  const [year, month, day] = parts.slice(1, 4).map(Number) as [number, number, number]
  const date = new Date(0)
  date.setUTCFullYear(year, month - 1, day)
  return new Intl.DateTimeFormat(language, { dateStyle: 'long', timeZone: 'UTC' }).format(date)
}

/** `one`, `two` … `twelve`, then figures: common practice of print. */
export const counted = (n: number): string =>
  ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten', 'eleven', 'twelve'][n] ??
  String(n)

/** `a, b and c`. */
export const listed = (parts: readonly string[]): string =>
  parts.length < 2 ? (parts[0] ?? '') : `${parts.slice(0, -1).join(', ')} and ${parts.at(-1)}`

/** A plant's name without what stands in brackets after it. */
export const plainName = (name: string): string => name.replace(/\s*\([^)]*\)$/, '')

/**
 * The words for a colour: those of the palette, then of the plant's own colours, then the nearest of the general names.
 * @param named words of the palette on the sheet, by #rrggbb in lower case
 * @param general gives a name to any #rrggbb
 */
export const colourWords = (
  hex: string,
  plant: Plant | null,
  named: ReadonlyMap<string, string>,
  general: (hex: string) => string,
): string => {
  const key = hex.toLowerCase()
  return named.get(key) ?? plant?.colours.find((c) => c.hex.toLowerCase() === key)?.name ?? general(key)
}
