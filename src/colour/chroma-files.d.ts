// chroma-js has types for its whole, not for its files.
declare module 'chroma-js/src/io/hex/hex2rgb.js' {
  /** #rrggbb to red, green, blue 0–255 and alpha. */
  export default function hex2rgb(hex: string): [number, number, number, number]
}
declare module 'chroma-js/src/io/hex/rgb2hex.js' {
  export default function rgb2hex(rgb: number[]): string
}
declare module 'chroma-js/src/io/oklch/oklch2rgb.js' {
  /** Red, green, blue 0–255, not clipped. */
  export default function oklch2rgb(l: number, c: number, h: number): number[]
}
declare module 'chroma-js/src/io/oklch/rgb2oklch.js' {
  /** Hue is NaN for greys. */
  export default function rgb2oklch(rgb: number[]): [number, number, number]
}
