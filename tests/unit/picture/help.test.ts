import { describe, expect, it } from 'vitest'
import type { Sprite } from '../../../src/drawing/index.ts'
import type { Painter } from '../../../src/state/index.ts'
import { helpWith } from '../../../src/ui/picture/help.ts'
import { design, stems } from './made.ts'

const document = design({ stems: stems(5, 2, 200, 200, 120) })
const LARGE = { document, angle: { turn: 0, pitch: 0 }, scale: 3, lane: 'sheet' }
/** At turn 0 the viewer stands where y is least. */
const nearest = [...document.stems].sort((a, b) => a.tip[1] - b.tip[1]).map((s) => s.id)

const helper = () => {
  const asked: string[] = []
  let answer: (sprites: Map<string, Sprite> | null) => void = () => {}
  const sprites: Painter['sprites'] = (_lane, _document, [id]) => {
    asked.push(id!)
    return new Promise((resolve) => {
      answer = resolve
    })
  }
  const done = async (): Promise<void> => {
    answer(new Map([[asked.at(-1)!, {} as Sprite]]))
    await new Promise((turn) => setTimeout(turn))
  }
  return { aside: { sprites } as Painter, asked, done }
}
const receiver = () => {
  const given: string[] = []
  return { given, painter: { give: ({ sprites }) => given.push(...sprites.keys()) } as Pick<Painter, 'give'> }
}
const turn = () => new Promise((done) => setTimeout(done))

describe('help with the large view of a sheet', () => {
  it('one who has done its own makes sprites from the nearest stem on, one after the other, and hands each over', async () => {
    const { given, painter } = receiver()
    const { aside, asked, done } = helper()
    let ready: (v?: unknown) => void = () => {}
    helpWith(painter, LARGE).joinAfter(aside, [new Promise((resolve) => (ready = resolve))])
    await turn()
    expect(asked).toEqual([])
    ready()
    await turn()
    expect(asked).toEqual(nearest.slice(0, 1))
    for (let i = 0; i < 5; i++) await done()
    expect(given).toEqual(nearest)
  })

  it('two helpers never make the same sprite', async () => {
    const { given, painter } = receiver()
    const [a, b] = [helper(), helper()]
    const help = helpWith(painter, LARGE)
    for (const { aside } of [a, b]) help.joinAfter(aside, [])
    await turn()
    for (let i = 0; i < 3; i++) for (const { done } of [a, b]) await done()
    expect([...a.asked, ...b.asked].sort()).toEqual([...nearest].sort())
    expect([...given].sort()).toEqual([...nearest].sort())
  })

  it('once the view is done nothing more is made or handed over', async () => {
    const { given, painter } = receiver()
    const { aside, asked, done } = helper()
    const help = helpWith(painter, LARGE)
    help.joinAfter(aside, [])
    await turn()
    help.end()
    await done()
    expect([asked.length, given.length]).toEqual([1, 0])
  })
})
