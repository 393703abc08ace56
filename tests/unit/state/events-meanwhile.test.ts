import { afterEach, describe, expect, it, vi } from 'vitest'
import type { Stem } from '../../../src/arrangement/index.ts'
import { findPlant } from '../../../src/catalogue/index.ts'
import { writeEvent } from '../../../src/event/index.ts'
import { type OrderLine, swapsFor } from '../../../src/stem-list/index.ts'
import { browser, late, name, saveOf, supper, type Tab, tab, titleOf, titles } from './tabs.ts'

afterEach(() => vi.unstubAllGlobals())

const idOf = (page: Tab): string => page.useEvent.getState().event.id
const partsOf = (page: Tab): string[] => page.useEvent.getState().event.parts.map((p) => p.design)
const said = (page: Tab): string => page.useStudio.getState().message

/** A page with an event open and others beside it; the ids in the order of the titles. */
const withEvents = async (...all: string[]) => {
  const place = browser()
  const page = await tab(place)
  const ids: string[] = []
  for (const [i, title] of all.entries()) {
    if (i > 0) await page.beginEvent()
    name(page, title)
    await page.keepEvent()
    ids.push(idOf(page))
  }
  await page.openEvent(ids[0]!)
  await page.refreshEvents()
  return { place, page, ids }
}

describe('a design that is put in', () => {
  it('twice in a row, as by a double click, stands there once', async () => {
    const page = await tab(browser())
    const bowl = await page.design('Bowl')
    await Promise.all([page.addPart(bowl), page.addPart(bowl)])
    expect(partsOf(page)).toEqual([bowl])
  })

  it('is not put into the event that was opened meanwhile', async () => {
    const { page, ids } = await withEvents('Wedding', 'Market')
    const bowl = await page.design('Bowl')
    const come = late(page.store, 'load')
    const adding = page.addPart(bowl)
    await page.openEvent(ids[1]!)
    come()
    await adding
    expect([titleOf(page), partsOf(page)]).toEqual(['Market', []])
    expect(said(page)).toBe('Bowl was not put in: another event was opened.')
  })

  it('is seen also where the designs of the event were being looked up', async () => {
    const page = await tab(browser())
    const [bowl, cup] = [await page.design('Bowl'), await page.design('Cup')]
    await page.addPart(bowl)
    const come = late(page.store, 'load')
    const looking = page.fetchDesigns()
    await page.addPart(cup)
    come()
    await looking
    expect(Object.keys(page.useEvent.getState().designs).sort()).toEqual([bowl, cup].sort())
  })

  it('counts as it is on the sheet, though that is not written yet', async () => {
    const page = await tab(browser())
    await page.startKeeping()
    const bowl = await page.design('Bowl')
    await page.openKept(bowl)
    page.perform({ do: 'set-setting', set: { copies: 9 } })
    await page.addPart(bowl)
    expect(page.useEvent.getState().event.parts[0]?.copies).toBe(9)
  })
})

it('a design that is left for another is seen in the event as it was left', async () => {
  const page = await tab(browser())
  await page.startKeeping()
  const [bowl, cup] = [await page.design('Bowl'), await page.design('Cup')]
  await page.addPart(bowl)
  await page.openKept(bowl)
  page.perform({ do: 'set-title', title: 'Bowl by the door' })
  await page.openKept(cup, 'event')
  expect(page.useEvent.getState().designs[bowl]?.title).toBe('Bowl by the door')
})

describe('events that are asked for one after another', () => {
  it('the last is shown, also where the first is longer on its way', async () => {
    const { page, ids } = await withEvents('Wedding', 'Market', 'Supper')
    const come = late(page.saver.texts, 'load')
    const opening = page.openEvent(ids[1]!)
    await page.openEvent(ids[2]!)
    come()
    expect(await opening).toBe(false)
    expect([titleOf(page), said(page)]).toEqual(['Supper', 'Supper opened.'])
    name(page, 'Supper by the lake')
    await page.keepEvent()
    expect(await titles(page)).toEqual(['Market', 'Supper by the lake', 'Wedding'])
  })

  it('one that is asked for twice loses nothing that is changed in it', async () => {
    const { page, ids } = await withEvents('Wedding', 'Market')
    const come = late(page.saver.texts, 'load')
    const opening = page.openEvent(ids[1]!)
    await page.openEvent(ids[1]!)
    name(page, 'Winter market')
    await page.keepEvent()
    come()
    await opening
    expect([titleOf(page), saveOf(page)]).toEqual(['Winter market', 'saved'])
  })

  it('a new one, pressed for twice, is one', async () => {
    const page = await tab(browser())
    name(page, 'Wedding')
    await page.keepEvent()
    await Promise.all([page.beginEvent(), page.beginEvent()])
    expect(await titles(page)).toEqual(['', 'Wedding'])
  })

  it('one that is thrown away while it is on its way is not shown any more', async () => {
    const { page, ids } = await withEvents('Wedding', 'Market')
    const come = late(page.saver.texts, 'load')
    const opening = page.openEvent(ids[1]!)
    await page.throwEventAway(ids[1]!)
    come()
    await opening
    expect(titleOf(page)).toBe('Wedding')
    expect(await titles(page, true)).toEqual(['Market'])
  })

  it('from one that is thrown away the way leads on to the one that was asked for before', async () => {
    const { page, ids } = await withEvents('Wedding', 'Market', 'Supper', 'Tea')
    await Promise.all([page.openEvent(ids[1]!), page.throwEventAway(ids[0]!)])
    expect(titleOf(page)).toBe('Market')
    expect(await titles(page, true)).toEqual(['Wedding'])
  })

  it('and what was thrown away stays so where another is opened in the same breath', async () => {
    const { page, ids } = await withEvents('Wedding', 'Market', 'Supper')
    await Promise.all([page.throwEventAway(ids[0]!), page.openEvent(ids[1]!)])
    expect(titleOf(page)).toBe('Market')
    expect(await titles(page, true)).toEqual(['Wedding'])
  })
})

