import type { Page } from '@playwright/test'
import { expect, test } from './helpers.ts'
import { begin, openSample, saved } from './sheet.ts'

const rename = async (page: Page, title: string): Promise<void> => {
  await page.getByLabel('Title of the design').fill(title)
  await page.getByLabel('Title of the design').press('Enter')
}
const kept = (page: Page) => expect(page.getByText(/kept in this browser/)).toBeVisible()
const putIn = async (page: Page, plant: RegExp): Promise<void> => {
  await page.getByRole('button', { name: 'Add a stem' }).click()
  await page.getByRole('radio', { name: plant }).first().check()
  await page.getByRole('button', { name: 'Put one in' }).click()
  await page.getByRole('button', { name: 'Done adding' }).click()
}

test('several designs are kept by themselves; one is taken away only after asking', async ({ page }) => {
  await begin(page)
  await rename(page, 'First of two')
  await putIn(page, /^Garden rose/)
  const first = await saved(page)
  await page.getByRole('button', { name: 'Start', exact: true }).click()
  await page.getByRole('button', { name: 'Begin with an empty vessel' }).click()
  await rename(page, 'Second of two')
  await kept(page)
  const second = await saved(page)

  await page.reload()
  const list = page.getByRole('region', { name: 'Yours, kept in this browser' })
  await expect(list.getByRole('listitem')).toHaveCount(2)
  await list.getByRole('button', { name: /^First of two 1 stem,/ }).click()
  await expect(page.getByLabel('Title of the design')).toHaveValue('First of two')
  expect(await saved(page)).toEqual(first)

  await page.getByRole('button', { name: 'Start', exact: true }).click()
  await list.getByRole('button', { name: 'Remove First of two' }).click()
  await list.getByRole('button', { name: 'Keep it' }).click()
  await expect(list.getByRole('listitem')).toHaveCount(2)
  await list.getByRole('button', { name: 'Remove First of two' }).click()
  await list.getByRole('button', { name: 'Remove for good' }).click()
  await expect(list.getByRole('listitem')).toHaveCount(1)
  await page.reload()
  await expect(list.getByRole('listitem')).toHaveCount(1)
  await list.getByRole('button', { name: /^Second of two/ }).click()
  expect(await saved(page)).toEqual(second)
})

test('a change is kept even if the page goes away in the same breath', async ({ page }) => {
  await begin(page)
  await rename(page, 'In a hurry')
  await kept(page)
  await page.getByRole('button', { name: 'Add a stem' }).click()
  await page
    .getByRole('radio', { name: /^Dahlia/ })
    .first()
    .check()
  // Pressed and gone: the database gets no turn in between, nor does a wait of any length.
  await page.getByRole('button', { name: 'Put one in' }).evaluate((button: HTMLElement) => {
    button.click()
    location.reload()
  })
  await expect(page.getByRole('button', { name: /^In a hurry 1 stem,/ })).toBeVisible()
  await expect(page.getByRole('button', { name: /^In a hurry/ })).toHaveCount(1)
  expect(await page.evaluate(() => localStorage.length)).toBe(0)
})

test('what a second tab changes never reaches the design that the first one has open', async ({ page, context }) => {
  await openSample(page, 'Window-sill bowl')
  await rename(page, 'Open twice')
  await kept(page)
  const mine = await saved(page)

  const other = await context.newPage()
  await other.goto('/')
  await other.getByRole('button', { name: /^Open twice/ }).click()
  await expect(other.getByText('Open in another tab, which keeps it.')).toBeVisible()
  await rename(other, 'Written over')
  await other.getByTestId('elevation').press(']')
  await other.getByTestId('elevation').press('Delete')
  expect((await saved(other)).stems).toHaveLength(mine.stems.length - 1)
  await other.close({ runBeforeUnload: true })

  await page.bringToFront()
  expect(await saved(page)).toEqual(mine)
  await page.reload()
  await page.getByRole('button', { name: /^Open twice/ }).click()
  expect(await saved(page)).toEqual(mine)
})
