/** Building blocks of a PDF file (ISO 32000-1:2008; numbers in brackets are its sections). */

const encoder = new TextEncoder()

/** An object's own text, or its dictionary without `<< >>` and `Length` with the bytes of its stream. */
export interface Stream {
  dictionary: string
  bytes: Uint8Array<ArrayBuffer>
}
export type Body = string | Stream

/** A list of numbered objects to be filled; `reserve` gives a number before its object is known. */
export interface Objects {
  reserve: () => number
  put: (number: number, body: Body) => void
  add: (body: Body) => number
  file: (root: number, info: number) => Blob
}

export const createObjects = (): Objects => {
  const bodies: (Body | null)[] = []
  const reserve = (): number => bodies.push(null)
  const put = (number: number, body: Body): void => {
    bodies[number - 1] = body
  }
  return {
    reserve,
    put,
    add: (body) => {
      const number = reserve()
      put(number, body)
      return number
    },
    /** Header, objects, cross-reference table and trailer (7.5). */
    file: (root, info) => {
      const parts: (Uint8Array<ArrayBuffer> | string)[] = []
      const places: number[] = []
      let length = 0
      const write = (part: Uint8Array<ArrayBuffer> | string): void => {
        parts.push(part)
        length += typeof part === 'string' ? encoder.encode(part).length : part.length
      }
      // Four bytes over 127, so that nobody takes the file for text (7.5.2).
      write('%PDF-1.7\n')
      write(new Uint8Array([0x25, 0xe2, 0xe3, 0xcf, 0xd3, 0x0a]))
      bodies.forEach((body, i) => {
        places.push(length)
        if (body === null) throw new Error('a part of the file was left out')
        if (typeof body === 'string') write(`${i + 1} 0 obj\n${body}\nendobj\n`)
        else {
          write(`${i + 1} 0 obj\n<< ${body.dictionary} /Length ${body.bytes.length} >>\nstream\n`)
          write(body.bytes)
          write('\nendstream\nendobj\n')
        }
      })
      const start = length
      const rows = places.map((at) => `${String(at).padStart(10, '0')} 00000 n \n`).join('')
      const trailer = `<< /Size ${bodies.length + 1} /Root ${root} 0 R /Info ${info} 0 R >>`
      write(
        `xref\n0 ${bodies.length + 1}\n0000000000 65535 f \n${rows}trailer\n${trailer}\nstartxref\n${start}\n%%EOF\n`,
      )
      return new Blob(parts, { type: 'application/pdf' })
    },
  }
}

/** A text string in UTF-16 with its mark (7.9.2.2). */
export const textString = (text: string): string => {
  let hex = 'FEFF'
  for (let i = 0; i < text.length; i++) hex += text.charCodeAt(i).toString(16).padStart(4, '0')
  return `<${hex}>`
}

/** A number as PDF writes it: no exponent, no needless digits. */
export const num = (value: number): string => String(Math.round(value * 1000) / 1000 + 0)

/** #rrggbb as the three numbers of DeviceRGB. */
export const rgb = (hex: string): string =>
  [1, 3, 5].map((k) => num(Number.parseInt(hex.slice(k, k + 2), 16) / 255)).join(' ')

/** Packed by the deflate of zlib, as FlateDecode wants it (7.4.4), by what the browser itself has. */
export const packed = async (bytes: Uint8Array<ArrayBuffer>): Promise<Uint8Array<ArrayBuffer>> => {
  const stream = new Blob([bytes]).stream().pipeThrough(new CompressionStream('deflate'))
  return new Uint8Array(await new Response(stream).arrayBuffer())
}

/** A stream that is packed. */
export const packedStream = async (dictionary: string, bytes: Uint8Array<ArrayBuffer>): Promise<Stream> => ({
  dictionary: `${dictionary} /Filter /FlateDecode`.trim(),
  bytes: await packed(bytes),
})
