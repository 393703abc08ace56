import AxeBuilder from '@axe-core/playwright'
import type { Page } from '@playwright/test'
import { expect, test } from './helpers.ts'
import { openSample } from './sheet.ts'

const clean = (page: Page, what: string): Promise<void> =>
  test.step(what, async () => {
    const { violations } = await new AxeBuilder({ page })
      .withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'])
      .analyze()
    expect(violations.map((v) => `${v.id}: ${v.nodes.map((n) => n.target.join(' ')).join(', ')}`)).toEqual([])
    expect(await tooSmall(page)).toEqual([])
  })

/**
 * Targets under 24 px a side whose 24 px circle meets another target or its circle (WCAG 2.2, 2.5.8). A label is part of
 * the target of its field; words in a sentence are excepted.
 */
const tooSmall = (page: Page): Promise<string[]> =>
  page.evaluate(() => {
    const open = document.querySelector('dialog:modal') ?? document
    const stops = [...open.querySelectorAll<HTMLElement>('button, a[href], input, select, textarea, summary')]
    const targets = stops.flatMap((e) => {
      const label = 'labels' in e ? (e as HTMLInputElement).labels?.[0] : undefined
      const boxes = [e, ...(label && e.matches('[type=checkbox], [type=radio]') ? [label] : [])]
        .filter((b) => b.checkVisibility({ visibilityProperty: true, opacityProperty: true }))
        .map((b) => b.getBoundingClientRect())
        .filter((b) => b.width > 1 && b.height > 1)
      if (boxes.length === 0 || e.matches('.unseen, .skip a')) return []
      const left = Math.min(...boxes.map((b) => b.left))
      const top = Math.min(...boxes.map((b) => b.top))
      const right = Math.max(...boxes.map((b) => b.right))
      const bottom = Math.max(...boxes.map((b) => b.bottom))
      return [{ e, left, top, right, bottom, x: (left + right) / 2, y: (top + bottom) / 2 }]
    })
    const small = (t: { left: number; right: number; top: number; bottom: number }) =>
      t.right - t.left < 23.9 || t.bottom - t.top < 23.9
    return targets
      .filter(small)
      .filter((t) =>
        targets.some((o) => {
          if (o.e === t.e || o.e.contains(t.e) || t.e.contains(o.e)) return false
          const dx = Math.max(o.left - t.x, 0, t.x - o.right)
          const dy = Math.max(o.top - t.y, 0, t.y - o.bottom)
          return Math.hypot(dx, dy) < 12 || (small(o) && Math.hypot(o.x - t.x, o.y - t.y) < 24)
        }),
      )
      .map((t) => {
        const size = `${Math.round(t.right - t.left)}×${Math.round(t.bottom - t.top)}`
        return `${t.e.getAttribute('aria-label') ?? t.e.textContent?.slice(0, 40) ?? ''} ${t.e.className} ${size}`
      })
  })

/** No part of the page may need scrolling sideways. */
const fits = async (page: Page, width: number): Promise<void> =>
  expect.poll(() => page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width)

const toSheet = (page: Page, name: 'Drawing' | 'Palettes' | 'Picture') =>
  page
    .getByRole('navigation', { name: 'Sheets' })
    .getByRole('button', { name: new RegExp(name) })
    .click()

