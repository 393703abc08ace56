import AxeBuilder from '@axe-core/playwright'
import { expect, test, undoButton } from './helpers.ts'
import { openSample, saved } from './sheet.ts'

test('table, linen and light of the room are the person’s to set; readings follow, and each is one step', async ({
  page,
}) => {
  await openSample(page, 'Orchard supper')
  const colours = page.getByRole('button', { name: /^Colours together/ })
  const view = page.getByRole('button', { name: /^View across the table/ })
  await expect(colours).toContainText('−0.03')
  const before = await saved(page)

  await page.getByLabel('light of the room').selectOption('candle')
  await expect(colours).not.toContainText('−0.03')
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
