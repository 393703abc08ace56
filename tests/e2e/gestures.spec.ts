import type { Page } from '@playwright/test'
import { expect, fingers, redoButton, test, undoButton } from './helpers.ts'
import { drag, onScreen, openSample, saved } from './sheet.ts'

/** The first dahlia of the sample, selected, and where its head is. */
const dahliaInHand = async (page: Page) => {
  await openSample(page, 'Orchard supper')
  const before = await saved(page)
  const stem = before.stems.find((s) => s.plant === 'dahlia')!
  await page.getByRole('button', { name: /^Open the \d+ of Dahlia/ }).click()
  await page.getByRole('button', { name: 'only this' }).first().click()
  await expect(page.getByRole('heading', { name: /^Stem \d+ dahlia/ })).toBeVisible()
  return { before, stem, at: (await onScreen(page, stem.tip)).elevation }
}
const head = async (page: Page, id: string) => (await saved(page)).stems.find((s) => s.id === id)!.tip
/** Whether a flower or leaf is painted here: they are all that has colour. */
const isColoured = (page: Page, { x, y }: { x: number; y: number }) =>
  page.evaluate(
    ([px, py]) => {
      const canvas = document.querySelector<HTMLCanvasElement>('.views canvas')!
      const box = canvas.getBoundingClientRect()
      const k = canvas.width / box.width
      const [r, g, b, a] = canvas.getContext('2d')!.getImageData((px! - box.x) * k, (py! - box.y) * k, 1, 1).data
      return a! > 0 && Math.max(r!, g!, b!) - Math.min(r!, g!, b!) > 12
    },
    [x, y],
  )
const across = (page: Page) => page.getByRole('spinbutton', { name: /^across/ })

test('a drag of forty moves is one step', async ({ page }) => {
  const { before, stem, at } = await dahliaInHand(page)
  await page.mouse.move(at.x, at.y)
  await page.mouse.down()
  for (let i = 1; i <= 40; i++) await page.mouse.move(at.x + i, at.y - (i % 7))
  await page.mouse.up()
  const moved = await saved(page)
  expect(moved.stems.find((s) => s.id === stem.id)!.tip[0]).toBeGreaterThan(stem.tip[0])
  expect(moved.stems.filter((s) => s.id !== stem.id)).toEqual(before.stems.filter((s) => s.id !== stem.id))
  await expect(undoButton(page)).toHaveText('Undo: dahlia moved')
  await undoButton(page).click()
  expect(await saved(page)).toEqual(before)
  await expect(undoButton(page)).toHaveAttribute('aria-disabled', 'true')
})

test('by the head of one of several selected all of them go, as one step; a crossing goes alone', async ({ page }) => {
  await openSample(page, 'Orchard supper')
  const before = await saved(page)
  const dahlias = before.stems.filter((s) => s.plant === 'dahlia')
  const others = before.stems.filter((s) => s.plant !== 'dahlia')
  await page
    .getByRole('table')
    .getByRole('button', { name: /^Dahlia/ })
    .click()
  await expect(page.getByRole('heading', { name: `${dahlias.length} stems` })).toBeVisible()
  const places = await Promise.all(dahlias.map((s) => onScreen(page, s.tip)))
  await drag(page, places[1]!.plan, { x: 30, y: -18 })
  const moved = await saved(page)
  const by = moved.stems.filter((s) => s.plant === 'dahlia').map((s, i) => s.tip.map((v, k) => v - dahlias[i]!.tip[k]!))
  for (const way of by) {
    expect(way[0]).toBeCloseTo(30 / places[0]!.scale, 0)
    expect(way[1]).toBeCloseTo(18 / places[0]!.scale, 0)
    for (const k of [0, 1, 2]) expect(way[k]).toBeCloseTo(by[0]![k]!, 6)
  }
  expect(moved.stems.filter((s) => s.plant !== 'dahlia')).toEqual(others)
  await expect(undoButton(page)).toHaveText(`Undo: ${dahlias.length} stems moved`)
  await undoButton(page).click()
  expect(await saved(page)).toEqual(before)

  const bars = await onScreen(page, [...dahlias[1]!.mouth, 0])
  await drag(page, bars.plan, { x: 10, y: 8 })
  const crossed = await saved(page)
  const changed = crossed.stems.filter((s, i) => JSON.stringify(s) !== JSON.stringify(before.stems[i]))
  expect(changed).toHaveLength(1)
  expect({ ...changed[0], mouth: 0 }).toEqual({ ...dahlias.find((s) => s.id === changed[0]!.id), mouth: 0 })
})

