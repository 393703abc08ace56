import { describe, expect, it } from 'vitest'
import type { Arrangement } from '../../../src/arrangement/index.ts'
import { createPainter, type PaintPort } from '../../../src/state/painter.ts'

const fakePort = () => {
  const sent: { ticket: number; job: { kind: string } | null }[] = []
  const port: PaintPort = { postMessage: (m) => void sent.push(m), onmessage: null, onerror: null, terminate: () => {} }
  const answer = (ticket: number, value: unknown): void => port.onmessage?.({ data: { ticket, value } } as MessageEvent)
  return { sent, port, answer }
}
const document = { stems: [] } as unknown as Arrangement
const FRAME = { left: 0, right: 1, bottom: 0, top: 1, scale: 1 }
const paint = (painter: ReturnType<typeof createPainter>, lane: string) =>
  painter.paint(lane, document, { turn: 0, pitch: 0 }, FRAME, { quality: 'draft', section: false, vessel: 'grey' })

describe('asking for pictures', () => {
  it('the newest request of a lane wins and the one before gives nothing, even if its picture still comes', async () => {
    const { port, sent, answer } = fakePort()
    const painter = createPainter(port)
    const first = paint(painter, 'elevation')
    const second = paint(painter, 'elevation')
    expect(await first).toBeNull()
    expect(sent.map((m) => [m.ticket, m.job?.kind ?? null])).toEqual([
      [1, 'paint'],
      [1, null],
      [2, 'paint'],
    ])
    answer(1, { width: 1 })
    answer(2, { width: 2 })
    expect((await second)?.width).toBe(2)
  })

  it('lanes do not disturb each other', async () => {
    const { port, answer } = fakePort()
    const painter = createPainter(port)
    const [a, b] = [paint(painter, 'elevation'), paint(painter, 'plan')]
    answer(2, { width: 20 })
    answer(1, { width: 10 })
    expect((await a)?.width).toBe(10)
    expect((await b)?.width).toBe(20)
    expect((await b)?.document).toBe(document)
  })

  it('a plate is asked for once', async () => {
    const { port, sent, answer } = fakePort()
    const painter = createPainter(port)
    const both = [painter.plate('rose-garden', '#aa3344', 0.8, 1), painter.plate('rose-garden', '#aa3344', 0.8, 1)]
    answer(1, { width: 3 })
    expect((await both[0])?.width).toBe(3)
    expect(both[0]).toBe(both[1])
    expect(sent).toHaveLength(1)
  })

  it('a failure is told to the one who asked', async () => {
    const { port } = fakePort()
    const painter = createPainter(port)
    const plate = painter.plate('no-such', '#aa3344', 0.8, 1)
    port.onmessage?.({ data: { ticket: 1, error: 'no plant is listed as "no-such"' } } as MessageEvent)
    await expect(plate).rejects.toThrow('no-such')
  })
})
