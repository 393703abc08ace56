import { readFileSync } from 'node:fs'
import { pathToFileURL } from 'node:url'
import AxeBuilder from '@axe-core/playwright'
import type { Browser, Page } from '@playwright/test'
import { promise } from '../promise.ts'
import { expect, test, undoButton } from './helpers.ts'
import { openSample, saved } from './sheet.ts'

const PHONE = { viewport: { width: 390, height: 844 }, hasTouch: true, deviceScaleFactor: 2 }

const clean = async (page: Page): Promise<void> => {
  const { violations } = await new AxeBuilder({ page })
    .withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'])
    .analyze()
  expect(violations.map((v) => `${v.id}: ${v.nodes.map((n) => n.target.join(' ')).join(', ')}`)).toEqual([])
}

/** The partner's own phone: nothing of ours is kept in it. What it asks for and what goes wrong is written down. */
const phone = async (browser: Browser, more: object = {}) => {
  const context = await browser.newContext({ ...PHONE, ...more })
  const [asked, errors]: [string[], string[]] = [[], []]
  context.on('request', (r) => asked.push(r.url()))
  context.on('weberror', (e) => errors.push(e.error().message))
  context.on('console', (m) => m.type() === 'error' && errors.push(m.text()))
  return { page: await context.newPage(), asked, errors, close: () => context.close() }
}

const drawn = (page: Page) => page.getByRole('img', { name: /Seen from/ })
/** The flowers themselves are painted as they stand now. */
const painted = (page: Page) => expect(drawn(page)).toHaveAttribute('data-level', 'fine', { timeout: 90_000 })
/** Mean colour of what is painted, of every fourth point. */
const colour = (page: Page): Promise<number[]> =>
  drawn(page).evaluate((e) => {
    const canvas = e as HTMLCanvasElement
    const { data } = canvas.getContext('2d')!.getImageData(0, 0, canvas.width, canvas.height)
    const sum = [0, 0, 0]
    let n = 0
    for (let i = 0; i < data.length; i += 16)
      if (data[i + 3]! > 200) {
        n += 1
        for (let k = 0; k < 3; k++) sum[k]! += data[i + k]!
      }
    return sum.map((s) => s / Math.max(1, n))
  })

