import { invert, type Matrix3, type Triple } from './matrix.ts'

/** Red, green and blue in linear light, 0–1 inside sRGB. */
export type Linear = Triple

/** Linear sRGB to XYZ, Y of white = 1. From the primaries and white of IEC 61966-2-1; the figures of CSS Color 4. */
export const LINEAR_TO_XYZ: Matrix3 = [
  0.4123907992659593, 0.357584339383878, 0.1804807884018343, 0.21263900587151024, 0.715168678767756,
  0.07219231536073371, 0.01933081871559182, 0.11919477979462598, 0.9505321522496607,
]
export const XYZ_TO_LINEAR: Matrix3 = invert(LINEAR_TO_XYZ)

/** Is this a colour as the document writes it, #rrggbb? */
export const isHex = (text: unknown): text is string => typeof text === 'string' && /^#[0-9a-f]{6}$/i.test(text)

/** One sRGB channel 0–1 to linear light. IEC 61966-2-1. */
export const decode = (c: number): number => (c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4)

/** One channel of linear light to sRGB, clipped to 0–1. IEC 61966-2-1. */
export const encode = (l: number): number => {
  if (!(l > 0)) return 0
  return l >= 1 ? 1 : l <= 0.0031308 ? l * 12.92 : 1.055 * l ** (1 / 2.4) - 0.055
}

const DECODED = Float64Array.from({ length: 256 }, (_, i) => decode(i / 255))

/** One sRGB byte to linear light, from a table: for pixel by pixel. */
export const srgb8ToLinear = (byte: number): number => DECODED[byte] as number

/** #rrggbb to linear light, each 0–1. Throws a RangeError for anything else. */
export const linearOf = (hex: string): Linear => {
  if (!isHex(hex)) throw new RangeError(`expected a colour as #rrggbb, got "${hex}"`)
  const n = Number.parseInt(hex.slice(1), 16)
  return [DECODED[n >> 16] as number, DECODED[(n >> 8) & 255] as number, DECODED[n & 255] as number]
}

const byteHex = (l: number): string =>
  Math.round(encode(l) * 255)
    .toString(16)
    .padStart(2, '0')

/** Linear light to #rrggbb; what lies outside sRGB is clipped channel by channel. */
export const hexOfLinear = ([r, g, b]: Readonly<Linear>): string => `#${byteHex(r)}${byteHex(g)}${byteHex(b)}`

const STEPS = 16384
const ENCODED = Uint8Array.from({ length: STEPS + 1 }, (_, i) => Math.round(encode(i / STEPS) * 255))

/**
 * One channel of linear light to an sRGB byte, from a table: for shading pixel by pixel. Clips; NaN gives 0.
 * The table's step is at most a fifth of a byte (at black), so the byte is the exact one or its neighbour.
 */
export const linearToSrgb8 = (l: number): number =>
  l > 0 ? (l < 1 ? (ENCODED[(l * STEPS + 0.5) | 0] as number) : 255) : 0
