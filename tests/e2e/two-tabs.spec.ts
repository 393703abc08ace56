import { expect, test } from './helpers.ts'
import { openSample } from './sheet.ts'

test('a second tab on one design says so, and what is changed there can be kept as a new one', async ({
  page,
  context,
}) => {
  await openSample(page, 'Window-sill bowl')
  await page.getByLabel('Title of the design').fill('In two tabs')
  await page.getByLabel('Title of the design').press('Enter')
  await expect(page.getByText(/kept in this browser/)).toBeVisible()

  const other = await context.newPage()
  await other.goto('/')
  await other.getByRole('button', { name: /^In two tabs/ }).click()
  await expect(other.getByText('Open in another tab, which keeps it.')).toBeVisible()
  await other.getByLabel('Title of the design').fill('A copy beside it')
  await other.getByLabel('Title of the design').press('Enter')
  await other.getByRole('button', { name: 'Keep as a new design' }).click()
  await expect(other.getByText(/kept in this browser/)).toBeVisible()

  await page.reload()
  await expect(page.getByRole('button', { name: /^In two tabs/ })).toBeVisible()
  await expect(page.getByRole('button', { name: /^A copy beside it/ })).toBeVisible()
})
