import AxeBuilder from '@axe-core/playwright'
import { expect, test, undoButton } from './helpers.ts'
import { openSample, saved } from './sheet.ts'

test('table, linen and light of the room are the person’s to set; readings follow, and each is one step', async ({
  page,
}) => {
  await openSample(page, 'Orchard supper')
  const colours = page.getByRole('button', { name: /^Colours together/ })
  const view = page.getByRole('button', { name: /^View across the table/ })
  await expect(colours).toContainText(/\d\.\d\d/)
  const byDay = (await colours.textContent())!
  const before = await saved(page)

  await page.getByLabel('light of the room').selectOption('candle')
  await expect(colours).not.toHaveText(byDay)
  expect((await saved(page)).setting.light).toBe('candle')

  await page.getByRole('button', { name: /^table and linen round, 152.4 cm/ }).click()
  const dialog = page.getByRole('dialog', { name: 'The room' })
  await expect(dialog.getByText(/^Candles: nothing that can burn near the flame/)).toBeVisible()
  expect((await new AxeBuilder({ page }).include('dialog').analyze()).violations).toEqual([])
  await dialog.getByLabel('as hired').selectOption({ label: 'Round, 24 in' })
  await expect(dialog.getByRole('img', { name: /The table from above/ })).toBeVisible()
  await dialog.getByLabel('shape').selectOption('rectangular')
  await dialog.getByRole('spinbutton', { name: 'length, cm' }).fill('40')
  await dialog.getByRole('spinbutton', { name: 'length, cm' }).press('Enter')
  await dialog.getByRole('button', { name: 'Done' }).click()
  expect((await saved(page)).setting.table).toMatchObject({ shape: 'rectangular', length: 400 })
  await expect(view).toBeVisible()

  for (let i = 0; i < 4; i++) await undoButton(page).click()
  expect(await saved(page)).toEqual(before)
})

test('the room shows the design on its table: laid for its guests, said in words what has no room, and flames with their caution', async ({
  page,
}) => {
  await openSample(page, 'Orchard supper')
  await page.getByRole('button', { name: /^table and linen/ }).click()
  const dialog = page.getByRole('dialog', { name: 'The room' })
  const view = dialog.getByRole('img', { name: /^The design on its table, seen from a little above, in daylight/ })
  await expect(view).toHaveAttribute('data-shown', 'fine')
  await expect(dialog.getByText(/Laid for 7, 61\.0 cm of edge each/)).toBeVisible()
  await expect(dialog.getByText(/a flame as drawn/)).toHaveCount(0)

  await dialog.getByLabel('as hired').selectOption({ label: 'Round, 24 in' })
  await expect(dialog.getByText(/Left out, because the flowers would hang over them: .*small plates/)).toBeVisible()

  await dialog.getByLabel('candles').check()
  await expect(
    dialog.getByText(/^Nearer than 30\.5 cm to a flame as drawn: [^,]*maranthus .*\(dries, hangs\)/),
  ).toBeVisible()
  await expect(dialog.getByText(/^Candles: nothing that can burn near the flame/)).toBeVisible()
  await expect(dialog.getByText(/^The venue's rules/)).toBeVisible()
  await expect(dialog.getByRole('img', { name: /in candles/ })).toHaveAttribute('data-shown', 'fine')
})