describe('the file of an event', () => {
  it('is not put into another event that was opened meanwhile', async () => {
    const { page, ids } = await withEvents('Wedding', 'Market')
    await page.openEventText('supper.json', writeEvent(supper()))
    await page.openEventText('supper.json', writeEvent(supper({ title: 'Late supper' })))
    expect(page.useEvent.getState().twin).not.toBeNull()
    const come = late(page.store, 'raw')
    const putting = page.putTwinInPlace()
    await page.openEvent(ids[1]!)
    come()
    await putting
    expect([titleOf(page), idOf(page)]).toEqual(['Market', ids[1]])
    await page.keepEvent()
    expect(await titles(page)).toEqual(['Market', 'Supper', 'Wedding'])
    expect(said(page)).toBe('Late supper is as it was: another event was opened.')
  })

  it('that has something wrong, agreed to twice, is one event', async () => {
    const page = await tab(browser())
    const text = writeEvent(supper()).replace('"copies": 12', '"copies": -12')
    await page.openEventText('supper.json', text)
    await Promise.all([page.agreeToOpenEvent(), page.agreeToOpenEvent()])
    name(page, 'Supper, mended')
    await page.keepEvent()
    expect(saveOf(page)).toBe('saved')
    expect(await titles(page)).toEqual(['Supper, mended'])
  })

  it('is held against the event as it is now, not as it was written last', async () => {
    const page = await tab(browser())
    await page.openEventText('supper.json', writeEvent(supper()))
    await page.openEventText('supper.json', writeEvent(supper({ title: 'Late supper' })))
    await page.putTwinInPlace()
    await page.keepEvent()
    page.undoEvent()
    await page.openEventText('supper.json', writeEvent(supper({ title: 'Late supper' })))
    expect(titleOf(page)).toBe('Supper')
    expect(page.useEvent.getState().twin?.file.title).toBe('Late supper')
  })

  it('gives way to an event that is asked for while its designs are being kept, and says so', async () => {
    const { page, ids } = await withEvents('Wedding', 'Market')
    const come = late(page.store, 'raw')
    const opening = page.openEventText('supper.json', writeEvent(supper()))
    await page.openEvent(ids[1]!)
    come()
    await opening
    expect(titleOf(page)).toBe('Market')
    expect(said(page)).toBe('Supper was not opened: another event was asked for.')
  })
})

describe('a swap', () => {
  const peony: Stem = {
    id: 's1',
    plant: 'peony',
    role: 'focal',
    colour: '#f5f0e6',
    openness: 0.8,
    mouth: [0, 0],
    tip: [0, 0, 200],
    bend: 0,
    piece: 'whole',
  }
  const offer = swapsFor(findPlant('peony')!, '#f5f0e6')[0]!
  /** Three designs, the first of them open; a peony in the two others. */
  const withPeonies = async () => {
    const page = await tab(browser())
    await page.startKeeping()
    const [jug, bowl, cup] = [
      await page.design('Jug'),
      await page.design('Bowl', [peony]),
      await page.design('Cup', [peony]),
    ]
    await page.openKept(jug, 'event')
    const { swapIn } = await import('../../../src/ui/event/swap/apply.ts')
    const places = [bowl, cup].map((design) => ({ design, stem: 's1' }))
    const swap = (design: string): Promise<string> =>
      swapIn(design, { plant: 'peony', places } as unknown as OrderLine, offer, 'swapped')
    const plantIn = async (design: string): Promise<string> => {
      await page.keepDesign()
      const there = await page.store.load(design)
      return there.ok ? there.document.stems[0]!.plant : there.why
    }
    return { page, jug, bowl, cup, swap, plantIn }
  }

  it('in one design and at once in another is done in both', async () => {
    const { page, bowl, cup, swap, plantIn } = await withPeonies()
    expect(await Promise.all([swap(bowl), swap(cup)])).toEqual(['swapped', 'swapped'])
    expect([await plantIn(bowl), await plantIn(cup)]).toEqual([offer.plant.id, offer.plant.id])
    expect(page.useStudio.getState().designId).toBe(cup)
  })

  it('pressed for twice is one step', async () => {
    const { page, bowl, swap } = await withPeonies()
    expect(await Promise.all([swap(bowl), swap(bowl)])).toEqual(['swapped', ''])
    page.undo()
    expect(page.useStudio.getState().document.stems[0]!.plant).toBe('peony')
  })

  it('changes nothing where another design was asked for meanwhile', async () => {
    const { page, bowl, cup, swap, plantIn } = await withPeonies()
    const swapping = swap(bowl)
    await Promise.resolve()
    await page.openKept(cup)
    expect(await swapping).toBe('')
    expect(page.useStudio.getState().designId).toBe(cup)
    expect([await plantIn(bowl), await plantIn(cup)]).toEqual(['peony', 'peony'])
  })
})
