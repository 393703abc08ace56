import AxeBuilder from '@axe-core/playwright'
import type { Page } from '@playwright/test'
import { expect, focusIsSomewhere, tabToIt, test, undoButton } from './helpers.ts'
import { openSample, saved } from './sheet.ts'

const axe = async (page: Page): Promise<void> => {
  const { violations } = await new AxeBuilder({ page })
    .withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'])
    .analyze()
  expect(violations.map((v) => `${v.id}: ${v.nodes.map((n) => n.target.join(' ')).join(', ')}`)).toEqual([])
}

test('a person sets a band of their own by keys alone, sees that the sheet says so, and takes it back', async ({
  page,
}) => {
  await openSample(page, 'Orchard supper')
  await page.getByRole('button', { name: /^Height to the vessel/ }).press('Enter')
  const row = page.getByRole('listitem').filter({ has: page.getByRole('button', { name: /^Height to the vessel/ }) })
  const opens = row.getByRole('button', { name: 'set your own band: Height to the vessel' })
  const form = row.getByRole('form', { name: 'What is wanted: Height to the vessel' })
  const [least, most] = [form.getByLabel(/^at least, ×/), form.getByLabel(/^at most, ×/)]
  await tabToIt(page, opens)
  await page.keyboard.press('Enter')
  await expect(least).toBeFocused()

  await test.step('nothing changed is nothing set, and Escape lets it be', async () => {
    await page.keyboard.press('Enter')
    await expect(form).toBeHidden()
    await expect(opens).toBeFocused()
    await page.keyboard.press('Enter')
    await page.keyboard.press('Escape')
    await expect(form).toBeHidden()
    await expect(opens).toBeFocused()
    await expect(undoButton(page)).toHaveAttribute('aria-disabled', 'true')
  })
  await test.step('what can’t be is said, and nothing changes', async () => {
    await page.keyboard.press('Enter')
    for (const [low, high, words] of [
      ['4', '3', 'The least is more than the most.'],
      ['', '', 'One of the two, at least.'],
      ['tall', '3', 'A number, or nothing where there is no end.'],
      ['1', '500', 'From 0 to 100 ×.'],
    ] as const) {
      await least.fill(low)
      await most.fill(high)
      await page.keyboard.press('Enter')
      await expect(form.getByRole('alert')).toHaveText(words)
    }
    expect((await saved(page)).bands).toBeUndefined()
  })
  await test.step('what can be is wanted at once, and the sheet says whose it is', async () => {
    await least.fill('4')
    await most.fill('4,5')
    await most.press('Enter')
    await expect(opens).toBeFocused()
    await expect(row.getByText('wanted, your own: 4.00 to 4.50 ×')).toBeVisible()
    await expect(row.getByText(/your own band; the table has 1\.5–3 × \(Indian Council/i)).toBeVisible()
    await expect(page.getByText(/with 1 band of your own/)).toBeVisible()
    await expect(page.getByLabel('form, 1 own band')).toBeVisible()
    await expect.poll(async () => (await saved(page)).bands).toEqual({ 'proportion.heightRatio': [4, 4.5] })
    await page.getByRole('button', { name: /^Height to the vessel/ }).press('Enter')
    await expect(row.getByText('held against 1 band of your own')).toBeVisible()
    await page.getByRole('button', { name: /^Height to the vessel/ }).press('Enter')
  })
  await test.step('one step of undo', async () => {
    await undoButton(page).press('Enter')
    await expect(page.getByText(/of your own/)).toHaveCount(0)
    await expect(undoButton(page)).toHaveAttribute('aria-disabled', 'true')
    expect((await saved(page)).bands).toBeUndefined()
    await page.getByRole('button', { name: /^Redo/ }).press('Enter')
  })
  await test.step('back to the table', async () => {
    await row.getByRole('button', { name: 'back to the table of bands: Height to the vessel' }).press('Enter')
    await focusIsSomewhere(page)
    await expect(row.getByText('wanted: 1.50 to 3.00 ×')).toBeVisible()
    await expect(page.getByLabel('form', { exact: true })).toBeVisible()
    expect((await saved(page)).bands).toBeUndefined()
  })
})

for (const [width, height] of [
  [1440, 900],
  [1024, 768],
  [390, 844],
] as const)
  test(`own bands have room and keep the rules of access at ${width} × ${height}`, async ({ page }) => {
    await page.setViewportSize({ width, height })
    await page.goto('/')
    await page.getByRole('button', { name: /Orchard supper/ }).click()
    await expect(page.getByTestId('elevation')).toBeVisible()
    // Beside the drawing only from 1200 px on.
    if (width < 1200)
      await page
        .getByRole('navigation', { name: 'Below the drawing' })
        .getByRole('button', { name: /^Readings/ })
        .click()
    await page.getByRole('button', { name: /Balance of weight/ }).click()
    await page.getByRole('button', { name: 'Why', exact: true }).click()
    // A share is typed in hundredths; one of the others of the reading, behind Why.
    await page.getByRole('button', { name: 'set your own band: Height of the weight' }).click()
    const form = page.getByRole('form', { name: 'What is wanted: Height of the weight' })
    await axe(page)
    await form.getByLabel('at least, %').fill('30')
    await form.getByLabel('at most, %').fill('')
    await form.getByRole('button', { name: 'Want this' }).click()
    await expect(page.getByText(/^Wanted, your own: at least 30 %/)).toBeVisible()
    await expect(page.getByText(/Your own band; the table has 20–60 %/)).toBeVisible()
    await axe(page)
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width)
    await page.getByRole('button', { name: 'back to the table’s', exact: true }).click()
    await expect(page.getByText(/of your own/)).toHaveCount(0)
  })

test('on a phone the reasons lie over the drawing, fields stand free of what is over and under them, and there is a way back', async ({
  page,
}) => {
  await page.setViewportSize({ width: 390, height: 844 })
  await page.goto('/')
  await page.getByRole('button', { name: /Orchard supper/ }).click()
  const elevation = page.getByTestId('elevation')
  await expect(elevation).toBeVisible()
  const views = await page.getByTestId('views').boundingBox()
  await page.getByRole('button', { name: /Balance of weight/ }).click()
  const why = page.getByRole('button', { name: 'Why', exact: true })
  await why.click()
  await expect(elevation).toBeHidden()
  const room = await page.getByRole('region', { name: 'All the way round' }).evaluate((e) => {
    const panel = e.closest('.phone-readings')?.getBoundingClientRect()
    return panel ? panel.height : 0
  })
  expect(room).toBeGreaterThan(600)
  const all = page.getByRole('button', { name: /^set your own band/ })
  await expect(all).not.toHaveCount(0)
  for (const opens of await all.all()) {
    await opens.click()
    await expect(page.locator('.own-band input').first()).toBeVisible()
    const free = await page.locator('.own-band input').evaluateAll((fields) =>
      fields.every((field) => {
        // As far out as the ring round it.
        const { left, right, top, bottom } = field.getBoundingClientRect()
        const own = field.closest('form')
        return [
          [left + 2, top - 4],
          [right - 2, bottom + 4],
        ].every(([x, y]) => own?.contains(document.elementFromPoint(x!, y!)))
      }),
    )
    expect(free).toBe(true)
    await opens.click()
  }
  await page.getByRole('button', { name: 'Back to the drawing' }).press('Enter')
  await expect(elevation).toBeVisible()
  await expect(why).toBeFocused()
  await expect(why).toBeInViewport()
  // It has not been laid out anew.
  expect(await page.getByTestId('views').boundingBox()).toEqual(views)
})
