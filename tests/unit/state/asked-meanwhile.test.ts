import { afterEach, describe, expect, it, vi } from 'vitest'
import { newArrangement } from '../../../src/arrangement/index.ts'
import { browser, designTitles, keptTitle, late, rename, shown, type Tab, tab, withTwo } from './tabs.ts'

afterEach(() => vi.unstubAllGlobals())

const saveOf = (page: Tab): string => page.useStudio.getState().save.state
const palettesOf = async (page: Tab): Promise<string[]> => {
  const all = await page.store.setting('palettes')
  return all.ok ? (all.value as { name: string }[]).map((p) => p.name).sort() : []
}
const paletteNamed = (name: string) => ({
  name,
  about: 'A test.',
  own: true,
  slots: [{ colour: '#aa2244', part: 'focal' as const }],
})

describe('a design that is asked for again', () => {
  it('twice in a row, as by a double click, is open and may be written', async () => {
    const { page, cup } = await withTwo()
    await Promise.all([page.openKept(cup), page.openKept(cup)])
    expect([shown(page), saveOf(page)]).toEqual(['Cup', 'saved'])
    rename(page, 'Cup of roses')
    expect(await page.keepDesign()).toBe(true)
    expect(await keptTitle(page, cup)).toBe('Cup of roses')
  })

  it('the moment after it was left is not taken for one of another tab', async () => {
    const { place, page, bowl, cup } = await withTwo()
    for (const id of [cup, bowl, cup, bowl]) {
      await page.openKept(id)
      expect(saveOf(page)).toBe('saved')
    }
    await vi.waitFor(() => expect([...place.claims.keys()]).toEqual([`pedicel-design-${bowl}`]))
  })

  it('while nothing can be written is kept as one copy, not two', async () => {
    const { place, page, cup } = await withTwo()
    page.database('refuses')
    rename(page, 'Bowl with figs')
    await Promise.all([page.openKept(cup), page.openKept(cup)])
    page.leave()
    const next = await tab(place, false)
    await next.startKeeping()
    expect(await designTitles(next)).toEqual(['Bowl', 'Bowl with figs (copy)', 'Cup'])
  })
})

describe('something else is asked for before a design is there', () => {
  it('one that can’t be read is not told of any more', async () => {
    const { page, cup } = await withTwo()
    const come = late(page.store, 'load')
    const opening = page.openKept('nowhere')
    await page.openKept(cup)
    come()
    await opening
    expect(shown(page)).toBe('Cup')
    expect(page.useStudio.getState().opening).toBeNull()
  })

  it('the start page stays the start page', async () => {
    const { page, bowl, cup } = await withTwo()
    await Promise.all([page.openKept(cup), page.goToStart()])
    const { sheet, designId } = page.useStudio.getState()
    expect([sheet, designId]).toEqual(['start', bowl])
  })

  it('one that is removed for good is not shown any more', async () => {
    const { page, bowl, cup } = await withTwo()
    const come = late(page.store, 'load')
    const opening = page.openKept(cup)
    await new Promise((go) => setTimeout(go, 20))
    await page.removeKept(cup)
    come()
    await opening
    expect(page.useStudio.getState().designId).toBe(bowl)
    expect(await keptTitle(page, cup)).toBe('(missing)')
  })

  it('of the open one removed and another opened, that one is shown and kept', async () => {
    const { page, bowl, cup } = await withTwo()
    rename(page, 'Bowl of figs')
    const come = late(page.store, 'save')
    const removing = page.removeKept(bowl)
    await page.openKept(cup)
    come()
    await removing
    const { sheet, designId } = page.useStudio.getState()
    expect([sheet, designId]).toEqual(['drawing', cup])
    rename(page, 'Cup of roses')
    await page.keepDesign()
    expect(await designTitles(page)).toEqual(['Cup of roses'])
  })

  it('what a second tab keeps as a new design goes on as it is by then', async () => {
    const { place, bowl } = await withTwo()
    const other = await tab(place, false)
    await other.startKeeping()
    await other.openKept(bowl)
    rename(other, 'Mine')
    const keeping = other.beginDesign(other.useStudio.getState().document)
    rename(other, 'Mine, and more')
    await keeping
    expect(shown(other)).toBe('Mine, and more')
    await other.keepDesign()
    expect(await designTitles(other)).toEqual(['Bowl', 'Cup', 'Mine, and more'])
  })

  it('where nothing can be kept, what was saved as a file may be left', async () => {
    const { place, page, cup } = await withTwo()
    page.database('refuses')
    place.small.set = () => {
      throw new DOMException('No room', 'QuotaExceededError')
    }
    rename(page, 'Bowl with figs')
    await page.openKept(cup)
    expect(shown(page)).toBe('Bowl with figs')
    page.textOfDesign()
    await page.openKept(cup)
    expect(shown(page)).toBe('Cup')
  })
})

