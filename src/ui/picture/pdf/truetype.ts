/** What a PDF needs to know of a TrueType face; lengths in thousandths of the size. */
export interface TrueType {
  bytes: Uint8Array<ArrayBuffer>
  /** Number of the glyph of a letter, 0 if the face has none. */
  glyphOf: (codePoint: number) => number
  /** Advance of each glyph. */
  advances: number[]
  ascent: number
  descent: number
  box: [left: number, bottom: number, right: number, top: number]
}

/** Segments of a cmap of format 4 (OpenType 1.9, cmap). */
const glyphsOf = (view: DataView, at: number): ((codePoint: number) => number) => {
  const count = view.getUint16(at + 6) / 2
  const ends = at + 14
  const starts = ends + 2 * count + 2
  return (codePoint) => {
    if (codePoint > 0xffff) return 0
    for (let i = 0; i < count; i++) {
      if (codePoint > view.getUint16(ends + 2 * i)) continue
      const start = view.getUint16(starts + 2 * i)
      if (codePoint < start) return 0
      const delta = view.getUint16(starts + 2 * (count + i))
      const ranges = starts + 2 * (2 * count + i)
      const range = view.getUint16(ranges)
      if (range === 0) return (codePoint + delta) & 0xffff
      const glyph = view.getUint16(ranges + range + 2 * (codePoint - start))
      return glyph === 0 ? 0 : (glyph + delta) & 0xffff
    }
    return 0
  }
}

/**
 * Reads a TrueType file with a Unicode cmap of format 4 (OpenType 1.9: head, hhea, hmtx, cmap).
 * Throws an Error in words when it is not one.
 */
export const readTrueType = (bytes: Uint8Array<ArrayBuffer>): TrueType => {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength)
  if (bytes.length < 12 || view.getUint32(0) !== 0x00010000) throw new Error('a face of the letters is not TrueType')
  const tables = new Map<string, number>()
  for (let i = 0; i < view.getUint16(4); i++) {
    const at = 12 + 16 * i
    tables.set(String.fromCharCode(...bytes.subarray(at, at + 4)), view.getUint32(at + 8))
  }
  const table = (name: string): number => {
    const at = tables.get(name)
    if (at === undefined) throw new Error(`a face of the letters has no ${name}`)
    return at
  }
  const [head, hhea, hmtx, cmap] = ['head', 'hhea', 'hmtx', 'cmap'].map(table) as [number, number, number, number]
  const unit = 1000 / view.getUint16(head + 18)
  const metrics = view.getUint16(hhea + 34)
  const glyphs = view.getUint16(table('maxp') + 4)
  const advances = Array.from({ length: glyphs }, (_, i) => unit * view.getUint16(hmtx + 4 * Math.min(i, metrics - 1)))
  let glyphOf: TrueType['glyphOf'] | null = null
  for (let i = 0; i < view.getUint16(cmap + 2); i++) {
    const at = cmap + view.getUint32(cmap + 4 + 8 * i + 4)
    if (view.getUint16(at) === 4) glyphOf = glyphsOf(view, at)
  }
  if (!glyphOf) throw new Error('a face of the letters has no list of them')
  const signed = (at: number): number => Math.round(unit * view.getInt16(at))
  return {
    bytes,
    glyphOf,
    advances,
    ascent: signed(hhea + 4),
    descent: signed(hhea + 6),
    box: [signed(head + 36), signed(head + 38), signed(head + 40), signed(head + 42)],
  }
}
