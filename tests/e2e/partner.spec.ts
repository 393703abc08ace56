import { readFileSync, writeFileSync } from 'node:fs'
import { pathToFileURL } from 'node:url'
import { inflateRawSync } from 'node:zlib'
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
  // Names of colours come with the palettes of the house, and go along.
  await expect(page.getByRole('group', { name: /^Palettes to choose from/ }).getByRole('checkbox')).not.toHaveCount(0)
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
  await expect(page.getByLabel(/^The link, /)).toHaveValue(/#show=2\./)
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
  await expect(partner.page.getByLabel('The answer as a text')).toHaveValue(/I like this one: Lantern walk/)
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
  // Later than Safari 16.4 or Firefox 115 by MDN's browser-compat-data of August 2026.
  expect(readFileSync(file, 'utf8')).not.toMatch(
    /withResolvers|groupBy\(|fromAsync|isWellFormed|requestIdleCallback|:has\(|light-dark\(|field-sizing|@starting-style|\.fromBase64|new Set\([^)]*\)\.(union|intersection|difference)\(/,
  )

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

/** What letters of a link hold, unpacked by Node's own hand. */
const held = (letters: string): string =>
  inflateRawSync(Buffer.from(letters.split('.').at(-1)!, 'base64url')).toString('utf8')

/** Saves the page for the partner. @returns where it lies */
const savedPage = async (page: Page, path: string): Promise<string> => {
  const waiting = page.waitForEvent('download')
  await page.getByRole('button', { name: 'Save a page' }).click()
  await (await waiting).saveAs(path)
  return path
}
const inPage = (html: string): string => /name="pedicel-show" content="([^"]+)"/.exec(html)![1]!

test('a note that was written and unticked again, and prices, are in no byte of link or page', async ({
  page,
}, info) => {
  await openSample(page, 'Window-sill bowl')
  await offer(page, [])
  const link = async (): Promise<string> => held(await page.getByLabel(/^The link, /).inputValue())
  await page.getByRole('checkbox', { name: /with a note from you/ }).check()
  await page.getByLabel('Your note').fill('Quince at noon, 7 Zz')
  await expect.poll(link).toContain('Quince at noon, 7 Zz')
  await page.getByRole('checkbox', { name: /with a note from you/ }).uncheck()
  await expect.poll(link).not.toContain('7 Zz')
  const html = readFileSync(await savedPage(page, info.outputPath('page.html')), 'utf8')
  expect(html).not.toContain('at noon, 7 Zz')
  for (const text of [await link(), held(inPage(html))]) {
    expect(text).toContain('"stems"')
    expect(text).not.toMatch(/7 Zz|"note"|"prices"|perBunch/)
  }
})

test('with a finger on the glass it shows flowers all the way round', async ({ page, browser }) => {
  await openSample(page, 'Window-sill bowl')
  const link = await offer(page, [])
  const partner = await phone(browser, { isMobile: true })
  const there = partner.page
  await there.goto(link)
  await painted(there)
  const finger = await there.context().newCDPSession(there)
  const box = (await drawn(there).boundingBox())!
  const touch = (type: 'touchStart' | 'touchMove' | 'touchEnd', x = 0) =>
    finger.send('Input.dispatchTouchEvent', {
      type,
      touchPoints: type === 'touchEnd' ? [] : [{ x: box.x + x, y: box.y + box.height / 2 }],
    })
  const levels = new Set<string>()
  for (const stroke of [1, 2]) {
    await touch('touchStart', 2)
    for (let i = 1; i <= 48; i++) {
      await touch('touchMove', 2 + ((box.width - 4) * i) / 48)
      levels.add((await drawn(there).getAttribute('data-level'))!)
    }
    await touch('touchEnd')
    expect(stroke).toBeGreaterThan(0)
  }
  expect([...levels]).not.toContain('sketch')
  await expect(there.getByRole('slider')).toHaveAttribute('aria-valuetext', /seen from the front$/)
  await painted(there)
  expect(partner.errors).toEqual([])
  await partner.close()
})

test('a page that was cut or changed on its way shows the same design or says so, never nothing', async ({
  page,
  browser,
}, info) => {
  await openSample(page, 'Window-sill bowl')
  await offer(page, [])
  const html = readFileSync(await savedPage(page, info.outputPath('page.html')))
  const at = (mark: string, by: number): number => html.indexOf(mark) + by
  const flip = (n: number): Buffer => {
    const bytes = Buffer.from(html)
    bytes[n]! ^= 1
    return bytes
  }
  const broken: [string, Buffer][] = [
    ['cut in its letters', html.subarray(0, at('<style>', 9000))],
    ['cut in its script', html.subarray(0, html.length - 5000)],
    ['changed in its script', flip(at('<script>', 60_000))],
    ['changed in its policy', flip(at("script-src 'sha256-", 25))],
    ['changed in its styles', flip(at('<style>', 500))],
    ['changed in its design', flip(at('pedicel-show', 90))],
  ]
  for (const [what, bytes] of broken) {
    const file = info.outputPath('broken.html')
    writeFileSync(file, bytes)
    const partner = await phone(browser, { offline: true })
    await partner.page.goto(pathToFileURL(file).href)
    const told = partner.page.getByText(/was cut or changed on its way|It is not whole/)
    await expect(told.or(drawn(partner.page)).first(), what).toBeVisible({ timeout: 30_000 })
    if (await drawn(partner.page).isVisible())
      await expect(partner.page.getByRole('heading', { level: 1 }), what).toHaveText('Window-sill bowl')
    await partner.close()
  }
})

test('a browser without workers, clipboard or sharing does the same; one that can’t unpack says which can', async ({
  page,
  browser,
}) => {
  await openSample(page, 'Window-sill bowl')
  const link = await offer(page, [])
  const plain = await phone(browser)
  await plain.page.addInitScript(() => {
    for (const name of ['Worker', 'OffscreenCanvas', 'structuredClone']) Reflect.deleteProperty(globalThis, name)
    for (const name of ['clipboard', 'share']) Object.defineProperty(navigator, name, { value: undefined })
  })
  await plain.page.goto(link)
  await painted(plain.page)
  await plain.page.getByRole('button', { name: 'I like this one' }).click()
  await plain.page.getByRole('button', { name: 'Copy the text' }).click()
  await expect(plain.page.getByText(/The text is copied|mark the text and copy it by hand/)).toBeVisible()
  expect(plain.errors).toEqual([])
  await plain.close()

  const old = await phone(browser)
  await old.page.addInitScript(() => Reflect.deleteProperty(globalThis, 'DecompressionStream'))
  await old.page.goto(link)
  await expect(old.page.getByRole('heading', { level: 1 })).toHaveText('This can’t be shown')
  await expect(
    old.page.getByText(/too old for it\. Chrome from 103 on, Firefox from 113 and Safari from 16\.4/),
  ).toBeVisible()
  await old.close()
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
  for (const [width, height] of [
    [320, 640],
    [390, 844],
    [844, 390],
    [768, 1024],
    [1440, 900],
  ] as const) {
    await page.setViewportSize({ width, height })
    // Gone to again from itself it would not be loaded anew.
    await page.goto('about:blank')
    await page.goto(link)
    await painted(page)
    const over = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth)
    expect(over, `${width} × ${height}`).toBeLessThanOrEqual(0)
    const box = (await drawn(page).boundingBox())!
    expect(box.width).toBeGreaterThan(250)
  }
})