describe('something is done before what is kept has come', () => {
  it('a design that is begun and changed is kept, and says so itself', async () => {
    const page = await tab(browser(), false)
    const starting = page.startKeeping()
    await page.beginDesign({ ...newArrangement(), title: 'New' })
    rename(page, 'New, and changed')
    await starting
    expect(await page.keepDesign()).toBe(true)
    expect(await designTitles(page)).toEqual(['New, and changed'])
  })

  it('units, prices and palettes that are set hold, and nothing that was kept is written over', async () => {
    const place = browser()
    const before = await tab(place, false)
    await before.startKeeping()
    before.change({ units: 'mm', prices: { currency: 'EUR', perBunch: { dahlia: 500 } } })
    await before.keepPalette(paletteNamed('Kept'))

    const page = await tab(place, false)
    const starting = page.startKeeping()
    const { prices } = page.useStudio.getState()
    page.change({ units: 'in', prices: { ...prices, currency: 'EUR', perBunch: { 'rose-garden': 900 } } })
    const keeping = page.keepPalette(paletteNamed('New'))
    await Promise.all([starting, keeping])
    const now = page.useStudio.getState()
    expect(now.units).toBe('in')
    expect(now.prices.perBunch).toEqual({ dahlia: 500, 'rose-garden': 900 })
    expect(await palettesOf(page)).toEqual(['Kept', 'New'])
    await vi.waitFor(async () => expect(await page.store.setting('units')).toMatchObject({ value: 'in' }))
    expect(await page.store.setting('prices')).toMatchObject({
      value: { perBunch: { dahlia: 500, 'rose-garden': 900 } },
    })
  })

  it('settings that come are no change: nothing is written for them', async () => {
    const place = browser()
    const before = await tab(place, false)
    await before.startKeeping()
    before.change({ units: 'mm', prices: { currency: 'JPY', perBunch: { dahlia: 500 } } })
    await vi.waitFor(async () => expect(await before.store.setting('prices')).toMatchObject({ ok: true }))

    const page = await tab(place, false)
    page.database('refuses')
    await page.startKeeping()
    const { units, prices, message } = page.useStudio.getState()
    expect({ units, prices, message }).toEqual({
      units: 'mm',
      prices: { currency: 'JPY', perBunch: { dahlia: 500 } },
      message: '',
    })
  })
})

it('palettes that two tabs keep are both kept, and one that is thrown away takes no other along', async () => {
  const place = browser()
  const first = await tab(place, false)
  await first.startKeeping()
  const second = await tab(place, false)
  await second.startKeeping()
  await first.keepPalette(paletteNamed('Of the first tab'))
  await second.keepPalette(paletteNamed('Of the second tab'))
  expect(await palettesOf(first)).toEqual(['Of the first tab', 'Of the second tab'])
  await second.removePalette('Of the second tab')
  expect(await palettesOf(first)).toEqual(['Of the first tab'])
})