for (const [width, height] of [
  [1440, 900],
  [1024, 768],
  [390, 844],
] as const)
  test(`the rules of access hold on every sheet at ${width} × ${height}`, async ({ page }) => {
    await page.setViewportSize({ width, height })
    const below = page.getByRole('navigation', { name: 'Below the drawing' })
    /** What stands beside the drawing from this width on is behind a word below it on a narrower screen. */
    const column = async (name: RegExp, from: number) => {
      if (width < from) await below.getByRole('button', { name }).click()
    }
    await page.goto('/')
    await expect(page.getByRole('button', { name: /Orchard supper/ })).toBeEnabled()
    await clean(page, 'the start page')
    await page.getByRole('button', { name: /Orchard supper/ }).click()
    await expect(page.getByTestId('elevation')).toBeVisible()

    await column(/^Stems/, 1200)
    await page.getByRole('button', { name: /^Open the \d+ of Dahlia/ }).click()
    await page.getByRole('button', { name: 'only this' }).first().click()
    await expect(page.getByRole('heading', { name: /^Stem \d+ dahlia/ })).toBeVisible()
    await page.getByRole('button', { name: 'Prices' }).click()
    await expect(page.getByRole('region', { name: 'Prices' })).toBeVisible()
    await page.getByRole('button', { name: 'Add a stem' }).click()
    await page.getByRole('radio', { name: /^Garden rose/ }).check()
    await clean(page, 'the drawing: a stem selected, its row open, another being added, the prices open')
    await page.getByRole('button', { name: 'Done adding' }).click()

    await column(/^Readings/, 1200)
    const reading = page.getByRole('button', { name: /What leads the eye/ })
    await reading.click()
    await page.getByRole('button', { name: 'Why', exact: true }).click()
    await expect(page.getByText('How far to trust it.').first()).toBeVisible()
    await clean(page, 'an open reading with its reasons')

    await column(/^Title/, 700)
    await page.getByRole('button', { name: /^vessel/ }).click()
    const vessel = page.getByRole('dialog', { name: 'Vessel' })
    await vessel.getByText('Its outline, point by point').click()
    await clean(page, 'the vessel')
    await vessel.getByRole('button', { name: 'Done' }).click()

    await toSheet(page, 'Palettes')
    await expect(page.getByRole('button', { name: 'Put on the sheet' }).first()).toBeVisible()
    await page.getByRole('button', { name: 'Make one of your own' }).click()
    await clean(page, 'palettes, with one being made')
    await toSheet(page, 'Picture')
    await expect(page.getByRole('button', { name: 'Download the picture' })).toBeVisible()
    await clean(page, 'the picture')
  })

test('at 320 px wide nothing scrolls sideways, on any sheet', async ({ page }) => {
  await page.setViewportSize({ width: 320, height: 700 })
  await page.goto('/')
  await fits(page, 320)
  await page.getByRole('button', { name: /Window-sill bowl/ }).click()
  await expect(page.getByTestId('elevation')).toBeVisible()
  const below = page.getByRole('navigation', { name: 'Below the drawing' })
  for (const name of ['Readings', 'Stems and palette', 'Title'])
    await test.step(name, async () => {
      await below.getByRole('button', { name }).click()
      await fits(page, 320)
    })
  await page.getByRole('button', { name: /^vessel/ }).click()
  const vessel = page.getByRole('dialog', { name: 'Vessel' })
  expect(await vessel.evaluate((d) => d.scrollWidth - d.clientWidth)).toBeLessThanOrEqual(0)
  await vessel.getByRole('button', { name: 'Done' }).click()
  for (const name of ['Palettes', 'Picture'] as const)
    await test.step(name, async () => {
      await toSheet(page, name)
      await expect(page.getByRole('heading', { level: 1 })).toBeVisible()
      await fits(page, 320)
    })
})

for (const colours of ['none', 'active'] as const)
  test(`what the keyboard stands on can be seen${colours === 'active' ? ', also in colours of the system' : ''}`, async ({
    page,
  }) => {
    await page.emulateMedia({ forcedColors: colours })
    await openSample(page, 'Window-sill bowl')
    const seen = new Set<string>()
    for (let i = 0; i < 50; i++) {
      await page.keyboard.press('Tab')
      const now = await page.evaluate(() => {
        const e = document.activeElement as HTMLElement
        const { outlineStyle, outlineWidth, outlineColor } = getComputedStyle(e)
        const box = e.getBoundingClientRect()
        const inSight = box.bottom > 0 && box.right > 0 && box.top < innerHeight && box.left < innerWidth
        const name = `${e.tagName} ${e.getAttribute('aria-label') ?? e.textContent?.slice(0, 30)}`
        return { name, outlineStyle, width: Number.parseFloat(outlineWidth), outlineColor, inSight }
      })
      if (now.name.startsWith('BODY')) continue
      seen.add(now.name)
      expect(now.outlineStyle, now.name).not.toBe('none')
      expect(now.width, now.name).toBeGreaterThanOrEqual(2)
      expect(now.outlineColor, now.name).not.toMatch(/, 0\)$|transparent/)
      expect(now.inSight, `${now.name} is in sight`).toBe(true)
    }
    expect(seen.size).toBeGreaterThan(30)
  })
