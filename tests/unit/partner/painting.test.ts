import { describe, expect, it } from 'vitest'
import { applyEdit, newArrangement } from '../../../src/arrangement/index.ts'
import { fittingFrame } from '../../../src/drawing/index.ts'
import { answerAsks } from '../../../src/partner/painting.ts'
import type { Ask, Level, Reply } from '../../../src/partner/protocol.ts'
import { bowl } from '../arrangement/helpers.ts'

const dressed = applyEdit(bowl(), {
  do: 'set-palette',
  palette: {
    name: 'Blue',
    slots: [
      { colour: '#2233cc', part: 'focal' },
      { colour: '#223311', part: 'greens' },
    ],
  },
})

/** The painter behind a port, as in a page without workers. */
const painter = () => {
  const { port1, port2 } = new MessageChannel()
  answerAsks(port2 as unknown as Parameters<typeof answerAsks>[0])
  const waiting = new Map<number, (reply: Reply) => void>()
  port1.onmessage = ({ data }: MessageEvent<Reply>) => waiting.get(data.ticket)?.(data)
  const send = (ask: Ask): void => port1.postMessage(ask)
  let last = 0
  return {
    send,
    close: () => port1.close(),
    paint: (which: number, turn: number, level: Level, light: 'daylight' | 'candle' = 'daylight') =>
      new Promise<Reply>((resolve) => {
        last += 1
        waiting.set(last, resolve)
        send({ kind: 'paint', ticket: last, view: { which, turn, light }, size: { width: 90, height: 80 }, level })
      }),
  }
}
const painted = (reply: Reply) => {
  if (!('painted' in reply)) throw new Error(JSON.stringify(reply))
  return reply.painted
}
/** Mean of what is painted at all: red, green, blue. */
const mean = ({ rgba }: { rgba: Uint8ClampedArray }): number[] => {
  const sum = [0, 0, 0]
  let n = 0
  for (let i = 0; i < rgba.length; i += 4)
    if (rgba[i + 3]! > 128) {
      n += 1
      for (let k = 0; k < 3; k++) sum[k]! += rgba[i + k]!
    }
  expect(n).toBeGreaterThan(300)
  return sum.map((s) => s / n)
}

describe('the painter of the partner’s page', () => {
  it('paints masses, a quick look and the flowers, at the same place from every side', async () => {
    const p = painter()
    p.send({ kind: 'designs', documents: [bowl(), dressed] })
    const sketch = painted(await p.paint(0, 0, 'sketch'))
    expect([sketch.width, sketch.height]).toEqual([90, 80])
    const front = painted(await p.paint(0, 0, 'draft'))
    const side = painted(await p.paint(0, 90, 'fine'))
    const blue = painted(await p.paint(1, 202.5, 'draft'))
    expect(side.frame).toEqual(front.frame)
    expect(blue.frame).toEqual(front.frame)
    expect(front.frame.left).toBeCloseTo(-front.frame.right, 9)
    expect(mean(side)).not.toEqual(mean(front))
    p.close()
  })
  it('recolours with the palette, and warms with the light', async () => {
    const p = painter()
    p.send({ kind: 'designs', documents: [bowl(), dressed] })
    const [rose, blue, warm] = [
      mean(painted(await p.paint(0, 0, 'draft'))),
      mean(painted(await p.paint(1, 0, 'draft'))),
      mean(painted(await p.paint(0, 0, 'draft', 'candle'))),
    ]
    expect(blue[0]! / blue[2]!).toBeLessThan(rose[0]! / rose[2]!)
    expect(warm[0]! / warm[2]!).toBeGreaterThan(rose[0]! / rose[2]!)
    p.close()
  })
  it('says so when there is no such palette, and paints on', async () => {
    const p = painter()
    p.send({ kind: 'designs', documents: [newArrangement()] })
    expect(await p.paint(3, 0, 'draft')).toEqual({ ticket: 1, failed: 'there is no palette 4' })
    expect(painted(await p.paint(0, 0, 'draft')).width).toBe(90)
    p.close()
  })
  it('an arrangement fits into any room, with paper all round', () => {
    const box = { left: -100, right: 100, bottom: -50, top: 150 }
    for (const size of [
      { width: 390, height: 300 },
      { width: 300, height: 900 },
    ]) {
      const frame = fittingFrame(box, size, 0.03)
      expect(frame.left).toBeLessThan(box.left)
      expect(frame.top).toBeGreaterThan(box.top)
      expect(frame.bottom).toBeLessThan(box.bottom)
      expect((frame.right - frame.left) * frame.scale).toBeCloseTo(size.width, 6)
      expect((frame.top - frame.bottom) * frame.scale).toBeCloseTo(size.height, 6)
    }
  })
})
