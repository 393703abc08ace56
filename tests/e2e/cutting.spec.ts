import { readFileSync } from 'node:fs'
import type { Locator, Page } from '@playwright/test'
import { expect, tabTo, test, typeInto } from './helpers.ts'
import { openSample } from './sheet.ts'

const toCutting = async (page: Page): Promise<void> => {
  await openSample(page, 'Twenty-four small cups')
  await page.getByRole('navigation', { name: 'Sheets' }).getByRole('button', { name: /Event/ }).click()
  await page.getByRole('button', { name: 'Cutting' }).click()
}
const line = (page: Page, plant: string): Locator => page.locator('.cut-line').filter({ hasText: plant })

test('a bunch that came shorter and with fewer heads: stems, plan and order follow, and go back', async ({ page }) => {
  await toCutting(page)
  const sprays = line(page, 'Spray rose')
  // Three pieces in each of 24 cups, four heads on a stem.
  await expect(sprays).toContainText('72 pieces from 18 stems')
  await page.getByRole('spinbutton', { name: 'heads, on a stem of Spray rose' }).fill('3')
  await page.keyboard.press('Enter')
  await expect(sprays).toContainText('72 pieces from 24 stems')
  await expect(sprays.getByRole('rowheader')).not.toHaveCount(0)
  const stems = await sprays.getByRole('rowheader').allTextContents()
  expect(stems.reduce((n, s) => n + Number(s), 0)).toBe(24)

  await page.getByRole('spinbutton', { name: 'stem, Spray rose', exact: true }).fill('15')
  await page.keyboard.press('Enter')
  await expect(sprays).toContainText('pieces are longer than the stem that came gives')
  await page.getByRole('button', { name: 'Undo' }).click()
  await expect(sprays).toContainText('72 pieces from 24 stems')
  await expect(sprays).not.toContainText('longer than')

  await page.getByRole('button', { name: 'Order' }).click()
  const bought = page.getByRole('row', { name: /^Spray rose/ })
  await expect(bought.getByRole('cell').nth(2)).toHaveText('24')

  await page.getByRole('button', { name: 'Designs' }).click()
  const waiting = page.waitForEvent('download')
  await page.getByRole('button', { name: 'Save the event' }).click()
  const file = JSON.parse(readFileSync(await (await waiting).path(), 'utf8'))
  expect(file.stems).toEqual({ 'rose-spray': { heads: 3 } })

  await page.getByRole('button', { name: 'Cutting' }).click()
  await page.getByRole('button', { name: 'Stems of Spray rose as the catalogue has them' }).click()
  await expect(sprays).toContainText('72 pieces from 18 stems')
})

test('by keys alone: what came is put in and taken back', async ({ page }) => {
  await openSample(page, 'Twenty-four small cups')
  await tabTo(page, 'button', /Event/)
  await page.keyboard.press('Enter')
  await tabTo(page, 'button', 'Cutting')
  await page.keyboard.press('Enter')
  const lisianthus = line(page, 'Lisianthus')
  await expect(lisianthus).toContainText('72 pieces from 18 stems')
  await typeInto(page, 'heads, on a stem of Lisianthus', 6)
  await expect(lisianthus).toContainText('72 pieces from 12 stems')
  // No side stem is long enough: each piece has a main axis to itself, and its side stems are left over.
  await typeInto(page, 'side stem, Lisianthus', 5)
  await expect(lisianthus).toContainText('72 pieces from 72 stems')
  await expect(lisianthus).toContainText('360 side stems of at most 5.0 cm on the last 72 stems cut apart')
  await tabTo(page, 'button', 'Stems of Lisianthus as the catalogue has them')
  await page.keyboard.press('Enter')
  await expect(lisianthus).toContainText('72 pieces from 18 stems')
})

test('greens are cut in two where the person says so, and drawn whole where not', async ({ page }) => {
  await toCutting(page)
  const myrtle = line(page, 'Myrtle')
  await expect(myrtle).toContainText('96 pieces from 96 stems')
  await page.getByRole('spinbutton', { name: 'pieces along it, at most, Myrtle' }).fill('2')
  await page.keyboard.press('Enter')
  await expect(myrtle).toContainText('96 pieces from 48 stems')
  await expect(myrtle).toContainText('one has its tip, the others end in a cut')
  await page.getByRole('button', { name: 'Undo' }).click()
  await expect(myrtle).toContainText('96 pieces from 96 stems')
  // A gerbera has no leaves along its stem to be cut into pieces.
  await expect(page.getByRole('spinbutton', { name: 'pieces along it, at most, Mini gerbera' })).toHaveCount(0)
})
