import AxeBuilder from '@axe-core/playwright'
import { expect, type Page, test } from '@playwright/test'

const clean = async (page: Page): Promise<void> => {
  const { violations } = await new AxeBuilder({ page })
    .withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'])
    .analyze()
  expect(violations.map((v) => `${v.id}: ${v.nodes.map((n) => n.target.join(' ')).join(', ')}`)).toEqual([])
}

for (const [width, height] of [
  [1440, 900],
  [1024, 768],
  [390, 844],
] as const)
  test(`the rules of access hold at ${width} × ${height}`, async ({ page }) => {
    await page.setViewportSize({ width, height })
    await page.goto('/')
    await expect(page.getByRole('button', { name: /Orchard supper/ })).toBeEnabled()
    await clean(page)
    await page.getByRole('button', { name: /Orchard supper/ }).click()
    await expect(page.getByTestId('elevation')).toBeVisible()
    await clean(page)
    await page.getByRole('button', { name: /Palettes/ }).click()
    await expect(page.getByRole('button', { name: 'Put on the sheet' }).first()).toBeVisible()
    await clean(page)
    await page
      .getByRole('button', { name: /Picture/ })
      .first()
      .click()
    await expect(page.getByRole('button', { name: 'Download the picture' })).toBeVisible()
    await clean(page)
  })

test('at 320 px wide the page does not scroll sideways', async ({ page }) => {
  await page.setViewportSize({ width: 320, height: 700 })
  await page.goto('/')
  await page.getByRole('button', { name: /Window-sill bowl/ }).click()
  await expect(page.getByTestId('elevation')).toBeVisible()
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(320)
})
