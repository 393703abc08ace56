import { beforeAll, describe, expect, it } from 'vitest'
import type { Ask, Port, Reply } from '../../../src/partner/protocol.ts'
import { createTurntable, type Seen } from '../../../src/partner/turntable.ts'
import { bowl } from '../arrangement/helpers.ts'

type Paint = Extract<Ask, { kind: 'paint' }>

/** As much of it as the page uses; Node has none. */
class Pixels {
  constructor(
    readonly data: Uint8ClampedArray,
    readonly width: number,
    readonly height: number,
  ) {}
}
beforeAll(() => {
  globalThis.ImageData ??= Pixels as unknown as typeof ImageData
})

/** A page whose painter answers when told to. */
const page = ({ width = 360, height = 290, palettes = 1 } = {}) => {
  const asked: Paint[] = []
  const dropped: number[] = []
  const seen: Seen[] = []
  const failed: string[] = []
  const port: Port<Ask, Reply> = {
    postMessage: (ask) => {
      if (ask.kind === 'paint') asked.push(ask)
      if (ask.kind === 'drop') dropped.push(ask.ticket)
    },
    onmessage: null,
  }
  const table = createTurntable(
    () => port,
    Array.from({ length: palettes }, bowl),
    (s) => seen.push(s),
    (why) => failed.push(why),
  )
  table.resize(width, height, 2)
  const reply = (data: Reply): void => port.onmessage?.({ data } as MessageEvent<Reply>)
  const answer = (ask = asked.at(-1)!): void => {
    const rgba = new Uint8ClampedArray(ask.size.width * ask.size.height * 4)
    const frame = { left: -1, right: 1, bottom: -1, top: 1, scale: 1 }
    reply({ ticket: ask.ticket, painted: { ...ask.size, rgba, frame } })
  }
  /** Answers until nothing more is asked for. */
  const rest = (): void => {
    for (let before = -1; before !== asked.length; ) {
      before = asked.length
      expect(before, 'it paints over and over').toBeLessThan(90)
      answer()
    }
  }
  return { table, asked, dropped, seen, failed, answer, reply, rest }
}
const at = (turn: number, which = 0) => ({ which, turn, light: 'daylight' }) as const

describe('the turntable of the partner’s page', () => {
  it('once it has rested, flowers are shown at once wherever a finger turns it', () => {
    const p = page()
    p.table.show(at(0), false)
    p.rest()
    for (let turn = 0; turn < 360; turn += 7.5) {
      const before = p.seen.length
      p.table.show(at(turn), true)
      expect(p.seen.length, `${turn}`).toBe(turn === 0 ? before : before + 1)
      expect(p.seen.at(-1)).toMatchObject({ view: { turn } })
      expect(p.seen.at(-1)!.level).not.toBe('sketch')
    }
  })
  it('a finger that comes sooner sees the nearest flowers, and the ones it points at as soon as they are painted', () => {
    const p = page()
    p.table.show(at(0), false)
    while (p.asked.at(-1)!.view.turn === 0) p.answer()
    p.table.show(at(7.5), true)
    expect(p.seen.at(-1)).toMatchObject({ view: { turn: 0 }, level: 'fine' })
    p.answer()
    p.answer()
    expect(p.seen.at(-1)).toMatchObject({ view: { turn: 7.5 }, level: 'glance' })
  })
  it('a glance that was begun is finished however the finger runs; the flowers in full are not', () => {
    const p = page()
    p.table.show(at(0), false)
    while (p.asked.at(-1)!.level !== 'fine') p.answer()
    const fine = p.asked.at(-1)!.ticket
    p.table.show(at(90), true)
    expect(p.dropped).toEqual([fine])
    const glance = p.asked.at(-1)!
    expect(glance).toMatchObject({ level: 'glance', view: { turn: 90 } })
    for (const turn of [97.5, 105, 112.5]) p.table.show(at(turn), true)
    expect(p.asked.at(-1)).toBe(glance)
    p.answer()
    expect(p.asked.at(-1)).toMatchObject({ level: 'glance', view: { turn: 112.5 } })
  })
  it('another palette was glanced at beforehand and is there at once', () => {
    const p = page({ palettes: 3 })
    p.table.show(at(0), false)
    p.rest()
    p.table.show(at(0, 2), false)
    expect(p.seen.at(-1)).toMatchObject({ view: { which: 2, turn: 0 }, level: 'glance' })
  })
  it.each([
    [360, 290],
    [390, 472],
    [1200, 900],
    [3000, 2000],
  ])(
    'on %i × %i points a glance from every side fits into 22 MB, and the painting comes to an end',
    (width, height) => {
      const p = page({ width, height })
      p.table.show(at(0), false)
      p.rest()
      const glances = p.asked.filter((a) => a.level === 'glance')
      const bytes = glances.map(({ size }) => size.width * size.height * 4)
      expect(Math.max(...bytes) * 48).toBeLessThan(22 * 1024 * 1024)
      expect(glances.length).toBeGreaterThanOrEqual(47)
    },
  )
  it('says why nothing can be painted', () => {
    const p = page()
    p.table.show(at(0), false)
    p.reply({ ticket: p.asked.at(-1)!.ticket, failed: 'no memory is left' })
    expect(p.failed).toEqual(['no memory is left'])
  })
})