/** To the picture sheet, palettes offered, and the link. */
const offer = async (page: Page, palettes: readonly string[], also: readonly RegExp[] = []): Promise<string> => {
  await page.getByRole('button', { name: '3 Picture' }).click()
  for (const name of palettes) await page.getByRole('checkbox', { name }).check()
  for (const name of also) await page.getByRole('checkbox', { name }).check()
  const link = page.getByLabel(/^The link, /)
  await expect(link).toHaveValue(/#show=2\./)
  return link.inputValue()
}

test('a link goes to the partner, who turns, chooses and writes back; the choice is put on the sheet in one step', async ({
  page,
  browser,
  watched,
}) => {
  await openSample(page, 'Orchard supper')
  const before = await saved(page)
  const link = await offer(page, ['Lantern walk', 'Straw and linen'], [/with a note from you/])
  await page.getByLabel('Your note').fill('Which one would you like?')
  await expect(page.getByLabel(/^The link, /)).not.toHaveValue(link)
  await clean(page)

  const partner = await phone(browser)
  const there = partner.page
  await there.goto(await page.getByLabel(/^The link, /).inputValue())
  await expect(there.getByRole('heading', { level: 1 })).toHaveText('Orchard supper')
  await expect(there.getByText('Which one would you like?')).toBeVisible()
  await expect(there.getByText(/cost/)).toHaveCount(0)
  await painted(there)
  await clean(there)

  await test.step('it turns: by a finger, by buttons, by keys', async () => {
    const box = (await drawn(there).boundingBox())!
    await there.mouse.move(box.x + 100, box.y + 100)
    await there.mouse.down()
    for (let i = 1; i <= 8; i++) await there.mouse.move(box.x + 100 + (box.width / 2) * (i / 8), box.y + 100)
    await there.mouse.up()
    await expect(drawn(there)).toHaveAttribute('data-turn', '90', { timeout: 60_000 })
    await expect(drawn(there)).toHaveAccessibleName(/Seen from the left\.$/)
    await there.getByRole('button', { name: 'Turn it to the left' }).click()
    await expect(drawn(there)).toHaveAttribute('data-turn', '75', { timeout: 60_000 })
    await there.getByRole('slider', { name: 'Turn it round' }).focus()
    for (let i = 0; i < 11; i++) await there.keyboard.press('ArrowLeft')
    await expect(drawn(there)).toHaveAttribute('data-turn', '352.5', { timeout: 60_000 })
    await expect(there.getByRole('slider')).toHaveAttribute('aria-valuetext', '353 degrees, seen from the front')
  })

  await test.step('another palette recolours it', async () => {
    await painted(there)
    const first = await colour(there)
    await there.getByRole('radio', { name: /^Straw and linen/ }).check()
    await expect.poll(async () => (await colour(there))[1]! - first[1]!, { timeout: 60_000 }).toBeGreaterThan(3)
    await expect(there.getByRole('listitem').filter({ hasText: 'Garden rose' })).toContainText('buttermilk')
  })

  await there.getByRole('button', { name: 'I like this one' }).click()
  await there.getByLabel('A note, if you like').fill('As if the fields were on the table.')
  await there.getByLabel('Your name, if you like').fill('Jo')
  const answer = there.getByLabel('The answer as a text')
  await expect(answer).toHaveValue(/from Jo\nI like this one: Straw and linen\nAs if the fields/)
  await clean(there)
  const text = await answer.inputValue()
  expect(partner.asked.filter((url) => !url.startsWith('blob:')).map((url) => new URL(url).origin)).toEqual(
    Array(partner.asked.filter((url) => !url.startsWith('blob:')).length).fill(new URL(page.url()).origin),
  )
  expect(
    partner.asked.some((url) => /tool|views|house\.worker/.test(url)),
    'nothing of the tool was loaded',
  ).toBe(false)
  expect(partner.errors).toEqual([])
  await partner.close()

  await page.getByLabel(/^Paste it here/).fill(`Hi!\n\n${text}\n\nSent from the train`)
  await page.getByRole('button', { name: 'Open an answer' }).click()
  const dialog = page.getByRole('dialog', { name: 'An answer from Jo' })
  await expect(dialog).toContainText('Jo likes Straw and linen for “Orchard supper”.')
  await expect(dialog).toContainText('As if the fields were on the table.')
  await expect(dialog.getByRole('img')).toHaveCount(2)
  await clean(page)
  await dialog.getByRole('button', { name: 'Put this palette on the sheet' }).click()
  await expect(dialog).toBeHidden()
  await page.getByRole('button', { name: '1 Drawing' }).click()
  expect((await saved(page)).palette.name).toBe('Straw and linen')
  await undoButton(page).click()
  expect(await saved(page)).toEqual(before)
  expect(watched.errors).toEqual([])
  promise('a link is opened on a phone, turned, answered; the answer is one step on the sheet, and undone exactly')
})

test('an answer by link finds its design; one for another design, or for a changed one, says so', async ({
  page,
  browser,
}) => {
  await openSample(page, 'Window-sill bowl')
  const link = await offer(page, ['Lantern walk'])
  const partner = await phone(browser, { permissions: ['clipboard-read', 'clipboard-write'] })
  await partner.page.goto(link)
  await partner.page.getByRole('radio', { name: /^Lantern walk/ }).check()
  await partner.page.getByRole('button', { name: 'I like this one' }).click()
  await partner.page.getByRole('button', { name: 'Copy as a link' }).click()
  await expect(partner.page.getByText('The link is copied.')).toBeVisible()
  const answer = await partner.page.evaluate(() => navigator.clipboard.readText())
  expect(partner.errors).toEqual([])
  await partner.close()

  await page.getByRole('button', { name: 'Start' }).click()
  await page.goto('about:blank')
  await page.goto(answer)
  const dialog = page.getByRole('dialog', { name: 'An answer' })
  await expect(dialog).toContainText('It is about “Window-sill bowl”.')
  expect(page.url()).not.toContain('#')
  await dialog.getByRole('button', { name: /Open “Window-sill bowl”/ }).click()
  await expect(dialog.getByRole('img', { name: 'The design in Lantern walk' })).toBeVisible()
  await dialog.getByRole('button', { name: 'Close' }).click()

  await test.step('a changed design', async () => {
    await expect(page.getByTestId('elevation')).toBeVisible()
    await expect(page.getByRole('button', { name: /What leads the eye/ })).toContainText('%')
    await page.getByTestId('elevation').press(']')
    await page.getByTestId('elevation').press('ArrowUp')
    await expect(undoButton(page)).not.toHaveAttribute('aria-disabled', 'true')
    await page.evaluate((hash) => {
      location.hash = hash
    }, new URL(answer).hash)
    await expect(dialog).toContainText('The design has changed since.')
    await dialog.getByRole('button', { name: 'Close' }).click()
  })
  await test.step('another design', async () => {
    await page.getByRole('button', { name: 'Start' }).click()
    await page.getByRole('button', { name: /Twenty-four small cups/ }).click()
    await expect(page.getByTestId('elevation')).toBeVisible()
    await page.evaluate((hash) => {
      location.hash = hash
    }, new URL(answer).hash)
    await expect(dialog).toContainText('This answer belongs to another design')
    await expect(dialog.getByRole('button', { name: /^Put this/ })).toHaveCount(0)
    await dialog.getByRole('button', { name: 'Close' }).click()
  })
  await test.step('one that lost its end', async () => {
    await page.evaluate(
      (hash) => {
        location.hash = hash
      },
      new URL(answer).hash.slice(0, -4),
    )
    await expect(page.getByRole('dialog', { name: 'This answer can’t be read' })).toContainText('It is not whole')
  })
})

test('the page as a file works without a connection and asks for nothing', async ({ page, browser }, info) => {
  await openSample(page, 'Window-sill bowl')
  await offer(page, ['Lantern walk'], [/with what the flowers cost/])
  const waiting = page.waitForEvent('download')
  await page.getByRole('button', { name: 'Save a page' }).click()
  const download = await waiting
  expect(download.suggestedFilename()).toBe('Window-sill bowl.html')
  const file = info.outputPath('page.html')
  await download.saveAs(file)

  const partner = await phone(browser, { offline: true })
  const there = partner.page
  await there.goto(pathToFileURL(file).href)
  await expect(there).toHaveTitle('Window-sill bowl')
  await painted(there)
  await expect(there.getByText('flowers cost')).toBeVisible()
  await expect(there.getByText(/at example prices/)).toBeVisible()
  await clean(there)
  // The letters that came with it are the ones that are used.
  expect(await there.evaluate(() => [...document.fonts].filter((f) => f.status === 'loaded').length)).toBeGreaterThan(1)
  await there.getByRole('radio', { name: /^Lantern walk/ }).check()
  await there.getByRole('button', { name: 'I like this one' }).click()
  await expect(there.getByLabel('The answer as a text')).toHaveValue(
    /I like this one: Lantern walk\npedicel-answer:2\./,
  )
  expect(partner.asked.filter((url) => !/^(file|blob|data):/.test(url))).toEqual([])
  expect(partner.errors).toEqual([])

  const refused = await there.evaluate(
    () =>
      new Promise((resolve) => {
        document.addEventListener('securitypolicyviolation', (e) => resolve(e.effectiveDirective), { once: true })
        const script = document.createElement('script')
        script.textContent = 'document.title = "run"'
        document.body.append(script)
        setTimeout(() => resolve('it ran'), 1000)
      }),
  )
  expect(refused).toMatch(/^script-src/)
  await partner.close()
  promise('the page as a file works offline from the disk: 0 requests; nothing else in it can run')
})

test('a picture carries its design only where one asks for it', async ({ page }, info) => {
  await openSample(page, 'Window-sill bowl')
  const before = await saved(page)
  await page.getByRole('button', { name: '3 Picture' }).click()
  const take = async (button: string, name: string): Promise<string> => {
    const waiting = page.waitForEvent('download', { timeout: 120_000 })
    await page.getByRole('button', { name: button }).click()
    const path = info.outputPath(name)
    await (await waiting).saveAs(path)
    return path
  }
  const editable = await take('Save an editable picture', 'editable.png')
  const ordinary = await take('Download the picture', 'ordinary.png')
  expect(readFileSync(ordinary).includes('peDs')).toBe(false)
  await page.getByRole('button', { name: '1 Drawing' }).click()
  await page.getByRole('button', { name: 'Start' }).click()
  await page.getByLabel('Open a design file').setInputFiles(ordinary)
  const dialog = page.getByRole('dialog')
  await expect(dialog).toContainText('is a picture that carries no design')
  await dialog.getByRole('button', { name: 'Leave it' }).click()
  await page.getByLabel('Open a design file').setInputFiles(editable)
  await expect(page.getByTestId('elevation')).toBeVisible()
  expect(await saved(page)).toEqual(before)
})

test('a link that was cut is refused in words', async ({ page }) => {
  await openSample(page, 'Window-sill bowl')
  const link = await offer(page, [])
  await page.goto('about:blank')
  await page.goto(link.slice(0, -20))
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('This can’t be shown')
  await expect(page.getByText('It is not whole')).toBeVisible()
  await clean(page)
})

test('on a narrow screen, with large text and at a desk nothing scrolls sideways', async ({ page }) => {
  await openSample(page, 'Orchard supper')
  const link = await offer(page, ['Lantern walk', 'Straw and linen', 'Late orchard'])
  await page.goto('about:blank')
  for (const [width, height] of [
    [320, 640],
    [390, 844],
    [844, 390],
    [768, 1024],
    [1440, 900],
  ] as const) {
    await page.setViewportSize({ width, height })
    await page.goto(link)
    await painted(page)
    const over = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth)
    expect(over, `${width} × ${height}`).toBeLessThanOrEqual(0)
    const box = (await drawn(page).boundingBox())!
    expect(box.width).toBeGreaterThan(250)
  }
})
