import { deflateSync, crc32 as zlibCrc } from 'node:zlib'
import AxeBuilder from '@axe-core/playwright'
import type { Page } from '@playwright/test'
import { expect, test, undoButton } from './helpers.ts'
import { openSample, saved } from './sheet.ts'

type Rgb = readonly [number, number, number]

const chunk = (type: string, data: Buffer): Buffer => {
  const body = Buffer.concat([Buffer.from(type, 'latin1'), data])
  const head = Buffer.alloc(4)
  head.writeUInt32BE(data.length)
  const tail = Buffer.alloc(4)
  tail.writeUInt32BE(zlibCrc(body))
  return Buffer.concat([head, body, tail])
}

/** A PNG (8 bit, RGB) painted by a rule of its pixels. */
const png = (width: number, height: number, colour: (x: number, y: number) => Rgb): Buffer => {
  const head = Buffer.alloc(13)
  head.writeUInt32BE(width)
  head.writeUInt32BE(height, 4)
  head.set([8, 2, 0, 0, 0], 8)
  const rows = Buffer.concat(
    Array.from({ length: height }, (_, y) =>
      Buffer.from([0, ...Array.from({ length: width }, (_, x) => colour(x, y)).flat()]),
    ),
  )
  const parts = [chunk('IHDR', head), chunk('IDAT', deflateSync(rows)), chunk('IEND', Buffer.alloc(0))]
  return Buffer.concat([Buffer.from([0x89, 0x50, 0x4e, 0x47, 13, 10, 26, 10]), ...parts])
}

const ROSE: Rgb = [0xd9, 0x8c, 0x93]
const LEAF: Rgb = [0x55, 0x71, 0x3f]
const PLUM: Rgb = [0x5b, 0x2f, 0x4e]
const WHITE: Rgb = [252, 252, 250]
/** A bunch before a white wall: rose, then leaf, then plum by area. */
const bunch = png(400, 300, (x, y) => {
  const from = Math.hypot(x - 200, y - 150)
  return from < 70 ? ROSE : from < 90 ? LEAF : from < 100 ? PLUM : WHITE
})

const toPalettes = async (page: Page): Promise<void> => {
  await page.getByRole('button', { name: '2 Palettes' }).click()
  await expect(page.getByRole('button', { name: 'Put on the sheet' })).toHaveCount(3)
}

/** What stands on each drawing of the board, once all of them are as they stay. */
const drawings = async (page: Page): Promise<string[]> => {
  const all = page.locator('.palette-column canvas.small-view')
  await expect(page.locator('.palette-column canvas.small-view:not([data-shown="fine"])')).toHaveCount(0)
  return all.evaluateAll((canvases) => canvases.map((c) => (c as HTMLCanvasElement).toDataURL()))
}

/** Lets files fall on the sheet, as from a folder. */
const dropOn = async (page: Page, name: string, type: string, bytes: Buffer): Promise<void> => {
  const dataTransfer = await page.evaluateHandle(
    ([file, kind, content]) => {
      const data = new DataTransfer()
      const raw = Uint8Array.from(atob(content), (c) => c.charCodeAt(0))
      data.items.add(new File([raw], file, { type: kind }))
      return data
    },
    [name, type, bytes.toString('base64')] as const,
  )
  await page.locator('.palettes-sheet').dispatchEvent('drop', { dataTransfer })
}

const clean = async (page: Page): Promise<void> => {
  const { violations } = await new AxeBuilder({ page })
    .withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'])
    .analyze()
  expect(violations.map((v) => `${v.id}: ${v.nodes.map((n) => n.target.join(' ')).join(', ')}`)).toEqual([])
}

