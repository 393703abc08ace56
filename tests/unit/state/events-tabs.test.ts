import { afterEach, describe, expect, it, vi } from 'vitest'
import { promise } from '../../promise.ts'
import { numbers } from './commands.ts'
import { browser, name, saveOf, type Tab, tab, ticksKept, titleOf, titles } from './tabs.ts'

afterEach(() => vi.unstubAllGlobals())

/** One event, open in two pages. */
const twoTabs = async () => {
  const place = browser()
  const a = await tab(place)
  name(a, 'Wedding')
  await a.keepEvent()
  const b = await tab(place)
  expect(titleOf(b)).toBe('Wedding')
  return { place, a, b }
}

describe('one event in two tabs', () => {
  it('the later one overwrites nothing and says so; the newer one is shown, its own kept as a copy', async () => {
    const { a, b } = await twoTabs()
    name(a, 'From the first')
    await a.keepEvent()
    name(b, 'From the second')
    await b.keepEvent()
    expect(saveOf(b)).toBe('elsewhere')
    await b.showNewer()
    expect(titleOf(b)).toBe('From the first')
    expect(saveOf(b)).toBe('saved')
    expect(await titles(b)).toEqual(['From the first', 'From the second (copy)'])
    name(b, 'And on')
    expect(await b.keepEvent()).toBe(true)
  })

  it('or goes on with its own as a copy', async () => {
    const { a, b } = await twoTabs()
    name(a, 'From the first')
    await a.keepEvent()
    name(b, 'From the second')
    await b.keepEvent()
    await b.goOnWithCopy()
    expect(titleOf(b)).toBe('From the second (copy)')
    name(b, 'The second goes on')
    await b.keepEvent()
    expect(await titles(a)).toEqual(['From the first', 'The second goes on'])
    expect(titleOf(a)).toBe('From the first')
  })

  it('one that changed nothing follows without a copy', async () => {
    const { a, b } = await twoTabs()
    name(a, 'From the first')
    await a.keepEvent()
    await b.saver.lookElsewhere()
    expect(saveOf(b)).toBe('elsewhere')
    await b.showNewer()
    expect(titleOf(b)).toBe('From the first')
    expect(await titles(b)).toEqual(['From the first'])
  })

  it('thrown away in one, it comes back when the other goes on with it', async () => {
    const { a, b } = await twoTabs()
    await a.throwEventAway(a.useEvent.getState().event.id)
    expect(await titles(b)).toEqual([])
    name(b, 'Still at it')
    await b.keepEvent()
    expect(await titles(a)).toEqual(['Still at it'])
  })
})

describe('one price book in two tabs', () => {
  it('a price put in here does not put back one that was put in there; a refusal is said', async () => {
    const place = browser()
    const [a, b] = [await tab(place), await tab(place)]
    await a.startKeeping()
    await b.startKeeping()
    const put = (page: Tab, plant: string, minor: number): void => {
      const { prices } = page.useStudio.getState()
      page.changePrices({ ...prices, perBunch: { ...prices.perBunch, [plant]: minor } }, plant)
    }
    put(a, 'rose-garden', 2000)
    put(b, 'dahlia', 900)
    b.database('refuses')
    put(b, 'zinnia', 800)
    await expect
      .poll(() => b.useStudio.getState().message)
      .toMatch(/^Your prices are not kept: The browser has no room/)
    const later = await tab(place)
    await later.startKeeping()
    expect(later.useStudio.getState().prices.perBunch).toEqual({ 'rose-garden': 2000, dahlia: 900 })
  })
})

