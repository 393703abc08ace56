import { afterEach, describe, expect, it, vi } from 'vitest'
import { writeEvent } from '../../../src/event/index.ts'
import { databaseRecords } from '../../../src/storage/database.ts'
import { browser, name, supper, tab, titleOf, titles } from './tabs.ts'

afterEach(() => vi.unstubAllGlobals())

const count = (page: Awaited<ReturnType<typeof tab>>) => async (): Promise<number> => {
  await page.refreshKept()
  const { store } = await import('../../../src/state/kept-store.ts')
  const list = await store.list()
  return list.ok ? list.designs.length : -1
}

describe('the events of a browser', () => {
  it('a second event leaves the first where it was, and each is opened again as it was left', async () => {
    const page = await tab(browser())
    name(page, 'Wedding')
    await page.beginEvent()
    name(page, 'Market')
    await page.keepEvent()
    expect(await titles(page)).toEqual(['Market', 'Wedding'])
    const wedding = page.useEvent.getState().kept.find((e) => e.title === 'Wedding')!
    await page.openEvent(wedding.id)
    expect(titleOf(page)).toBe('Wedding')
    expect(await titles(page)).toEqual(['Market', 'Wedding'])
  })

  it('what was changed a moment before another is opened is kept', async () => {
    const page = await tab(browser())
    await page.beginEvent()
    const { id } = page.useEvent.getState().event
    await page.beginEvent()
    name(page, 'Just now')
    await page.openEvent(id)
    expect(titleOf(page)).toBe('')
    expect(await titles(page)).toContain('Just now')
  })

  it('the one that was open last is open after a reload', async () => {
    const place = browser()
    const page = await tab(place)
    name(page, 'First')
    await page.beginEvent()
    name(page, 'Second')
    await page.openEvent((await page.refreshEvents()).find((e) => e.title === 'First')!.id)
    page.leave()
    expect(titleOf(await tab(place))).toBe('First')
  })

  it('one that was thrown away is put back, also after a reload', async () => {
    const place = browser()
    const page = await tab(place)
    name(page, 'Wedding')
    await page.keepEvent()
    const { id } = page.useEvent.getState().event
    await page.throwEventAway(id)
    expect(titleOf(page)).toBe('')
    expect(await titles(page)).toEqual([])
    page.leave()
    const later = await tab(place)
    expect(await titles(later, true)).toEqual(['Wedding'])
    await later.putEventBack(id)
    expect(await titles(later)).toEqual(['Wedding'])
    await later.openEvent(id)
    expect(titleOf(later)).toBe('Wedding')
  })

  it('an untouched new event is not kept, so that looking leaves nothing behind', async () => {
    const place = browser()
    const page = await tab(place)
    page.leave()
    expect(await titles(await tab(place))).toEqual([])
  })

  it('what an older version kept is carried over once, however many pages are opened', async () => {
    const place = browser()
    const { designs: _, ...plan } = supper({ title: 'From before' })
    const old = databaseRecords('pedicel')
    const value = writeEvent({ ...plan, designs: {} })
    await old.transact('settings', 'readwrite', (table) => table.put('event', { revision: 7, value }))
    const [a, b] = [await tab(place, false), await tab(place, false)]
    await Promise.all([a.startEvent(), b.startEvent()])
    expect(titleOf(a)).toBe('From before')
    const again = await tab(place)
    expect(await titles(again)).toEqual(['From before'])
    expect(again.useEvent.getState().event.parts).toHaveLength(1)
    expect(again.useEvent.getState().event.id).not.toBe('')
  })

  it('the cost is shared by as many tables as there are pieces, until the person says how many there are', async () => {
    const page = await tab(browser())
    const [bowl, cup] = [await page.design('Bowl'), await page.design('Cup')]
    await page.addPart(bowl)
    await page.addPart(cup)
    const pieces = (): number => page.useEvent.getState().event.parts.reduce((n, p) => n + p.copies, 0)
    const tables = (): number => page.useEvent.getState().event.tables
    page.changePart(bowl, { copies: 12 }, 'twelve')
    expect(tables()).toBe(pieces())
    page.changePart(cup, { copies: 24 }, 'twenty-four')
    expect(tables()).toBe(pieces())
    page.changeEvent({ tables: 12 }, 'twelve tables')
    page.changePart(cup, { copies: 36 }, 'three on each')
    expect(tables()).toBe(12)
  })

  it('says which design is missing, by the name it had', async () => {
    const place = browser()
    const page = await tab(place)
    const id = await page.design('Bowl by the door')
    await page.addPart(id)
    await page.keepEvent()
    await page.removeKept(id)
    page.leave()
    const later = await tab(place)
    const { missing, event } = later.useEvent.getState()
    expect(missing).toEqual([id])
    expect(event.parts.find((p) => p.design === id)?.title).toBe('Bowl by the door')
    later.removePart(id, 'taken out')
    later.undoEvent()
    expect(later.useEvent.getState().event.parts.map((p) => p.design)).toContain(id)
  })

  it('an event of which something is wrong is opened as far as it is good, and kept as it was as well', async () => {
    const place = browser()
    const old = databaseRecords('pedicel')
    const { designs: _, ...plan } = supper({ title: 'Half right', tables: 12 })
    const text = writeEvent({ ...plan, hours: 'long' as unknown as number, designs: {} })
    const row = { text, revision: 3, savedAt: 1, writer: 'x' }
    await old.transact('settings', 'readwrite', (table) => table.put('event:half', row))
    const page = await tab(place)
    expect(page.useEvent.getState().event).toMatchObject({ title: 'Half right', tables: 12, hours: 8 })
    expect(page.useStudio.getState().message).toMatch(/^1 thing in it was wrong and has its usual value; as it was/)
    page.changeEvent({ tables: 14 }, '14 tables')
    await page.keepEvent()
    page.leave()
    const later = await tab(place)
    expect(later.useEvent.getState().event).toMatchObject({ tables: 14, hours: 8 })
    const aside = later.useEvent.getState().kept.filter((e) => e.thrown)
    expect(aside.map((e) => e.title)).toEqual(['Half right'])
    expect(await later.rawEvent(aside[0]!.id)).toBe(text)
  })

  it('an event that can’t be read is listed, left as it is, and handed out', async () => {
    const place = browser()
    const old = databaseRecords('pedicel')
    const row = { text: '{"format":"pedicel-event","version":9}', revision: 1, savedAt: 1, writer: 'x' }
    await old.transact('settings', 'readwrite', (table) => table.put('event:odd', row))
    const page = await tab(place)
    expect(page.useEvent.getState().kept).toMatchObject([{ id: 'odd', readable: false }])
    expect(await page.openEvent('odd')).toBe(false)
    expect(await page.rawEvent('odd')).toBe(row.text)
  })
})

