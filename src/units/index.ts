/** How lengths are shown and typed; inside the house they are always mm. */
export type Units = 'in' | 'cm' | 'mm'

/** Exactly: International Yard and Pound Agreement, 1959. */
export const MM_PER_INCH = 25.4

/** mm in ten of the unit: whole numbers, so that nothing is lost on the way. */
const TENTHS: Record<Units, number> = { mm: 10, cm: 100, in: 254 }

/** A length in mm as a number of units, not rounded. */
export const toUnit = (mm: number, units: Units): number => (mm * 10) / TENTHS[units]

/** A number of units as mm, not rounded. */
export const fromUnit = (amount: number, units: Units): number => (amount * TENTHS[units]) / 10

const EIGHTHS = ['', '1/8', '1/4', '3/8', '1/2', '5/8', '3/4', '7/8'] as const

const amountOf = (mm: number, units: Units): string => {
  if (units === 'mm') return String(Math.round(mm))
  if (units === 'cm') return (Math.round(mm) / 10).toFixed(1)
  const eighths = Math.round(toUnit(mm, 'in') * 8)
  const whole = Math.floor(eighths / 8)
  const part = EIGHTHS[eighths % 8] as string
  return part === '' ? String(whole) : whole === 0 ? part : `${whole} ${part}`
}

/**
 * A length in mm for the screen, rounded for showing only: to 1 mm, 0.1 cm or 1/8 in. `114.3` in inches is `4 1/2 in`.
 * Below zero it starts with a minus sign (−). What is no finite number is a dash.
 */
export const formatLength = (mm: number, units: Units): string => {
  if (!Number.isFinite(mm)) return '–'
  const amount = amountOf(Math.abs(mm), units)
  return `${mm < 0 && /[1-9]/.test(amount) ? '−' : ''}${amount} ${units}`
}

const VULGAR: Record<string, string> = {
  '½': '1/2',
  '¼': '1/4',
  '¾': '3/4',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
}
const LENGTH =
  /^([-−+]?)\s*(?:(\d*[.,]?\d+|\d+[.,])|(?:(\d+)(?:\s+|-))?(\d+)\s*\/\s*(\d+))\s*(mm|cm|inches|inch|in|"|″)?\.?$/

/**
 * Reads a length as people type it: `120`, `12.5 cm`, `12,5 cm`, `4 1/2`, `4½"`, `-3/8 in`. A unit in the text goes before
 * `units`. Exact, not rounded. Gives mm, or null where it can't be understood; `1,200` is refused, for it may mean two things.
 */
export const parseLength = (text: string, units: Units): number | null => {
  const plain = text
    .trim()
    .toLowerCase()
    .replace(/[½¼¾⅛⅜⅝⅞]/g, (sign) => ` ${VULGAR[sign]}`)
    .trim()
    .replace(/^([-−+])\s+/, '$1')
  const found = LENGTH.exec(plain)
  if (!found || /,\d{3}(?!\d)/.test(plain)) return null
  const [, sign, decimal, whole = '0', above, below, unit] = found
  const said: Units = unit === undefined ? units : unit === 'mm' || unit === 'cm' ? unit : 'in'
  const under = Number(below ?? 1)
  const over = decimal !== undefined ? Number(decimal.replace(',', '.')) : Number(whole) * under + Number(above)
  const mm = (over * TENTHS[said]) / (10 * under)
  if (!Number.isFinite(mm)) return null
  return sign === '' || sign === '+' || mm === 0 ? mm : -mm
}