test('the light is chosen on the board: every drawing, strip and number follows, in one step', async ({ page }) => {
  await openSample(page, 'Orchard supper')
  await toPalettes(page)
  const columns = page.locator('.palette-column')
  await expect(columns).toHaveCount(4)
  await expect(page.locator('.palette-column[data-late]')).toHaveCount(0)
  await expect(page.getByRole('img', { name: /^By area seen/ })).toHaveCount(8)
  const before = await drawings(page)
  const first = columns.first()
  const rule = first.getByRole('img', { name: /^Flowers together/ })
  await expect(rule).toHaveAccessibleName(/(−?\d\.\d\d) by daylight, \1 by daylight$/)

  await page.getByRole('radio', { name: 'candles' }).check()
  await expect(page.getByRole('img', { name: /^By area seen, candles: apricot blush \d+ %/ })).toHaveCount(1)
  await expect(page.getByRole('img', { name: /^By area seen/ })).toHaveCount(12)
  await expect(rule).toHaveAccessibleName(/by candles, −?\d\.\d\d by daylight$/)
  await expect(first.getByText(/; by candles /).first()).toBeVisible()
  const after = await drawings(page)
  expect(after.filter((d, i) => d !== before[i])).toHaveLength(4)
  await clean(page)

  await page.getByRole('button', { name: '1 Drawing' }).click()
  expect((await saved(page)).setting.light).toBe('candle')
  await undoButton(page).click()
  expect((await saved(page)).setting.light).toBe('daylight')
})

test('which plants come in the colours: nearest first, with how near, and those that do not are named', async ({
  page,
}) => {
  await openSample(page, 'Orchard supper')
  await toPalettes(page)
  const now = page.locator('.palette-column').first()
  await expect(now).toContainText('every plant comes near its colour')
  await now.getByText('Plants in these colours').click()
  const focal = now.getByRole('region', { name: 'apricot blush, focal' })
  await expect(focal.getByRole('list', { name: 'in the design' })).toContainText(
    /Garden rose, peach ΔE 0\.\d, hardly to be told apart/,
  )
  await expect(focal.getByRole('list', { name: 'others' }).getByRole('listitem')).toHaveCount(3)
  await clean(page)
  await page.getByRole('button', { name: 'Choose palettes' }).click()
  await page.getByRole('checkbox', { name: 'First frost' }).check()
  await expect(page.locator('.palette-column')).toHaveCount(5)
  await page.getByRole('checkbox', { name: 'Allotment' }).uncheck()
  await expect(page.getByRole('region', { name: 'Allotment' })).toHaveCount(0)
})

test('a photo dropped becomes a palette: its parts are proposed and can be changed, it is put on and taken back', async ({
  page,
  watched,
}) => {
  await openSample(page, 'Orchard supper')
  const before = await saved(page)
  await toPalettes(page)
  const asked = watched.requests.length
  await dropOn(page, 'bunch.png', 'image/png', bunch)
  const photo = page.getByRole('region', { name: 'A palette from a photo' })
  const own = page.getByRole('region', { name: 'A palette of your own' })
  await expect(own.getByLabel('name', { exact: true })).toHaveValue('Of a photo')
  await expect(own.getByLabel('colour 1', { exact: true })).toHaveValue('#d98c93')
  await expect(own.getByLabel('colour 2', { exact: true })).toHaveValue('#55713f')
  await expect(own.getByLabel('colour 3', { exact: true })).toHaveValue('#5b2f4e')
  await expect(own.getByLabel('part of colour 1')).toHaveValue('focal')
  await expect(own.getByLabel('part of colour 2')).toHaveValue('greens')
  await expect(photo).toContainText('not stored, and goes nowhere')
  await expect(photo).toContainText(/Left out as the background: near white, \d+ % of the photo and 100 % of its edge/)
  await clean(page)

  await photo.getByRole('checkbox').check()
  await expect(own.getByLabel('colour 1', { exact: true })).toHaveValue('#fcfcfa')
  await photo.getByRole('checkbox').uncheck()
  await own.getByLabel('part of colour 3').selectOption('filler')
  await own.getByRole('button', { name: 'Keep it' }).click()
  await page.getByRole('region', { name: 'Of a photo', exact: true }).getByRole('button', { name: 'Put on' }).click()
  // Nothing but files of the house was fetched for it.
  expect(watched.requests.slice(asked).filter((url) => !/\.(js|css|woff2)(\?|$)/.test(url))).toEqual([])

  await page.getByRole('button', { name: '1 Drawing' }).click()
  const put = await saved(page)
  expect(put.palette).toEqual({
    name: 'Of a photo',
    slots: [
      { colour: '#d98c93', part: 'focal' },
      { colour: '#55713f', part: 'greens' },
      { colour: '#5b2f4e', part: 'filler' },
    ],
  })
  await undoButton(page).click()
  expect(await saved(page)).toEqual(before)
})