describe('a file of an event', () => {
  it('becomes an event beside the kept ones', async () => {
    const page = await tab(browser())
    name(page, 'Mine')
    await page.openEventText('supper.json', writeEvent(supper()))
    expect(titleOf(page)).toBe('Supper')
    expect(page.useEvent.getState().event.id).toBe('supper')
    expect(await titles(page)).toEqual(['Mine', 'Supper'])
    expect(Object.values(page.useEvent.getState().designs).map((d) => d.title)).toEqual(['Bowl'])
  })

  it('opened twice leaves one event and one design', async () => {
    const page = await tab(browser())
    const text = writeEvent(supper())
    await page.openEventText('supper.json', text)
    await page.beginEvent()
    const designs = await count(page)()
    await page.openEventText('supper.json', text)
    expect(page.useEvent.getState().twin).toBeNull()
    expect(titleOf(page)).toBe('Supper')
    expect(page.useStudio.getState().message).toBe('Supper is kept in this browser as it is in supper.json.')
    expect(await count(page)()).toBe(designs)
    expect(await titles(page)).toEqual(['', 'Supper'])
  })

  it('as this browser saved it, opens as the kept one', async () => {
    const page = await tab(browser())
    const id = await page.design('Cup')
    await page.addPart(id)
    name(page, 'Mine')
    await page.keepEvent()
    const text = page.textOfEvent()
    await page.openEventText('mine.json', text)
    expect(page.useEvent.getState().twin).toBeNull()
    expect(await titles(page)).toEqual(['Mine'])
  })

  it('in another state than the kept one waits for a word: in its place is one step of undo', async () => {
    const page = await tab(browser())
    await page.openEventText('supper.json', writeEvent(supper()))
    await page.beginEvent()
    await page.openEventText('supper.json', writeEvent(supper({ title: 'Supper, later', tables: 9 })))
    expect(titleOf(page)).toBe('')
    expect(page.useEvent.getState().twin?.kept.title).toBe('Supper')
    await page.putTwinInPlace()
    expect(page.useEvent.getState().event).toMatchObject({ id: 'supper', title: 'Supper, later', tables: 9 })
    page.undoEvent()
    expect(page.useEvent.getState().event).toMatchObject({ id: 'supper', title: 'Supper', tables: 0 })
  })

  it('or stands beside it as a copy, its equal designs used again', async () => {
    const page = await tab(browser())
    await page.openEventText('supper.json', writeEvent(supper()))
    const designs = await count(page)()
    await page.openEventText('supper.json', writeEvent(supper({ title: 'Supper, later' })))
    await page.openTwinAsCopy()
    expect(page.useEvent.getState().event.id).not.toBe('supper')
    expect(await titles(page)).toEqual(['Supper', 'Supper, later (copy)'])
    expect(await count(page)()).toBe(designs)
  })

  it('without an id gets one, and two that are alike stand for two', async () => {
    const page = await tab(browser())
    const text = writeEvent(supper({ id: '' }))
    await page.openEventText('old.json', text)
    const first = page.useEvent.getState().event.id
    await page.openEventText('old.json', text)
    expect(new Set([first, page.useEvent.getState().event.id, '']).size).toBe(3)
    expect(await titles(page)).toEqual(['Supper', 'Supper'])
  })

  it('two designs in it that are equal stay two', async () => {
    const page = await tab(browser())
    const { bowl } = supper().designs
    const parts = ['a', 'b'].map((design) => ({ design, copies: 2, place: design }))
    await page.openEventText('two.json', writeEvent(supper({ parts, designs: { a: bowl!, b: bowl! } })))
    const keys = page.useEvent.getState().event.parts.map((p) => p.design)
    expect(new Set(keys).size).toBe(2)
  })
})
