import { expect, type Page, test } from '@playwright/test'
import { saved } from './sheet.ts'

/** Goes on by Tab until the thing with this name has the focus; never touches the mouse. */
const tabTo = async (page: Page, role: Parameters<Page['getByRole']>[0], name: string | RegExp): Promise<void> => {
  const target = page.getByRole(role, { name }).first()
  await expect(target).toBeVisible()
  for (let i = 0; i < 250; i++) {
    if (await target.evaluate((e) => e === document.activeElement)) return
    await page.keyboard.press('Tab')
  }
  throw new Error(`no way by Tab to ${role} ${name}`)
}

const focusIsSomewhere = async (page: Page): Promise<void> => {
  expect(await page.evaluate(() => document.activeElement?.tagName)).not.toBe('BODY')
}

test('the job by keyboard alone: begin, place, move, undo, count, palette, picture', async ({ page }) => {
  await page.goto('/')
  await tabTo(page, 'button', 'Begin with an empty vessel')
  await page.keyboard.press('Enter')
  await expect(page.getByTestId('elevation')).toBeVisible()

  await tabTo(page, 'button', 'Add a stem')
  await page.keyboard.press('Enter')
  await tabTo(page, 'searchbox', 'find a plant')
  await page.keyboard.type('garden rose')
  await tabTo(page, 'radio', /Garden rose/)
  await page.keyboard.press('Space')
  await tabTo(page, 'button', 'Put one in')
  await page.keyboard.press('Enter')
  await page.keyboard.press('Enter')
  await focusIsSomewhere(page)
  await tabTo(page, 'button', 'Done adding')
  await page.keyboard.press('Enter')

  // The selected head moves by the arrows of a view, five millimetres at a time.
  await page.getByTestId('elevation').focus()
  await page.keyboard.press('[')
  await page.keyboard.press(']')
  await page.keyboard.press('ArrowRight')
  await page.keyboard.press('ArrowUp')
  await expect(page.getByRole('button', { name: /^Undo: .*moved/ })).toBeVisible()
  await focusIsSomewhere(page)
  const moved = await saved(page)
  await page.getByTestId('elevation').focus()
  await page.keyboard.press('Control+z')
  const before = await saved(page)
  const changed = moved.stems.filter((s, i) => s.tip[2] !== before.stems[i]?.tip[2])
  expect(changed).toHaveLength(1)
  expect((changed[0]?.tip[2] ?? 0) - (before.stems.find((s) => s.id === changed[0]?.id)?.tip[2] ?? 0)).toBe(5)
  await page.getByTestId('elevation').focus()
  await page.keyboard.press('Control+Shift+z')
  expect(await saved(page)).toEqual(moved)

  // A field, and the count in the list.
  await tabTo(page, 'spinbutton', /^up/)
  await page.keyboard.press('ArrowUp')
  expect((await saved(page)).stems).not.toEqual(moved.stems)
  await tabTo(page, 'spinbutton', /^in it/)
  await page.keyboard.press('ArrowUp')
  expect((await saved(page)).stems).toHaveLength(3)

  await tabTo(page, 'button', '2 Palettes')
  await page.keyboard.press('Enter')
  await tabTo(page, 'button', 'Put on the sheet')
  await page.keyboard.press('Enter')
  await tabTo(page, 'button', '3 Picture')
  await page.keyboard.press('Enter')
  await tabTo(page, 'button', 'Download the picture')
  const waiting = page.waitForEvent('download', { timeout: 120_000 })
  await page.keyboard.press('Enter')
  expect((await waiting).suggestedFilename()).toMatch(/\.png$/)
})
