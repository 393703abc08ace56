/** A true minus sign, so that figures align. */
const signed = (text: string): string => text.replace('-', '−')

/**
 * A number for the screen: at most `digits` decimals, no trailing zeros unless `fixed`, true minus; '–' if not finite.
 */
export const formatNumber = (value: number, digits = 0, fixed = false): string => {
  if (!Number.isFinite(value)) return '–'
  const text = value.toFixed(digits)
  const short = fixed || digits === 0 ? text : text.replace(/\.?0+$/, '')
  return signed(Number(short) === 0 ? short.replace('-', '') : short)
}

/** Decimals that suit a scale: about three figures over its width. */
export const digitsFor = (scale: readonly [number, number]): number => {
  const width = Math.abs(scale[1] - scale[0])
  if (!(width > 0)) return 0
  return width > 30 ? 0 : width > 3 ? 1 : 2
}

/** What a person types: `12`, `−3,5`, ` 4.25 `; null where it is no number. */
export const parseNumber = (text: string): number | null => {
  const plain = text.trim().replace('−', '-').replace(',', '.')
  return /^[+-]?(\d+\.?\d*|\.\d+)$/.test(plain) ? Number(plain) : null
}
