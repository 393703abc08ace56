import type { OwnBands, Vessel } from './types.ts'

/**
 * The limits at the door: what a document may hold. The reader refuses what is outside them, an edit clamps to them.
 * All are ours: far above what one arrangement needs, low enough that no file can bring a phone to its knees.
 */
export const LIMITS = {
  /** Bytes of UTF-8. */
  file_bytes: 2_000_000,
  /** Braces and brackets inside one another; the document itself is the first. */
  nesting: 32,
  stems: 2000,
  /** Characters (code points) of any text. */
  text: 500,
  /** Any length or coordinate, either way from zero. */
  mm: 5000,
  /** A size pulled to nothing or less by an edit becomes this, mm. */
  size_mm: 1,
  /** Half-width of a profile, as a fraction of the mouth's. */
  halfWidth: 5,
  profilePoints: 100,
  slots: 64,
  copies: 10_000,
  /** An end of a person's own band, either way from zero. */
  band: 100_000,
  /** Problems listed of one file. */
  problems: 200,
} as const

/** Ends of a person's own band: within the range, not falling; one of them may be open (null), not both. */
export const isBand = (
  x: unknown,
  [low, high]: readonly [number, number] = [-LIMITS.band, LIMITS.band],
): x is OwnBands[string] => {
  if (!Array.isArray(x) || x.length !== 2 || (x[0] === null && x[1] === null)) return false
  if (x.some((end) => end !== null && !(typeof end === 'number' && end >= low && end <= high))) return false
  return x[0] === null || x[1] === null || x[0] <= x[1]
}

/** #rrggbb */
export const COLOUR = /^#[0-9a-f]{6}$/i

const DATE =
  /^(\d{4})-(\d{2})-(\d{2})(?:T(\d{2}):(\d{2})(?::(\d{2})(?:[.,]\d{1,9})?)?(?:Z|[+-](\d{2})(?::?(\d{2}))?)?)?$/

/** Is it an ISO 8601 calendar date (extended form) that exists, with or without a time and a zone? */
export const isDate = (text: string): boolean => {
  const parts = DATE.exec(text)
  if (!parts) return false
  const [year, month, day, hour, minute, second, zoneHour, zoneMinute] = parts.slice(1).map((p) => Number(p ?? 0))
  const leap = year! % 4 === 0 && (year! % 100 !== 0 || year! % 400 === 0)
  const days = [31, leap ? 29 : 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31][month! - 1] ?? 0
  const clock = hour! < 24 && minute! < 60 && second! < 60 && zoneHour! < 24 && zoneMinute! < 60
  return day! >= 1 && day! <= days && clock
}

/** Half-width of the profile at a height, both as in the document; straight between points, level beyond them. */
const halfWidthAt = (profile: Vessel['profile'], height: number): number => {
  if (!profile?.length) return 1
  const above = profile.findIndex(([h]) => h >= height)
  if (above <= 0) return above === 0 ? profile[0]![1] : profile.at(-1)![1]
  const [h0, w0] = profile[above - 1]!
  const [h1, w1] = profile[above]!
  return w0 + ((w1 - w0) * (height - h0)) / (h1 - h0)
}

/**
 * The least inner size of a vessel, mm: across its narrowest place above the base (which is as thick as the wall), and
 * its inner height. Not above zero when the walls meet.
 */
export const leastInside = ({ width, depth, height, wall, profile }: Omit<Vessel, 'plan'>): number => {
  const base = wall / height
  const waist = Math.min(
    1,
    halfWidthAt(profile, base),
    ...(profile ?? []).filter(([h]) => h >= base).map(([, halfWidth]) => halfWidth),
  )
  return Math.min(Math.min(width, depth) * waist - 2 * wall, height - wall)
}

/** A wall has to be under half of the least inner size. */
export const wallFits = (vessel: Omit<Vessel, 'plan'>): boolean => vessel.wall < leastInside(vessel) / 2

/** The wall asked for, or the thickest that fits below it, mm; null if not even a hair would fit. */
export const fitWall = (vessel: Omit<Vessel, 'plan'>): number | null => {
  for (let wall = vessel.wall, tries = 0; tries < 200; tries += 1, wall *= 0.9)
    if (wallFits({ ...vessel, wall })) return wall
  return null
}

/** The first characters of a text, never half of one. */
export const shorten = (text: string, characters: number): string =>
  text.length <= characters ? text : [...text].slice(0, characters).join('')
