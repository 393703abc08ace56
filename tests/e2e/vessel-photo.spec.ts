import AxeBuilder from '@axe-core/playwright'
import type { Page } from '@playwright/test'
import { type Drawn, drawVessel } from '../unit/outline/drawn.ts'
import { expect, tabTo, test, typeInto, undoButton } from './helpers.ts'
import { begin, drag, saved } from './sheet.ts'

/** A bowl 300 pixels across and 200 high, its base 0.6 of its mouth. */
const BOWL: Drawn = {
  width: 560,
  height: 400,
  foot: [280, 320],
  tall: 200,
  half: 150,
  profile: (h) => 0.6 + 0.4 * Math.sqrt(1 - (1 - h) ** 2),
  table: [150, 118, 90],
  shadow: 0.7,
  grain: 4,
}

/** The drawing as a PNG file, by the browser’s own hand. */
const pngOf = async (page: Page, drawn: Drawn): Promise<Buffer> => {
  const { rgba, width, height } = drawVessel(drawn)
  const bytes = Buffer.from(rgba.buffer).toString('base64')
  const url = await page.evaluate(
    ({ bytes, width, height }) => {
      const canvas = document.createElement('canvas')
      canvas.width = width
      canvas.height = height
      const data = Uint8ClampedArray.from(atob(bytes), (c) => c.charCodeAt(0))
      canvas.getContext('2d')!.putImageData(new ImageData(data, width, height), 0, 0)
      return canvas.toDataURL('image/png')
    },
    { bytes, width, height },
  )
  return Buffer.from(url.slice(url.indexOf(',') + 1), 'base64')
}

const openBench = async (page: Page) => {
  await page.getByRole('button', { name: /^vessel/ }).click()
  await page.getByRole('button', { name: 'From a photo of your own' }).click()
  return page.getByRole('dialog', { name: 'Your own vessel, from a photo' })
}
const give = (page: Page, name: string, mimeType: string, buffer: Buffer) =>
  page.getByLabel('Choose a photo of the vessel').setInputFiles({ name, mimeType, buffer })

test('a photo of one’s own bowl becomes the vessel: traced, measured, put on the sheet, and taken back in one step', async ({
  page,
}) => {
  await begin(page)
  const before = await saved(page)
  const cell = page.getByRole('button', { name: /^vessel/ })
  const dialog = await openBench(page)
  await give(page, 'bowl.png', 'image/png', await pngOf(page, BOWL))
  await expect(dialog.getByText(/^Traced\./)).toBeVisible()
  await dialog.getByRole('spinbutton', { name: /^it is, cm/ }).fill('18')
  await dialog.getByRole('spinbutton', { name: /^it is, cm/ }).press('Enter')
  await expect(dialog.getByText(/^(17\.9|18\.0|18\.1) cm across the mouth, (11\.[89]|12\.[0-2]) cm high/)).toBeVisible()
  expect((await new AxeBuilder({ page }).include('dialog').analyze()).violations).toEqual([])

  await dialog.getByRole('button', { name: 'Put this vessel on the sheet' }).click()
  await expect(page.getByRole('dialog', { name: 'Vessel', exact: true })).toBeVisible()
  await expect(page.getByRole('spinbutton', { name: /^point 1: width|^width, point 1/ }).first()).toBeVisible()
  await page.getByRole('button', { name: 'Done' }).click()
  await expect(cell).toContainText(/⌀ 18(\.0)? × 1[12](\.\d)? cm/)

  const { vessel } = await saved(page)
  expect(vessel).toMatchObject({ width: 180, depth: 180, material: before.vessel.material, wall: before.vessel.wall })
  expect(Math.abs(vessel.height - 120)).toBeLessThan(2.4)
  const at = (h: number): number => {
    const profile = vessel.profile!
    const i = Math.max(
      1,
      profile.findIndex((p) => p[0] >= h),
    )
    const [[h0, w0], [h1, w1]] = [profile[i - 1]!, profile[i]!]
    return w0 + ((w1 - w0) * (h - h0)) / (h1 - h0)
  }
  for (const h of [0.2, 0.5, 0.8]) expect(Math.abs(at(h) - BOWL.profile(h))).toBeLessThan(0.04)

  await undoButton(page).click()
  expect(await saved(page)).toEqual(before)
})

test('marks and sides go by keys, by numbers and by the pointer alike', async ({ page }) => {
  await begin(page)
  const dialog = await openBench(page)
  await give(page, 'bowl.png', 'image/png', await pngOf(page, BOWL))
  await expect(dialog.getByText(/^Traced\./)).toBeVisible()

  const x = dialog.getByRole('spinbutton', { name: 'across, rim, left' })
  const from = Number(await x.inputValue())
  await tabTo(page, 'button', 'rim, left')
  await page.keyboard.press('Shift+ArrowLeft')
  await page.keyboard.press('ArrowLeft')
  await expect(x).toHaveValue((from - 11).toFixed(1))
  await typeInto(page, 'across, rim, left', from)
  await expect(dialog.getByText(/^Traced\./)).toBeVisible()

  const base = dialog.getByRole('spinbutton', { name: 'width, side at the base' })
  const wide = Number(await base.inputValue())
  const box = (await dialog.getByRole('button', { name: 'side at the base', exact: true }).boundingBox())!
  await drag(page, { x: box.x + box.width / 2, y: box.y + box.height / 2 }, { x: -20, y: 0 })
  expect(Number(await base.inputValue())).toBeLessThan(wide - 5)
  await expect(dialog.getByText(/^Set by hand/)).toBeVisible()

  const rows = dialog.getByRole('spinbutton', { name: /^width, side/ })
  const n = await rows.count()
  await dialog.getByRole('button', { name: '+ handle above: side at the base' }).click()
  await expect(rows).toHaveCount(n + 1)
  await dialog.getByRole('button', { name: /^take out side 2/ }).click()
  await expect(rows).toHaveCount(n)
  await dialog.getByRole('button', { name: 'Trace it again' }).click()
  await expect(base).toHaveValue(wide.toFixed(1))
  await page.keyboard.press('Escape')
  await expect(page.getByRole('dialog', { name: 'Vessel', exact: true })).toBeVisible()
})

test('what is no picture, broken, empty or too small is refused in words, and the bench stays as it was', async ({
  page,
}) => {
  await begin(page)
  const dialog = await openBench(page)
  const wrong = dialog.getByRole('alert')
  await give(page, 'list.txt', 'text/plain', Buffer.from('roses'))
  await expect(wrong).toContainText('list.txt is no picture')
  await give(page, 'torn.png', 'image/png', Buffer.from('89504e470d0a', 'hex'))
  await expect(wrong).toContainText('torn.png can’t be read')
  await give(page, 'none.png', 'image/png', Buffer.alloc(0))
  await expect(wrong).toContainText('none.png is empty')
  const tiny = { ...BOWL, width: 40, height: 40, foot: [20, 30] as [number, number], tall: 20, half: 10 }
  await give(page, 'tiny.png', 'image/png', await pngOf(page, tiny))
  await expect(wrong).toContainText('too small to trace')
  await give(page, 'bowl.png', 'image/png', await pngOf(page, BOWL))
  await expect(dialog.getByText(/^Traced\./)).toBeVisible()
  await expect(wrong).toHaveCount(0)
})
