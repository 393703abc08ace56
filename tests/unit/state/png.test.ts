import { describe, expect, it } from 'vitest'
import { createPngMaker, type PngPort } from '../../../src/state/png.ts'
import type { PngRequest } from '../../../src/state/png.worker.ts'

const port = () => {
  const asked: PngRequest[] = []
  const made: PngPort = {
    postMessage: (message) => asked.push(message),
    onmessage: null,
    onerror: null,
  }
  return { asked, made, answer: (data: unknown) => made.onmessage?.({ data } as never) }
}
const bitmap = {} as ImageBitmap

describe('PNGs made beside the page', () => {
  it('two that are under way each get their own file, whichever is there first', async () => {
    const { asked, made, answer } = port()
    const maker = createPngMaker(made)
    const [sheet, small] = [maker.make(bitmap), maker.make(bitmap)]
    const [a, b] = [new Blob(['sheet']), new Blob(['small'])]
    answer({ ticket: asked[1]?.ticket, blob: b })
    answer({ ticket: asked[0]?.ticket, blob: a })
    expect(await Promise.all([sheet, small])).toEqual([a, b])
  })

  it('where the worker has no canvas, or does not come up, the page is told and makes it itself', async () => {
    const { asked, made, answer } = port()
    const maker = createPngMaker(made)
    const first = maker.make(bitmap)
    answer({ ticket: asked[0]?.ticket, blob: null })
    expect(await first).toBeNull()
    const second = maker.make(bitmap)
    made.onerror?.({} as ErrorEvent)
    expect(await second).toBeNull()
    expect(await maker.make(bitmap)).toBeNull()
  })
})