test('the ring turns the sheet all the way round, also where leaves lie over it', async ({ page }) => {
  await openSample(page, 'Twenty-four small cups')
  const before = await saved(page)
  // What stands where is read from the careful picture.
  await expect(page.getByTestId('views')).toHaveAttribute('data-stills', 'fine fine')
  const ring = (await page.getByTestId('ring').boundingBox())!
  const [cx, cy, r] = [ring.x + ring.width / 2, ring.y + ring.height / 2, ring.width / 2]
  const on = (degrees: number) => {
    const a = (degrees * Math.PI) / 180
    return { x: cx + r * Math.cos(a), y: cy - r * Math.sin(a) }
  }
  const heads = await Promise.all(before.stems.map(async (s) => (await onScreen(page, s.tip)).plan))
  const turned = async () => Number(/turned (\d+)°/.exec((await page.getByTestId('plan').textContent()) ?? '')?.[1])
  const free: number[] = []
  const covered: number[] = []
  for (let degrees = 0; degrees < 360; degrees += 1) {
    const at = on(degrees)
    if (heads.some((h) => Math.hypot(h.x - at.x, h.y - at.y) < 14)) continue
    if (await isColoured(page, at)) covered.push(degrees)
    else if (degrees % 45 === 0) free.push(degrees)
  }
  expect(covered.length).toBeGreaterThan(5)
  expect(free.length).toBeGreaterThan(1)
  for (const degrees of [...free, ...covered.slice(0, 12)]) {
    const [at, to] = [on(degrees), on(degrees + 4)]
    await page.mouse.move(at.x, at.y)
    await expect(page.getByTestId('views')).toHaveAttribute('data-over', 'ring')
    await drag(page, at, { x: to.x - at.x, y: to.y - at.y })
    await expect.poll(turned, `from ${degrees}°`).toBeGreaterThan(2)
    await page.getByRole('button', { name: '0°, turn the sheet to this side' }).first().click()
    await expect.poll(turned).toBe(0)
  }
  expect(await saved(page)).toEqual(before)
  await expect(undoButton(page)).toHaveAttribute('aria-disabled', 'true')
})

test('a drag that is given up leaves no trace, whatever ended it', async ({ page }) => {
  const { before, stem, at } = await dahliaInHand(page)
  // One step taken and taken back, so that there is something to do again that must stay.
  await page.getByTestId('elevation').press('ArrowUp')
  await undoButton(page).click()
  await expect(redoButton(page)).not.toHaveAttribute('aria-disabled', 'true')
  const shown = await across(page).inputValue()
  const touch = await fingers(page)

  const ways: [string, () => Promise<unknown>, () => Promise<unknown>][] = [
    ['Escape', () => page.keyboard.press('Escape'), () => page.mouse.up()],
    [
      'the window losing the focus',
      () => page.evaluate(() => window.dispatchEvent(new Event('blur'))),
      () => page.mouse.up(),
    ],
  ]
  for (const [what, giveUp, letGo] of ways)
    await test.step(`given up by ${what}`, async () => {
      await page.mouse.move(at.x, at.y)
      await page.mouse.down()
      for (let i = 1; i <= 10; i++) await page.mouse.move(at.x + 4 * i, at.y)
      await expect(across(page)).not.toHaveValue(shown)
      await giveUp()
      await expect(across(page)).toHaveValue(shown)
      // The hand moves on; nothing sticks to it.
      await page.mouse.move(at.x + 90, at.y - 30)
      await letGo()
      await page.mouse.move(at.x + 120, at.y - 30)
      await expect(across(page)).toHaveValue(shown)
    })

  const slide = async () => {
    await touch('touchStart', at)
    for (let i = 1; i <= 10; i++) await touch('touchMove', { x: at.x + 4 * i, y: at.y })
    await expect(across(page)).not.toHaveValue(shown)
  }
  await test.step('given up by the browser taking the finger away', async () => {
    await slide()
    await touch('touchCancel')
    await expect(across(page)).toHaveValue(shown)
  })
  await test.step('given up by a second finger', async () => {
    await slide()
    await touch('touchStart', { x: at.x + 40, y: at.y }, { x: at.x - 60, y: at.y + 40 })
    await expect(across(page)).toHaveValue(shown)
    await touch('touchMove', { x: at.x + 80, y: at.y }, { x: at.x - 60, y: at.y + 40 })
    await touch('touchEnd')
    await expect(across(page)).toHaveValue(shown)
  })

  expect(await saved(page)).toEqual(before)
  await expect(undoButton(page)).toHaveAttribute('aria-disabled', 'true')
  await expect(redoButton(page)).not.toHaveAttribute('aria-disabled', 'true')

  // And the next drag works as if nothing had been.
  await test.step('one finger moves the head afterwards', async () => {
    await slide()
    await touch('touchEnd')
    expect((await head(page, stem.id))[0]).toBeGreaterThan(stem.tip[0])
    await undoButton(page).click()
    expect(await saved(page)).toEqual(before)
  })
})

test('a drag that ends outside the window ends there', async ({ page }) => {
  const { stem, at } = await dahliaInHand(page)
  await page.mouse.move(at.x, at.y)
  await page.mouse.down()
  await page.mouse.move(at.x + 20, at.y)
  await page.mouse.move(at.x, -40)
  await page.mouse.up()
  const tip = await head(page, stem.id)
  expect(tip[2]).toBeGreaterThan(stem.tip[2])
  await page.mouse.move(at.x, at.y + 50)
  expect(await head(page, stem.id)).toEqual(tip)
})

test('selecting, turning and looking leave nothing to undo', async ({ page }) => {
  const { before, at } = await dahliaInHand(page)
  await page.mouse.click(at.x, at.y)
  await page.getByRole('button', { name: '+ 15°: turn anticlockwise' }).click()
  await page.getByRole('button', { name: /What leads the eye/ }).click()
  await page.getByRole('button', { name: 'Let go' }).click()
  await expect(undoButton(page)).toHaveAttribute('aria-disabled', 'true')
  expect(await saved(page)).toEqual(before)
})
