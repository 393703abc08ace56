import { cite } from './sources.ts'
import type { Plant } from './types.ts'

type Row = Plant['care'][number]
/** Least, most, codes of sources. */
type Span = [number, number, string]

/** What is known of looking after it; what is missing is not known. Hours, days, °C. */
export interface CareRow {
  /** Hours in water before use. */
  cond?: Span
  /** Days from delivery until it is open enough; missing: it is bought as it is wanted. */
  opens?: Span
  cool?: Span
  /** Days it keeps in the cool. */
  keep?: Span
  vase?: Span
  /** Days before the event to have it in hand. */
  hand?: Span
  /** Days before the event that it may go into the finished piece. */
  early?: Span
  ethylene?: [string, string]
}

const span = (s: Span, unit: string): string => (s[0] === s[1] ? `${s[0]} ${unit}` : `${s[0]}–${s[1]} ${unit}`)
const row = (label: string, s: Span | undefined, say: (s: Span) => string): Row =>
  s
    ? { label, text: say(s), ...cite(s[2]) }
    : { label, text: 'not known', standing: 'not known', source: 'no figure was found' }

const ETHYLENE: Record<string, string> = {
  none: 'not touched by it',
  low: 'little touched by it',
  moderate: 'touched by it: keep from fruit and fumes',
  high: 'very quickly touched by it: keep from fruit, fumes and fading flowers',
}

/** Rows for the screen, in the order of the work. Greens do not open. */
export function careOf(care: CareRow, note: string | undefined, greens: boolean): Row[] {
  const rows: Row[] = [
    row('Stand in water before use', care.cond, (s) => span(s, 'hours')),
    row('Have it in hand', care.hand, (s) => `${span(s, 'days')} before`),
  ]
  if (care.opens) rows.push(row('Opens', care.opens, (s) => `within ${span(s, 'days')}`))
  else if (!greens) rows.push({ label: 'Opens', text: 'little: buy it as open as you want it', ...cite('M') })
  rows.push(
    row('Store at', care.cool, (s) => span(s, '°C')),
    row('Keeps in store', care.keep, (s) => span(s, 'days')),
    row('May be arranged', care.early, (s) => (s[1] === 0 ? 'on the day itself' : `${span(s, 'days')} before`)),
    row('Lasts in the vase', care.vase, (s) => span(s, 'days')),
  )
  const [level, codes] = care.ethylene ?? ['not known', '?']
  rows.push({ label: 'Ethylene', text: ETHYLENE[level] ?? 'not known', ...cite(codes) })
  if (note) rows.push({ label: 'Worth knowing', text: note, ...cite('C') })
  return rows
}
