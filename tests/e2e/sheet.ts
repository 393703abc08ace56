import { readFileSync } from 'node:fs'
import { expect, type Locator, type Page } from '@playwright/test'
import type { Arrangement } from '../../src/arrangement/index.ts'

/** The open design as a person gets it: by saving a file. */
export const saved = async (page: Page): Promise<Arrangement> => {
  const waiting = page.waitForEvent('download')
  await page.getByRole('button', { name: 'Save a file' }).click()
  return JSON.parse(readFileSync(await (await waiting).path(), 'utf8')) as Arrangement
}

const number = async (views: Locator, name: string): Promise<number> => Number(await views.getAttribute(`data-${name}`))

/** Where a point of the arrangement (mm, turn 0) is on the screen, in both views. */
export const onScreen = async (page: Page, [x, y, z]: readonly [number, number, number]) => {
  const views = page.getByTestId('views')
  const box = await views.boundingBox()
  if (!box) throw new Error('the views are not on the screen')
  const [scale, axis, rim, plan] = [
    await number(views, 'scale'),
    await number(views, 'axis-x'),
    await number(views, 'rim-y'),
    await number(views, 'plan-y'),
  ] as const
  return {
    scale,
    elevation: { x: box.x + axis + x * scale, y: box.y + rim - z * scale },
    plan: { x: box.x + axis + x * scale, y: box.y + plan - y * scale },
  }
}

/** Presses at one point, moves to another in steps, and lets go there. */
export const drag = async (page: Page, from: { x: number; y: number }, by: { x: number; y: number }): Promise<void> => {
  await page.mouse.move(from.x, from.y)
  await page.mouse.down()
  for (let i = 1; i <= 8; i++) await page.mouse.move(from.x + (by.x * i) / 8, from.y + (by.y * i) / 8)
  await page.mouse.up()
}

/** Opens the start page and begins with an empty vessel. */
export const begin = async (page: Page): Promise<void> => {
  await page.goto('/')
  await page.getByRole('button', { name: 'Begin with an empty vessel' }).click()
  await expect(page.getByTestId('elevation')).toBeVisible()
}

/** A design that this browser keeps, in the list of the start page: a sample may have the same title. */
export const keptDesign = (page: Page, title: string): Locator =>
  page
    .getByRole('region', { name: 'Yours, kept in this browser' })
    .getByRole('button', { name: new RegExp(`^${title} \\d`) })

/** Opens a sample by its title. */
export const openSample = async (page: Page, title: string): Promise<void> => {
  await page.goto('/')
  await page
    .getByRole('region', { name: 'Three to look into' })
    .getByRole('button', { name: new RegExp(title) })
    .click()
  await expect(page.getByTestId('elevation')).toBeVisible()
  await expect(page.getByRole('button', { name: /What leads the eye/ })).toContainText('%')
}

/** Takes a plant in hand. */
export const take = async (page: Page, plant: string): Promise<void> => {
  const adding = page.getByRole('region', { name: 'Add a stem' })
  const opens = page.getByRole('button', { name: 'Add a stem' })
  // What it opens comes a moment after the press.
  if ((await opens.getAttribute('aria-expanded')) !== 'true') await opens.click()
  await adding.getByLabel('find a plant').fill(plant)
  await adding
    .getByRole('radio', { name: new RegExp(plant, 'i') })
    .first()
    .check()
}
