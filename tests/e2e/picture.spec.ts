import { readFileSync } from 'node:fs'
import type { Page } from '@playwright/test'
import { promise } from '../promise.ts'
import { expect, test } from './helpers.ts'
import { openSample } from './sheet.ts'

const toPicture = async (page: Page, sample: string): Promise<void> => {
  await openSample(page, sample)
  await page.getByRole('button', { name: '3 Picture' }).click()
  await expect(page.getByRole('img', { name: 'The picture to send' })).toBeVisible()
}
const taken = async (page: Page): Promise<{ name: string; bytes: Buffer }> => {
  const waiting = page.waitForEvent('download', { timeout: 150_000 })
  await page.getByRole('button', { name: 'Download the picture' }).click()
  const download = await waiting
  return { name: download.suggestedFilename(), bytes: readFileSync(await download.path()) }
}
const words = (page: Page): Promise<string> => page.getByLabel(/The same in words/).inputValue()

/** Width and height of IHDR, and dots per metre of pHYs (PNG specification, 11.2.1 and 11.3.4.3). */
const pngFacts = (png: Buffer) => {
  const at = png.indexOf('pHYs')
  return {
    signature: png.subarray(1, 4).toString(),
    size: [png.readUInt32BE(16), png.readUInt32BE(20)],
    perMetre: at > 0 ? png.readUInt32BE(at + 4) : 0,
  }
}

test('a PNG has exactly the dots that were promised, for each paper and for a phone', async ({ page }) => {
  await toPicture(page, 'Twenty-four small cups')
  const sizes = { a4: [2480, 3508], letter: [2550, 3300], phone: [1080, 1920] }
  for (const [name, size] of Object.entries(sizes)) {
    await page.getByLabel('size').selectOption(name)
    await expect(page.getByText(`${size[0]} by ${size[1]} dots`)).toBeVisible()
    const { bytes } = await taken(page)
    // 300 to the inch is 11,811 to the metre; a screen's picture says nothing of paper.
    const perMetre = name === 'phone' ? 0 : 11811
    expect(pngFacts(bytes)).toEqual({ signature: 'PNG', size, perMetre })
    expect(bytes.length).toBeGreaterThan(60_000)
  }
  promise('the picture has exactly the dots promised: A4 2480 x 3508, Letter 2550 x 3300, phone 1080 x 1920')
})

test('an SVG opens by itself and looks the same, and a PDF is as large as its paper', async ({ page, context }) => {
  await toPicture(page, 'Orchard supper')
  const said = await words(page)
  const png = await taken(page)
  await page.getByLabel('file').selectOption('svg')
  const svg = await taken(page)
  await page.getByLabel('file').selectOption('pdf')
  const pdf = await taken(page)
  expect([png.name, svg.name, pdf.name]).toEqual(['png', 'svg', 'pdf'].map((kind) => `Orchard supper.${kind}`))

  const text = svg.bytes.toString('utf8')
  expect(text).toContain('viewBox="0 0 2480 3508"')
  expect(text).toContain('<title id="title">Orchard supper</title>')
  expect(text).toContain(said.slice(0, 60))
  expect(text.match(/@font-face/g)?.length).toBe(3)

  const latin = pdf.bytes.toString('latin1')
  expect(latin).toContain('/MediaBox [0 0 595.276 841.89]')
  expect(latin.match(/\/FontFile2/g)?.length).toBe(5)
  expect(latin.startsWith('%PDF-1.7') && latin.trimEnd().endsWith('%%EOF')).toBe(true)

  // Both pictures in an empty page: the share of dots that differ by more than an edge's softness.
  const other = await context.newPage()
  const differing = await other.evaluate(
    async ([a, b]) => {
      const dots = async (href: string): Promise<Uint8ClampedArray> => {
        const image = new Image()
        image.src = href
        await image.decode()
        const canvas = document.createElement('canvas')
        canvas.width = 2480
        canvas.height = 3508
        const pen = canvas.getContext('2d', { willReadFrequently: true })!
        pen.drawImage(image, 0, 0, 2480, 3508)
        return pen.getImageData(0, 0, 2480, 3508).data
      }
      const [p, q] = [await dots(a!), await dots(b!)]
      let count = 0
      for (let i = 0; i < p.length; i += 4) if (Math.abs(p[i]! - q[i]!) > 48) count++
      return count / (p.length / 4)
    },
    [
      `data:image/png;base64,${png.bytes.toString('base64')}`,
      `data:image/svg+xml;base64,${svg.bytes.toString('base64')}`,
    ],
  )
  expect(differing).toBeLessThan(0.001)
  promise(`the SVG of the A4 sheet looks like its PNG: ${(100 * differing).toFixed(3)} % of dots differ`)
})

test('the picture is chosen: how it is shown, in which light, with or without cost; the words say the same', async ({
  page,
}) => {
  await toPicture(page, 'Orchard supper')
  expect(await words(page)).toContain('on its table, seen from a little above')
  await page.getByLabel('shown').selectOption('from the front and from above')
  await expect.poll(() => words(page)).toContain('shown from the front and from above')
  expect(await words(page)).not.toContain('All together')
  await page.getByLabel('with the cost').check()
  await expect.poll(() => words(page)).toContain('All together')
  // What was chosen stays while the page is open.
  await page.getByRole('button', { name: '1 Drawing' }).click()
  await page.getByRole('button', { name: '3 Picture' }).click()
  await expect(page.getByLabel('with the cost')).toBeChecked()
  await expect(page.getByLabel('shown')).toHaveValue('drawn')
  // A phone's picture is not a page.
  await page.getByLabel('file').selectOption('pdf')
  await page.getByLabel('size').selectOption('phone')
  await expect(page.getByLabel('file')).toHaveValue('png')
  await expect(page.getByLabel('shown')).toHaveCount(0)
})