describe('a page that goes, and a store that refuses', () => {
  it('a change of which the database never heard is there after the reload', async () => {
    const place = browser()
    const page = await tab(place)
    name(page, 'Kept')
    await page.keepEvent()
    name(page, 'The last word')
    page.leave()
    const later = await tab(place)
    expect(titleOf(later)).toBe('The last word')
    expect(await titles(later)).toEqual(['The last word'])
    expect(place.small.size).toBe(0)
  })

  it('the very first change is there too', async () => {
    const place = browser()
    const page = await tab(place)
    name(page, 'First')
    page.leave()
    expect(titleOf(await tab(place))).toBe('First')
  })

  it('what it left is not carried over while another page has gone on: it stands beside it', async () => {
    const { place, a, b } = await twoTabs()
    name(b, 'From the second')
    name(a, 'From the first')
    await a.keepEvent()
    b.leave()
    const later = await tab(place)
    expect(await titles(later)).toEqual(['From the first', 'From the second (copy)'])
  })

  it('a page that had been overtaken leaves its own as a copy', async () => {
    const { place, a, b } = await twoTabs()
    name(a, 'From the first')
    await a.keepEvent()
    name(b, 'From the second')
    await b.keepEvent()
    name(b, 'From the second, further')
    b.leave()
    expect(await titles(await tab(place))).toEqual(['From the first', 'From the second, further (copy)'])
  })

  it('a store without room is told, and what was not kept is kept by the next change', async () => {
    const place = browser()
    const page = await tab(place)
    page.database('refuses')
    name(page, 'No room')
    expect(await page.keepEvent()).toBe(false)
    expect(page.useEvent.getState().save).toMatchObject({ state: 'failed' })
    page.database('answers')
    name(page, 'Room')
    expect(await page.keepEvent()).toBe(true)
    expect(await titles(page)).toEqual(['Room'])
  })

  it('and opening another event loses nothing of it', async () => {
    const place = browser()
    const page = await tab(place)
    name(page, 'One')
    await page.beginEvent()
    name(page, 'Two')
    await page.keepEvent()
    page.database('refuses')
    name(page, 'Two, not kept')
    await page.openEvent(page.useEvent.getState().kept.find((e) => e.title === 'One')!.id)
    page.leave()
    expect(await titles(await tab(place))).toEqual(['One', 'Two, not kept'])
  })

  it('without any store one can still work, and is told that nothing is kept', async () => {
    const place = browser()
    vi.stubGlobal('indexedDB', undefined)
    const page = await tab(place)
    name(page, 'By hand')
    expect(await page.keepEvent()).toBe(false)
    expect(saveOf(page)).toBe('failed')
    expect(page.textOfEvent()).toContain('By hand')
  })
})

/** One step of a script, by one of two pages; gives the page that goes on. */
const act = async (place: ReturnType<typeof browser>, page: Tab, random: () => number): Promise<Tab> => {
  const pick = <T>(from: readonly T[]): T | undefined => from[Math.floor(random() * from.length)]
  const way = random()
  if (way < 0.2) await page.keepEvent()
  else if (way < 0.3) await page.beginEvent()
  else if (way < 0.42) {
    const to = pick((await page.refreshEvents()).filter((e) => e.id !== page.useEvent.getState().event.id))
    if (to) await page.openEvent(to.id)
  } else if (way < 0.5) {
    const to = pick(await page.refreshEvents())
    if (to) await (to.thrown ? page.putEventBack(to.id) : page.throwEventAway(to.id))
  } else if (way < 0.6) await page.saver.lookElsewhere()
  else if (way < 0.75 && saveOf(page) === 'elsewhere') await (random() < 0.5 ? page.showNewer() : page.goOnWithCopy())
  else if (way < 0.85) page.database(random() < 0.5 ? 'refuses' : 'answers')
  else if (way > 0.95) {
    page.leave()
    return tab(place)
  }
  return page
}

describe('interleavings', () => {
  it('R7: whatever two tabs do in turn, with a store that refuses now and then, no tick of either is lost', async () => {
    const seeds = process.env.SOAK ? 200 : 20
    let ticks = 0
    for (let seed = 1; seed <= seeds; seed++) {
      const random = numbers(seed * 104_729)
      const place = browser()
      const pages = [await tab(place), await tab(place)]
      const made: string[] = []
      for (let i = 0; i < 40; i++) {
        const who = random() < 0.5 ? 0 : 1
        let page = pages[who]!
        if (random() < 0.5) {
          const key = `${seed}-${i}`
          page.tick(key, true, key)
          made.push(key)
        }
        const waits = random() < 0.2
        page = await act(place, page, random)
        if (waits) await new Promise((r) => setTimeout(r, 5))
        pages[who] = page
      }
      for (const page of pages) page.leave()
      const last = await tab(place)
      const kept = await ticksKept(last)
      last.leave()
      ticks += made.length
      expect(
        made.filter((key) => !kept.has(key)),
        `seed ${seed}`,
      ).toEqual([])
    }
    promise(`R7 two tabs lose no tick of an event: ${seeds} seeds x 40 steps, ${ticks} ticks, 0 failures`)
  }, 600_000)
})
