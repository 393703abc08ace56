import { gzipSync } from 'node:zlib'
import { promise } from '../promise.ts'
import { expect, test } from './helpers.ts'

const KB = 1000

/** Names the first sheet may weigh, gzip: scripts of the page and its workers, and letters. */
const MOST = { scripts: 300 * KB, letters: 120 * KB }

test('the first sheet is there after at most 300 kB of scripts and 120 kB of letters', async ({ page }) => {
  const got = new Map<string, Promise<Buffer>>()
  page.context().on('response', (r) => {
    const { pathname } = new URL(r.url())
    // Advice is asked for once the first picture stands: on a slow machine that is before the end of this test.
    if (r.status() === 200 && /\.(js|woff2)$/.test(pathname) && !/advice\.worker/.test(pathname) && !got.has(r.url()))
      got.set(r.url(), r.body())
  })
  await page.goto('/')
  await page.getByRole('button', { name: /Orchard supper/ }).click()
  await expect(page.getByTestId('elevation')).toBeVisible()
  await expect(page.getByRole('button', { name: /What leads the eye/ })).toContainText('%')
  // Flowers stand on the canvas: paint, not paper alone, in the middle of the upper view.
  await expect
    .poll(() =>
      page.evaluate(() => {
        const canvas = document.querySelector<HTMLCanvasElement>('.views canvas')
        if (!canvas?.width) return 0
        const middle = canvas.getContext('2d')?.getImageData(canvas.width / 2, 0, 1, canvas.height / 2).data ?? []
        return new Set(Array.from({ length: middle.length / 4 }, (_, i) => middle.slice(4 * i, 4 * i + 3).join())).size
      }),
    )
    .toBeGreaterThan(40)

  const sizes = { scripts: 0, letters: 0 }
  const names: string[] = []
  for (const [url, body] of got) {
    const bytes = await body
    if (url.endsWith('.js')) sizes.scripts += gzipSync(bytes).length
    else sizes.letters += bytes.length
    names.push(new URL(url).pathname)
  }
  // The workers' own files are among them, or something was missed.
  for (const part of [/house\.worker/, /painter\.worker/, /readings\.worker/])
    expect(names.some((name) => part.test(name))).toBe(true)
  expect.soft(sizes.scripts).toBeLessThanOrEqual(MOST.scripts)
  expect.soft(sizes.letters).toBeLessThanOrEqual(MOST.letters)
  if (test.info().errors.length > 0) return
  promise(
    `first load: ${(sizes.scripts / KB).toFixed(0)} kB of scripts gzipped, workers included (at most 300), ` +
      `${(sizes.letters / KB).toFixed(0)} kB of letters (at most 120)`,
  )
})
