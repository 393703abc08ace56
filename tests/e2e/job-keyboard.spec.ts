import { readFileSync } from 'node:fs'
import type { Locator, Page } from '@playwright/test'
import type { Arrangement, Stem } from '../../src/arrangement/index.ts'
import { expect, focusIsSomewhere, tabTo, tabToIt, test, typeInto } from './helpers.ts'
import { begin, onScreen, saved, take } from './sheet.ts'

/** The open design, saved by key; the keyboard then stands where it stood. That Tab leads to the button is tried once. */
const savedByKey = async (page: Page): Promise<Arrangement> => {
  const before = await page.evaluateHandle(() => document.activeElement as HTMLElement)
  await page.getByRole('button', { name: 'Save a file' }).focus()
  const waiting = page.waitForEvent('download')
  await page.keyboard.press('Enter')
  const text = readFileSync(await (await waiting).path(), 'utf8')
  await focusIsSomewhere(page)
  await before.evaluate((e) => e.focus())
  return JSON.parse(text) as Arrangement
}
/** Takes a plant in hand by search, arrow or space, and leaves the hand on its radio. */
const takeByKey = async (page: Page, plant: string): Promise<void> => {
  await tabTo(page, 'searchbox', 'find a plant')
  await page.keyboard.press('Control+a')
  await page.keyboard.type(plant)
  const radio = page.getByRole('radio', { name: new RegExp(plant, 'i') }).first()
  await tabToIt(page, radio)
  if (!(await radio.isChecked())) await page.keyboard.press('Space')
  await expect(radio).toBeChecked()
}
const key = async (page: Page, ...keys: string[]): Promise<void> => {
  for (const k of keys) {
    await page.keyboard.press(k)
    await focusIsSomewhere(page)
  }
}
const view = (page: Page, name: 'elevation' | 'plan'): Locator => page.getByTestId(name)

