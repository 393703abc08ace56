import type { Page } from '@playwright/test'
import { expect, test } from './helpers.ts'
import { keptDesign, onScreen, openSample, saved } from './sheet.ts'

const told = async (page: Page, name: string) => Number((await page.getByTestId('views').getAttribute(name)) ?? 0)

/** Size and SHA-256 of the pixels of the still pictures of both views, as they lie on the sheet. */
const stillPixels = (page: Page): Promise<string> =>
  page.evaluate(async () => {
    const canvas = document.querySelector<HTMLCanvasElement>('.views canvas')!
    const { width, height } = canvas
    const { data } = canvas.getContext('2d')!.getImageData(0, 0, width, height)
    const sum = new Uint8Array(await crypto.subtle.digest('SHA-256', data))
    return `${width} × ${height}: ${[...sum].map((v) => v.toString(16).padStart(2, '0')).join('')}`
  })

/** Waits until the careful pictures of both views are there. @returns how often still pictures have been drawn so far */
const settledDraws = async (page: Page): Promise<number> => {
  await expect(page.getByTestId('views')).toHaveAttribute('data-stills', 'fine fine')
  // What was asked for by then is drawn with the next frame.
  await page.evaluate(() => new Promise((then) => requestAnimationFrame(() => requestAnimationFrame(then))))
  return told(page, 'data-still-draws')
}

test('a drag draws nothing that stands still, and loses sight of nothing; put down, it is as drawn anew', async ({
  page,
}) => {
  await openSample(page, 'Orchard supper')
  const before = await saved(page)
  const stem = before.stems.find((s) => s.plant === 'dahlia')!
  await page.getByRole('button', { name: /^Open the \d+ of Dahlia/ }).click()
  await page.getByRole('button', { name: 'only this' }).first().click()
  const { elevation: at } = await onScreen(page, stem.tip)
  await settledDraws(page)

  await page.mouse.move(at.x, at.y)
  await page.mouse.down()
  await page.mouse.move(at.x + 4, at.y - 4)
  await expect(page.getByTestId('views')).not.toHaveAttribute('data-stills', 'fine fine')
  const draws = await settledDraws(page)
  for (let i = 1; i <= 40; i++) await page.mouse.move(at.x + 4 + i, at.y - 4 - (i % 9))
  // Long enough for pictures that must not come.
  await page.waitForTimeout(400)
  expect(await told(page, 'data-still-draws')).toBe(draws)
  expect(await told(page, 'data-sprite-misses')).toBe(0)
  await page.mouse.up()
  await expect(page.getByTestId('views')).not.toHaveAttribute('data-stills', 'fine fine')
  await settledDraws(page)
  const scale = await told(page, 'data-scale')
  const after = await stillPixels(page)
  const moved = await saved(page)
  expect(moved.stems.find((s) => s.id === stem.id)!.tip[0]).toBeGreaterThan(stem.tip[0])

  await expect(page.getByText(/kept in this browser/)).toBeVisible()
  await page.reload()
  await keptDesign(page, moved.title).click()
  await expect(page.getByTestId('elevation')).toBeVisible()
  await settledDraws(page)
  expect(await told(page, 'data-scale')).toBe(scale)
  expect(await stillPixels(page)).toBe(after)
})
