import { afterEach, describe, expect, it, vi } from 'vitest'
import { designTitles, keptTitle, rename, shown, tab, withTwo } from './tabs.ts'

afterEach(() => vi.unstubAllGlobals())

describe('another design is opened', () => {
  it('what is changed while it is on its way stays with the design that was on the sheet', async () => {
    const { page, bowl, cup } = await withTwo()
    const opening = page.openKept(cup)
    rename(page, 'Bowl by the door')
    await opening
    expect(shown(page)).toBe('Cup')
    await vi.waitFor(async () => expect(await keptTitle(page, bowl)).toBe('Bowl by the door'))
    expect(await keptTitle(page, cup)).toBe('Cup')
  })

  it('the same holds at any moment on the way, and for a new design too', async () => {
    for (let wait = 0; wait < 12; wait += 1) {
      const { page, bowl, cup } = await withTwo()
      const opening =
        wait % 2 ? page.openKept(cup) : page.beginDesign({ ...page.useStudio.getState().document, title: 'New' })
      for (let i = 0; i < wait; i += 1) await new Promise((go) => setTimeout(go))
      if (shown(page) === 'Bowl') rename(page, 'Bowl by the door')
      const renamed = shown(page) === 'Bowl by the door'
      await opening
      await page.openKept(bowl)
      expect(shown(page)).toBe(renamed ? 'Bowl by the door' : 'Bowl')
      expect(await keptTitle(page, cup)).toBe('Cup')
    }
  })

  it('what is changed on it is kept, and it is claimed; the one before is free again', async () => {
    const { place, page, bowl, cup } = await withTwo()
    await page.openKept(cup)
    rename(page, 'Cup of roses')
    await page.keepDesign()
    expect(await keptTitle(page, cup)).toBe('Cup of roses')
    await vi.waitFor(() => expect([...place.claims.keys()]).toEqual([`pedicel-design-${cup}`]))
    expect(await keptTitle(page, bowl)).toBe('Bowl')
  })

  it('of two asked for one after the other, the last is shown', async () => {
    const { page, bowl, cup } = await withTwo()
    const jug = await page.design('Jug')
    await Promise.all([page.openKept(cup), page.openKept(jug)])
    expect(shown(page)).toBe('Jug')
    rename(page, 'Jug of herbs')
    await page.keepDesign()
    expect(await keptTitle(page, jug)).toBe('Jug of herbs')
    expect([await keptTitle(page, bowl), await keptTitle(page, cup)]).toEqual(['Bowl', 'Cup'])
  })

  it('one that is not there leaves the open one open, and kept', async () => {
    const { page, bowl } = await withTwo()
    await page.openKept('nowhere')
    expect(page.useStudio.getState().opening?.problems).toHaveLength(1)
    rename(page, 'Bowl, still here')
    expect(await page.keepDesign()).toBe(true)
    expect(await keptTitle(page, bowl)).toBe('Bowl, still here')
  })

  it('one that is open already keeps its history', async () => {
    const { page, bowl } = await withTwo()
    rename(page, 'Bowl, renamed')
    await page.openKept(bowl)
    page.undo()
    expect(shown(page)).toBe('Bowl')
  })

  it('where nothing can be written, what was changed is put down and comes back as a copy', async () => {
    const { place, page, cup } = await withTwo()
    page.database('refuses')
    rename(page, 'Bowl with figs')
    await page.openKept(cup)
    expect(shown(page)).toBe('Cup')
    expect(page.useStudio.getState().message).toContain('“Bowl with figs (copy)”')
    page.leave()
    const next = await tab(place, false)
    await next.startKeeping()
    expect(await designTitles(next)).toEqual(['Bowl', 'Bowl with figs (copy)', 'Cup'])
  })

  it('a copy of the longest title there may be can be opened', async () => {
    const { place, page, cup } = await withTwo()
    page.database('refuses')
    rename(page, 'a'.repeat(500))
    await page.openKept(cup)
    page.leave()
    const next = await tab(place, false)
    await next.startKeeping()
    expect(await designTitles(next)).toEqual(['Bowl', 'Cup', `${'a'.repeat(493)} (copy)`])
  })

  it('where it can’t even be put down, nothing is opened', async () => {
    const { place, page, cup } = await withTwo()
    page.database('refuses')
    rename(page, 'Bowl with figs')
    place.small.set = () => {
      throw new DOMException('No room', 'QuotaExceededError')
    }
    await page.openKept(cup)
    expect(shown(page)).toBe('Bowl with figs')
  })

  it('what was changed in a tab that may not write is kept as a copy when another is opened there', async () => {
    const { place, page, bowl, cup } = await withTwo()
    const other = await tab(place, false)
    await other.startKeeping()
    await other.openKept(bowl)
    expect(other.useStudio.getState().save.state).toBe('elsewhere')
    rename(other, 'Bowl in the second tab')
    await other.openKept(cup)
    expect(await designTitles(other)).toEqual(['Bowl', 'Bowl in the second tab (copy)', 'Cup'])
    expect(shown(page)).toBe('Bowl')
  })
})
