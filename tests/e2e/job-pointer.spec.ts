import { readFileSync } from 'node:fs'
import { expect, test } from '@playwright/test'
import { begin, drag, onScreen, openSample, saved, take } from './sheet.ts'

test('from an empty vessel to five stems, moved in either view, by pointer', async ({ page }) => {
  await begin(page)
  await page.getByRole('button', { name: /^vessel/ }).click()
  const vessel = page.getByRole('dialog', { name: 'Vessel' })
  await vessel
    .getByRole('button', { name: /Footed bowl/i })
    .first()
    .click()
  await vessel.getByLabel('height, cm', { exact: true }).fill('11')
  await vessel.getByLabel('height, cm', { exact: true }).press('Enter')
  await vessel.getByRole('button', { name: 'Done' }).click()
  expect((await saved(page)).vessel.height).toBe(110)

  for (const [i, plant] of ['Garden rose', 'Dahlia', 'Veronica', 'Craspedia', 'Italian ruscus'].entries()) {
    await take(page, plant)
    const at = await onScreen(page, [(i - 2) * 30, (i - 2) * 12, 90 + i * 14])
    const where = i % 2 === 0 ? at.elevation : at.plan
    await page.mouse.click(where.x, where.y)
  }
  await page.getByRole('button', { name: 'Done adding' }).click()
  const placed = await saved(page)
  expect(placed.stems.map((s) => s.plant)).toEqual(['rose-garden', 'dahlia', 'veronica', 'craspedia', 'ruscus-italian'])
  expect(placed.stems[0]?.tip[0]).toBeCloseTo(-60, -1)
  expect(placed.stems[0]?.tip[2]).toBeCloseTo(90, -1)
  expect(placed.stems[1]?.tip[1]).toBeCloseTo(-12, -1)

  // A head dragged in the elevation keeps its depth; in the plan, its height.
  await page
    .getByRole('button', { name: /Garden rose Rosa|^Garden rose/ })
    .first()
    .click()
  const rose = placed.stems[0]!
  const from = await onScreen(page, rose.tip)
  await drag(page, from.elevation, { x: 30, y: -24 })
  const moved = (await saved(page)).stems[0]!
  expect(moved.tip[0]).toBeCloseTo(rose.tip[0] + 30 / from.scale, 0)
  expect(moved.tip[1]).toBe(rose.tip[1])
  expect(moved.tip[2]).toBeCloseTo(rose.tip[2] + 24 / from.scale, 0)
  const again = await onScreen(page, moved.tip)
  await drag(page, again.plan, { x: -12, y: 26 })
  const twice = (await saved(page)).stems[0]!
  expect(twice.tip[2]).toBe(moved.tip[2])
  expect(twice.tip[1]).toBeCloseTo(moved.tip[1] - 26 / again.scale, 0)

  // One drag is one step; everything comes back, and forth again.
  await page.getByRole('button', { name: /^Undo/ }).click()
  expect((await saved(page)).stems[0]).toEqual(moved)
  await page.getByRole('button', { name: /^Undo/ }).click()
  expect((await saved(page)).stems[0]).toEqual(rose)
  await page.getByRole('button', { name: /^Redo/ }).click()
  expect((await saved(page)).stems[0]).toEqual(moved)

  await page.getByRole('button', { name: /15°/ }).last().click()
  await expect(page.getByTestId('plan')).toContainText(/turned (15|345)°/)
})

test('readings, advice, list, palettes and picture of a sample, by pointer', async ({ page }) => {
  await openSample(page, 'Orchard supper')
  const before = await saved(page)

  for (const name of ['What leads the eye', 'Air and holes', 'Colours together', 'Height to the vessel']) {
    const row = page.getByRole('button', { name: new RegExp(name) })
    await row.click()
    await expect(row).toHaveAttribute('aria-expanded', 'true')
  }
  const act = page.getByRole('button', { name: 'Do it' })
  await expect(act).toBeVisible()
  await act.click()
  expect((await saved(page)).stems).not.toEqual(before.stems)
  await page.getByRole('button', { name: /^Undo/ }).click()
  expect(await saved(page)).toEqual(before)

  // The list drives the drawing.
  const list = page.getByRole('table')
  await list.getByRole('button', { name: 'in it more' }).first().click()
  expect((await saved(page)).stems).toHaveLength(before.stems.length + 1)
  await list.getByRole('button', { name: 'in it less' }).first().click()
  expect((await saved(page)).stems).toHaveLength(before.stems.length)
  await list.getByRole('button', { name: /^Dahlia/ }).click()
  await expect(page.getByRole('heading', { name: '4 stems' })).toBeVisible()
  const total = list.getByRole('row').last()
  const cost = await total.textContent()
  await page.getByRole('button', { name: 'Prices' }).click()
  const price = page.getByRole('region', { name: 'Prices' }).getByRole('spinbutton').first()
  await price.fill('99')
  await price.press('Enter')
  await expect(total).not.toHaveText(cost ?? '')

  await page.getByRole('button', { name: '2 Palettes' }).click()
  await expect(page.getByRole('region').filter({ has: page.getByRole('heading', { level: 2 }) })).toHaveCount(4)
  await page.getByRole('button', { name: 'Put on the sheet' }).first().click()
  await page.getByRole('button', { name: 'Make one of your own' }).click()
  await page.getByLabel('name', { exact: true }).fill('Our own')
  await page.getByRole('button', { name: 'Keep it' }).click()
  await expect(page.getByRole('checkbox', { name: /Our own \(yours\)/ })).toBeChecked()
  await page.getByRole('button', { name: '1 Drawing' }).click()
  expect((await saved(page)).palette.name).not.toBe(before.palette.name)

  await page.getByRole('button', { name: '3 Picture' }).click()
  const waiting = page.waitForEvent('download', { timeout: 120_000 })
  await page.getByRole('button', { name: 'Download the picture' }).click()
  const png = readFileSync(await (await waiting).path())
  expect(png.subarray(1, 4).toString()).toBe('PNG')
  expect(png.readUInt32BE(16)).toBeGreaterThanOrEqual(2000)
})

test('a design is kept by itself and opens again', async ({ page }) => {
  await openSample(page, 'Window-sill bowl')
  await page.getByLabel('Title of the design').fill('Kept by itself')
  await page.getByLabel('Title of the design').press('Enter')
  await expect(page.getByText(/kept in this browser/)).toBeVisible()
  await page.reload()
  await page.getByRole('button', { name: /^Kept by itself/ }).click()
  await expect(page.getByLabel('Title of the design')).toHaveValue('Kept by itself')
})
