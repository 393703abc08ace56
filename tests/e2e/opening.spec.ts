import { expect, test } from '@playwright/test'
import { openSample, saved } from './sheet.ts'

test('a file with bad parts says what is wrong and changes nothing before one agrees', async ({ page }) => {
  await openSample(page, 'Window-sill bowl')
  const before = await saved(page)
  const bad = structuredClone(before) as unknown as { title: string; stems: { tip: unknown[] }[] }
  bad.title = 'Damaged'
  bad.stems[3]!.tip[2] = 'high'
  const file = { name: 'damaged.json', mimeType: 'application/json', buffer: Buffer.from(JSON.stringify(bad)) }
  const input = page.getByLabel('Open a design file')

  await input.setInputFiles(file)
  const dialog = page.getByRole('dialog')
  await expect(dialog).toContainText('stems[3].tip[2]')
  await expect(dialog).toContainText('expected a number in mm, got "high"')
  await dialog.getByRole('button', { name: 'Leave it' }).click()
  expect(await saved(page)).toEqual(before)

  await input.setInputFiles(file)
  await dialog.getByRole('button', { name: 'Open what is good' }).click()
  await expect(page.getByLabel('Title of the design')).toHaveValue('Damaged')
  expect((await saved(page)).stems).toHaveLength(before.stems.length - 1)
})

for (const [what, text] of [
  ['an empty file', ''],
  ['a file of something else', '{"a": 1}'],
  ['half a file', '{"format": "pedicel-arrangement", "version": 1, "stems": ['],
] as const)
  test(`${what} is refused in words, and the work stays`, async ({ page }) => {
    await openSample(page, 'Window-sill bowl')
    const before = await saved(page)
    await page
      .getByLabel('Open a design file')
      .setInputFiles({ name: 'x.json', mimeType: 'application/json', buffer: Buffer.from(text) })
    const dialog = page.getByRole('dialog')
    await expect(dialog).toContainText('Your work is as it was')
    await dialog.getByRole('button', { name: 'Leave it' }).click()
    expect(await saved(page)).toEqual(before)
  })

test('nothing is asked of any other site, and nothing goes wrong in silence', async ({ page, baseURL }) => {
  const elsewhere: string[] = []
  const errors: string[] = []
  page.on('request', (r) => {
    if (/^https?:/.test(r.url()) && !r.url().startsWith(baseURL ?? '')) elsewhere.push(r.url())
  })
  page.on('pageerror', (e) => errors.push(e.message))
  page.on('console', (m) => m.type() === 'error' && errors.push(m.text()))
  await openSample(page, 'Orchard supper')
  await page.getByRole('button', { name: '2 Palettes' }).click()
  await expect(page.getByRole('button', { name: 'Put on the sheet' }).first()).toBeVisible()
  expect(elsewhere).toEqual([])
  expect(errors).toEqual([])
})