test('the same job by keyboard alone', async ({ page }) => {
  await page.goto('/')
  await tabTo(page, 'button', 'Begin with an empty vessel')
  await page.keyboard.press('Enter')
  await expect(view(page, 'elevation')).toBeVisible()

  await test.step('a vessel, and its height by hand', async () => {
    await tabTo(page, 'button', /^vessel/)
    await key(page, 'Enter')
    await expect(page.getByRole('dialog', { name: 'Vessel' })).toBeVisible()
    await tabTo(page, 'button', /Footed bowl/i)
    await key(page, 'Enter')
    await typeInto(page, 'height, cm', 11)
    await key(page, 'Escape')
    await expect(page.getByRole('dialog')).toBeHidden()
    await focusIsSomewhere(page)
    await tabTo(page, 'button', 'Save a file')
    expect((await savedByKey(page)).vessel.height).toBe(110)
  })

  await test.step('stems from the list, and at the cross in either view', async () => {
    await tabTo(page, 'button', 'Add a stem')
    await key(page, 'Enter')
    await takeByKey(page, 'Garden rose')
    await tabTo(page, 'button', 'Put one in')
    await key(page, 'Enter', 'Enter')
    await takeByKey(page, 'Dahlia')
    await key(page, 'Enter')
    await takeByKey(page, 'Veronica')
    await tabToIt(page, view(page, 'elevation'))
    await key(page, 'ArrowRight', 'ArrowRight', 'ArrowUp', 'Shift+ArrowUp', 'Enter')
    await tabToIt(page, view(page, 'plan'))
    await key(page, 'ArrowLeft', 'ArrowUp', 'Enter', 'Escape')
    const { stems } = await savedByKey(page)
    expect(stems.map((s) => s.plant)).toEqual(['rose-garden', 'rose-garden', 'dahlia', 'veronica', 'veronica'])
    expect([stems[3]?.tip[0], stems[3]?.tip[2]]).toEqual([10, 126])
    expect([stems[4]?.tip[0], stems[4]?.tip[1]]).toEqual([-5, -25])
    await tabTo(page, 'button', 'Done adding')
    await key(page, 'Enter')
  })

  const start = await savedByKey(page)
  const steps: Arrangement[] = [start]
  const step = async (what: string, keys: string[], change: (now: Stem[], before: Stem[]) => void) =>
    test.step(what, async () => {
      await key(page, ...keys)
      const now = await savedByKey(page)
      change(now.stems, steps.at(-1)!.stems)
      steps.push(now)
    })
  await tabToIt(page, view(page, 'elevation'))
  // The last one placed is selected; one on comes round to the first.
  await key(page, ']')
  await expect(page.getByRole('heading', { name: 'Stem 1 garden rose' })).toBeVisible()
  await step('moved by an arrow, 5 mm', ['ArrowUp'], (now, before) => {
    expect(now[0]?.tip[2]).toBe(before[0]!.tip[2] + 5)
    expect(now.slice(1)).toEqual(before.slice(1))
  })
  await step('moved by 1 mm', ['Shift+ArrowLeft'], (now, before) => expect(now[0]?.tip[0]).toBe(before[0]!.tip[0] - 1))
  await step('moved along the eye', ['Alt+ArrowUp'], (now, before) =>
    expect(now[0]?.tip[1]).toBe(before[0]!.tip[1] + 5),
  )
  await step('doubled', ['d'], (now, before) => {
    expect(now).toHaveLength(before.length + 1)
    expect(now.at(-1)?.plant).toBe('rose-garden')
  })
  await step('mirrored', ['m'], (now, before) => expect(now.at(-1)?.tip[0]).toBe(-before.at(-1)!.tip[0]))
  await step('taken out', ['Delete'], (now, before) => expect(now).toEqual(before.slice(0, -1)))

  await test.step('taken back to the start, and done again', async () => {
    for (const document of steps.slice(0, -1).reverse()) {
      await key(page, 'Control+z')
      expect(await savedByKey(page)).toEqual(document)
    }
    for (let i = 1; i < steps.length; i++) await key(page, i % 2 ? 'Control+Shift+z' : 'Control+y')
    expect(await savedByKey(page)).toEqual(steps.at(-1))
  })

  await test.step('turned by keys; the design stays', async () => {
    await key(page, '.', '.', ',')
    await expect(view(page, 'plan')).toContainText('turned 5°')
    expect(await savedByKey(page)).toEqual(steps.at(-1))
  })

  await test.step('fields, several at once, and the count in the list', async () => {
    await tabTo(page, 'button', /^Open the 2 of Garden rose/)
    await key(page, 'Enter')
    await tabTo(page, 'checkbox', /^1: cut/)
    if (!(await page.getByRole('checkbox', { name: /^1: cut/ }).isChecked())) await key(page, 'Space')
    await tabTo(page, 'checkbox', /^2: cut/)
    await key(page, 'Space')
    await expect(page.getByRole('heading', { name: '2 stems' })).toBeVisible()
    const before = (await savedByKey(page)).stems
    await tabTo(page, 'spinbutton', /^open/)
    await key(page, 'ArrowDown')
    await tabTo(page, 'spinbutton', /^up/)
    await key(page, 'PageUp')
    const { stems } = await savedByKey(page)
    for (const i of [0, 1]) {
      expect(stems[i]!.openness).toBeCloseTo(before[i]!.openness - 0.05, 6)
      expect(stems[i]!.tip[2] - before[i]!.tip[2]).toBeCloseTo(50, 6)
    }
    expect(stems[0]!.tip[2] - stems[1]!.tip[2]).toBeCloseTo(before[0]!.tip[2] - before[1]!.tip[2], 6)
    expect(stems.slice(2)).toEqual(before.slice(2))
    await tabTo(page, 'spinbutton', /^in it, Dahlia/)
    await key(page, 'ArrowUp')
    expect((await savedByKey(page)).stems.filter((s) => s.plant === 'dahlia')).toHaveLength(2)
    await tabTo(page, 'spinbutton', /^in it, Veronica/)
    await key(page, 'ArrowDown', 'ArrowDown')
    expect((await savedByKey(page)).stems.filter((s) => s.plant === 'veronica')).toHaveLength(0)
  })

  await test.step('a reading, a palette, the picture', async () => {
    await tabTo(page, 'button', /^Height to the vessel/)
    await key(page, 'Enter')
    await expect(page.getByRole('button', { name: /^Height to the vessel/ })).toHaveAttribute('aria-expanded', 'true')
    const before = (await savedByKey(page)).palette
    await tabTo(page, 'button', '2 Palettes')
    await page.keyboard.press('Enter')
    await tabTo(page, 'button', 'Put on the sheet')
    await page.keyboard.press('Enter')
    await tabTo(page, 'button', '1 Drawing')
    await page.keyboard.press('Enter')
    expect((await savedByKey(page)).palette).not.toEqual(before)
    await tabTo(page, 'button', '3 Picture')
    await page.keyboard.press('Enter')
    await tabTo(page, 'button', 'Download the picture')
    const waiting = page.waitForEvent('download', { timeout: 120_000 })
    await page.keyboard.press('Enter')
    expect((await waiting).suggestedFilename()).toMatch(/\.png$/)
    await focusIsSomewhere(page)
  })
})

test('the same arrangement by pointer and by fields is the same document', async ({ page }) => {
  const plants = ['Garden rose', 'Craspedia', 'Italian ruscus'] as const
  await begin(page)
  for (const [i, plant] of plants.entries()) {
    await take(page, plant)
    const at = await onScreen(page, [i * 50 - 45, 0, 110 + 25 * i])
    await page.mouse.click(at.elevation.x, at.elevation.y)
  }
  await page.getByRole('button', { name: 'Done adding' }).click()
  const pointed = await saved(page)

  await tabTo(page, 'button', 'Start')
  await page.keyboard.press('Enter')
  await tabTo(page, 'button', 'Begin with an empty vessel')
  await page.keyboard.press('Enter')
  await tabTo(page, 'button', 'Add a stem')
  await page.keyboard.press('Enter')
  for (const [i, plant] of plants.entries()) {
    await takeByKey(page, plant)
    await tabTo(page, 'button', 'Put one in')
    await key(page, 'Enter')
    const { mouth, tip } = pointed.stems[i]!
    await typeInto(page, /^across/, tip[0] / 10)
    await typeInto(page, /^away/, tip[1] / 10)
    await typeInto(page, /^up/, tip[2] / 10)
    await typeInto(page, /^enters.* across/, mouth[0] / 10)
    await typeInto(page, /^enters.* away/, mouth[1] / 10)
  }
  const typed = await savedByKey(page)
  const plain = (d: Arrangement) => ({ ...d, stems: d.stems.map((s) => ({ ...s, id: '' })) })
  expect(plain(typed)).toEqual(plain(pointed))
})
