import AxeBuilder from '@axe-core/playwright'
import type { Page } from '@playwright/test'
import { vesselHalfWidth } from '../../src/geometry/index.ts'
import { type Drawn, drawVessel } from '../unit/outline/drawn.ts'
import { asPhoto, KITCHEN } from '../unit/outline/realistic.ts'
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
  const dialog = page.getByRole('dialog', { name: 'Your own vessel, from a photo' })
  // What is pasted or dropped before it is there goes elsewhere.
  await expect(dialog).toBeVisible()
  return dialog
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

/** How a photo comes in without the file button, and how it lies in the file. */
interface Giving {
  by: 'paste' | 'drop'
  /** Turned by a quarter in the file, with the EXIF orientation that turns it back. */
  onItsSide?: boolean
  /** Made so many times larger each way. */
  times?: number
}

/** Gives a JPEG of the photo to the page as a browser does: with an event that brings a file. */
const handOver = async (page: Page, photo: ReturnType<typeof asPhoto>, giving: Giving): Promise<void> => {
  const bytes = Buffer.from(photo.rgba.buffer).toString('base64')
  await page.evaluate(
    async ({ bytes, width, height, by, onItsSide = false, times = 1 }) => {
      const plain = document.createElement('canvas')
      plain.width = width
      plain.height = height
      const data = Uint8ClampedArray.from(atob(bytes), (c) => c.charCodeAt(0))
      plain.getContext('2d')!.putImageData(new ImageData(data, width, height), 0, 0)
      const canvas = document.createElement('canvas')
      const [w, h] = [width * times, height * times]
      canvas.width = onItsSide ? h : w
      canvas.height = onItsSide ? w : h
      const pen = canvas.getContext('2d')!
      if (onItsSide) {
        pen.translate(0, w)
        pen.rotate(-Math.PI / 2)
      }
      pen.drawImage(plain, 0, 0, w, h)
      const blob = await new Promise<Blob>((done) => canvas.toBlob((b) => done(b!), 'image/jpeg', 0.86))
      const jpeg = new Uint8Array(await blob.arrayBuffer())
      // An APP1 segment with one entry of TIFF, orientation 6: turn by a quarter with the clock (EXIF 2.3, 4.6.4).
      const exif = [255, 225, 0, 34, 69, 120, 105, 102, 0, 0, 77, 77, 0, 42, 0, 0, 0, 8, 0, 1, 1, 18, 0, 3, 0, 0, 0, 1]
      const tail = [0, 6, 0, 0, 0, 0, 0, 0]
      const parts = onItsSide ? [jpeg.slice(0, 2), new Uint8Array([...exif, ...tail]), jpeg.slice(2)] : [jpeg]
      const carried = new DataTransfer()
      carried.items.add(new File(parts, 'bowl.jpg', { type: 'image/jpeg' }))
      if (by === 'paste')
        dispatchEvent(new ClipboardEvent('paste', { clipboardData: carried, bubbles: true, cancelable: true }))
      else
        document
          .querySelector('.from-photo')!
          .dispatchEvent(new DragEvent('drop', { dataTransfer: carried, bubbles: true, cancelable: true }))
    },
    { bytes, width: photo.width, height: photo.height, ...giving },
  )
}

/** A bowl by the same shape as the one that is measured on the photo, given the width of its mouth. */
const expected = (mouth: number) => ({ width: mouth, height: (mouth * KITCHEN.tall) / (2 * KITCHEN.half) })

for (const [how, giving] of [
  ['pasted', { by: 'paste' }],
  ['dropped, on its side in the file as a phone saves it', { by: 'drop', onItsSide: true }],
  ['pasted, with 12 million pixels', { by: 'paste', times: 4.48 }],
] as [string, Giving][])
  test(`a photo as a phone takes it, ${how}, is measured within 3 %`, async ({ page }) => {
    await begin(page)
    const dialog = await openBench(page)
    await handOver(page, asPhoto(KITCHEN), giving)
    await expect(dialog.getByText(/^Traced\./)).toBeVisible({ timeout: 60_000 })
    if (giving.times)
      await expect(dialog.getByText('Of its 4,032 × 3,024 pixels it is looked at in 900 × 675')).toBeVisible()
    await dialog.getByRole('spinbutton', { name: /^it is, cm/ }).fill('20')
    await dialog.getByRole('spinbutton', { name: /^it is, cm/ }).press('Enter')
    await dialog.getByRole('button', { name: 'Put this vessel on the sheet' }).click()
    await page.getByRole('button', { name: 'Done' }).click()
    const { vessel } = await saved(page)
    const { width, height } = expected(200)
    expect(vessel.width).toBe(width)
    expect(Math.abs(vessel.height / height - 1)).toBeLessThan(0.03)
    for (const h of [0.15, 0.5, 0.85])
      expect(Math.abs(vesselHalfWidth(vessel, h) / (width / 2) - KITCHEN.profile(h))).toBeLessThan(0.03)
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
  await expect(dialog.getByText(/^Set by hand/)).toBeVisible()
  expect(Number(await base.inputValue())).toBeLessThan(wide - 5)

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
  await page.evaluate(() => {
    const carried = new DataTransfer()
    carried.items.add(new File(['roses'], 'notes.txt', { type: 'text/plain' }))
    dispatchEvent(new ClipboardEvent('paste', { clipboardData: carried, bubbles: true, cancelable: true }))
  })
  await expect(wrong).toContainText('notes.txt is no picture')
  await give(page, 'vast.jpg', 'image/jpeg', Buffer.alloc(41 * 1024 * 1024, 1))
  await expect(wrong).toContainText('vast.jpg has 41 MB')
  const tiny = { ...BOWL, width: 40, height: 40, foot: [20, 30] as [number, number], tall: 20, half: 10 }
  await give(page, 'tiny.png', 'image/png', await pngOf(page, tiny))
  await expect(wrong).toContainText('too small to trace')
  await give(page, 'bowl.png', 'image/png', await pngOf(page, BOWL))
  await expect(dialog.getByText(/^Traced\./)).toBeVisible()
  await expect(wrong).toHaveCount(0)
})
