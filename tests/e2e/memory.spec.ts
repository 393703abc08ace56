import type { Page } from '@playwright/test'
import { type Held, watchHeaps } from './heaps.ts'
import { expect, test } from './helpers.ts'
import { openSample, saved } from './sheet.ts'

/** Commands of a round, and those of them that stay in the history: one less or two where a stem has the colour already. */
const COMMANDS = 20
const KEPT = 16
const LEAST_KEPT = 14
const ROUNDS = 50
/**
 * A step of the history holds the stems that changed, what was worked out for them in the page (their curves), and a list of
 * all stems by reference; a whole design of 39 stems would be several times this. Bytes; ours.
 */
const STEP = 5_000
/** What a page may hold more or less by chance: lists on screen, plates, words. Bytes; ours. */
const PAGE_SLACK = 1_500_000
/**
 * The painter may fill its cache of sprites (160 MB) and its tables of colours (96 MB); beside them it holds pictures under way, the
 * design, its code. The others hold a design and what was worked out for it. Bytes; ours.
 */
const PAINTER = (160 + 96) * 1024 * 1024 + 40_000_000
const OTHERS_SLACK = 4_000_000

const presses = async (page: Page, ...keys: string[]): Promise<void> => {
  for (const key of keys) await page.keyboard.press(key)
}

/** Twenty commands on the next stem: moves, mirrors, openness, colour, taken back and done again, and a turn of the sheet. */
const round = async (page: Page, n: number): Promise<void> => {
  const [there, back] = n % 2 === 0 ? ['ArrowUp', 'ArrowDown'] : ['ArrowDown', 'ArrowUp']
  const view = page.getByTestId('elevation')
  await view.focus()
  await presses(page, ']', there, 'Shift+ArrowLeft', `Alt+${there}`, 'm', 'm', 'Shift+ArrowRight', `Alt+${back}`)
  await page.getByRole('spinbutton', { name: /^open/ }).focus()
  await presses(page, back, there, back)
  const colour = page.getByRole('combobox', { name: 'colour' })
  for (const by of [0, 1, 2]) await colour.selectOption({ index: (n + by) % 3 })
  await view.focus()
  await presses(page, 'Shift+ArrowUp', 'Shift+ArrowDown', back, 'Control+z', 'Control+Shift+z', '.')
}

test('memory stays flat over a thousand edits: the page holds what changed, the workers no more than their caches', async ({
  page,
}) => {
  test.setTimeout(1_200_000)
  await openSample(page, 'Orchard supper')
  const heaps = await watchHeaps(page)
  const at: Held[] = []
  let before = await saved(page)
  for (let n = 0; n < ROUNDS; n++) {
    if (n === ROUNDS - 1) before = await saved(page)
    await round(page, n)
    if (n !== ROUNDS / 2 - 1 && n !== ROUNDS - 1) continue
    await expect(page.getByTestId('views')).toHaveAttribute('data-stills', 'fine fine')
    await expect(page.getByText(/kept in this browser/)).toBeVisible()
    at.push(await heaps())
  }
  const [middle, end] = at as [Held, Held]
  const steps = (ROUNDS / 2) * KEPT
  for (const held of at) {
    const description = Object.entries(held)
      .map(([who, bytes]) => `${who} ${(bytes / 1e6).toFixed(1)} MB`)
      .join(', ')
    test.info().annotations.push({ type: 'held', description })
  }
  expect(Object.keys(end).sort()).toEqual(['advice', 'page', 'painter', 'readings'])
  expect(end.page! - middle.page!, `page, bytes more after ${(COMMANDS * ROUNDS) / 2} more edits`).toBeLessThan(
    PAGE_SLACK + steps * STEP,
  )
  for (const [who, bytes] of Object.entries(end)) {
    if (who === 'painter') expect(bytes, who).toBeLessThan(PAINTER)
    else if (who !== 'page') expect(bytes - (middle[who] ?? 0), `${who}, bytes more`).toBeLessThan(OTHERS_SLACK)
  }

  // All of it was done, and is in the history: the last round taken back leaves what was before it.
  let taken = 0
  for (; taken < KEPT; taken++) {
    if (taken >= LEAST_KEPT && JSON.stringify(await saved(page)) === JSON.stringify(before)) break
    await page.getByTestId('elevation').focus()
    await page.keyboard.press('Control+z')
  }
  expect(taken).toBeGreaterThanOrEqual(LEAST_KEPT)
  expect(await saved(page)).toEqual(before)
})
