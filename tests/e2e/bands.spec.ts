import { expect, test, undoButton } from './helpers.ts'
import { openSample, saved } from './sheet.ts'

test('a person sets a band of their own, by keyboard, sees that the sheet says so, and takes it back', async ({
  page,
}) => {
  await openSample(page, 'Orchard supper')
  await page.getByRole('button', { name: /^Height to the vessel/ }).press('Enter')
  const row = page.getByRole('listitem').filter({ has: page.getByRole('button', { name: /^Height to the vessel/ }) })
  await row.getByRole('button', { name: 'Why' }).press('Enter')
  await row
    .getByRole('button', { name: /^Set your own band: Height/ })
    .first()
    .press('Enter')
  const form = row.getByRole('form').first()

  await test.step('what can’t be is said, and nothing changes', async () => {
    await form.getByLabel(/^at least/).fill('4')
    await form.getByLabel(/^at most/).fill('3')
    await form.getByLabel(/^at most/).press('Enter')
    await expect(form.getByRole('alert')).toHaveText('The least is more than the most.')
    expect((await saved(page)).bands).toBeUndefined()
  })
  await test.step('what can be is wanted at once', async () => {
    await form.getByLabel(/^at most/).fill('4,5')
    await form.getByLabel(/^at most/).press('Enter')
    await expect(page.getByText(/wanted, your own: 4\.00 to 4\.50 ×/i).first()).toBeVisible()
    await expect(page.getByText(/with 1 band of your own/)).toBeVisible()
    await expect.poll(async () => (await saved(page)).bands).toEqual({ 'proportion.heightRatio': [4, 4.5] })
    await expect(row.getByText(/your own band; the table has 1\.5–3/i).first()).toBeVisible()
  })
  await test.step('one step of undo', async () => {
    await undoButton(page).press('Enter')
    await expect(page.getByText(/of your own/)).toHaveCount(0)
    await expect.poll(async () => (await saved(page)).bands).toBeUndefined()
  })
})