test('what is no photo is refused in words, and nothing changes', async ({ page }) => {
  await openSample(page, 'Orchard supper')
  await toPalettes(page)
  await page.getByRole('button', { name: 'From a photo' }).click()
  const photo = page.getByRole('region', { name: 'A palette from a photo' })
  const give = (name: string, mimeType: string, buffer: Buffer) =>
    photo.getByLabel('Choose a photo').setInputFiles({ name, mimeType, buffer })
  await give('list.txt', 'text/plain', Buffer.from('roses'))
  await expect(photo.getByRole('alert')).toHaveText(/^list\.txt is no picture/)
  await give('broken.png', 'image/png', bunch.subarray(0, 60))
  await expect(photo.getByRole('alert')).toHaveText(/^broken\.png can’t be read: it is broken/)
  await give('empty.png', 'image/png', Buffer.alloc(0))
  await expect(photo.getByRole('alert')).toHaveText('empty.png is empty.')
  const huge = await page.evaluateHandle(() => {
    const data = new DataTransfer()
    data.items.add(new File([new Uint8Array(41 * 1024 * 1024)], 'huge.png', { type: 'image/png' }))
    return data
  })
  await photo.locator('.photo-drop').dispatchEvent('drop', { dataTransfer: huge })
  await expect(photo.getByRole('alert')).toHaveText(/^huge\.png has 41 MB; more than 40 MB is too large/)
  await expect(page.getByRole('region', { name: 'A palette of your own' })).toHaveCount(0)
  await clean(page)
  await give('bunch.png', 'image/png', bunch)
  await expect(page.getByRole('region', { name: 'A palette of your own' })).toBeVisible()
  await expect(photo.getByRole('alert')).toHaveCount(0)
})

test('a palette of one’s own can be thrown away and put back', async ({ page }) => {
  await openSample(page, 'Window-sill bowl')
  await toPalettes(page)
  await page.getByRole('button', { name: 'Make one of your own' }).click()
  const own = page.getByRole('region', { name: 'A palette of your own' })
  await own.getByLabel('name', { exact: true }).fill('Mine')
  await own.getByRole('button', { name: 'Keep it' }).click()
  await page.getByRole('button', { name: 'Choose palettes' }).click()
  await page.getByRole('button', { name: 'Throw away Mine' }).click()
  await expect(page.getByRole('region', { name: 'Mine', exact: true })).toHaveCount(0)
  await page.getByRole('button', { name: 'Put it back' }).click()
  await expect(page.getByRole('region', { name: 'Mine', exact: true })).toBeVisible()
})

test('on a phone the palettes stand one under another, each with its own labels, and nothing goes sideways', async ({
  page,
}) => {
  await openSample(page, 'Window-sill bowl')
  await page.setViewportSize({ width: 390, height: 844 })
  await page
    .getByRole('navigation', { name: 'Sheets' })
    .getByRole('button', { name: /Palettes/ })
    .click()
  await page.getByRole('button', { name: 'From a photo' }).click()
  await page.getByLabel('Choose a photo').setInputFiles({ name: 'bunch.png', mimeType: 'image/png', buffer: bunch })
  await page.getByRole('button', { name: 'Keep it' }).click()
  await page.getByRole('button', { name: 'Choose palettes' }).click()
  await page.getByRole('radio', { name: 'warm lamps' }).check()
  const columns = page.locator('.palette-column')
  const [first, second] = [columns.nth(0), columns.nth(1)]
  await expect(first.getByText('red–green blind', { exact: true })).toBeVisible()
  await second.getByText('Plants in these colours').click()
  // Both at one moment: what is read of them still comes, and moves what stands below.
  const [a, b] = await columns.evaluateAll((all) => all.map((c) => c.getBoundingClientRect().toJSON() as DOMRect))
  expect(b!.x).toBe(a!.x)
  expect(b!.y).toBeGreaterThanOrEqual(a!.bottom)
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390)
  await clean(page)
})
