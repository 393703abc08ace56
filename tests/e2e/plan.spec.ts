import { readFileSync } from 'node:fs'
import AxeBuilder from '@axe-core/playwright'
import type { Page } from '@playwright/test'
import ICAL from 'ical.js'
import { expect, focusIsSomewhere, tabTo, tabToIt, test, typeInto } from './helpers.ts'
import { keptDesign } from './sheet.ts'

const sheets = (page: Page) => page.getByRole('navigation', { name: 'Sheets' })
const sum = (page: Page) => page.locator('.plan-sum')
const row = (page: Page, key: string) => page.locator(`[data-task="${key}"]`)

/** The plan of an event with one sample design in it. */
const openPlan = async (page: Page): Promise<void> => {
  await page.goto('/')
  await page.getByRole('button', { name: /Orchard supper/ }).click()
  await expect(page.getByTestId('elevation')).toBeVisible()
  await sheets(page).getByRole('button', { name: /Event/ }).click()
  await page.getByRole('button', { name: 'Plan of work' }).click()
}

const clockOf = (page: Page, zone: string) => page.getByRole('combobox', { name: 'clock of' }).selectOption(zone)

/** The events of the calendar file, read by ical.js. */
const calendar = async (page: Page): Promise<{ name: string; events: ICAL.Event[] }> => {
  const waiting = page.waitForEvent('download')
  await page.getByRole('button', { name: 'Calendar file' }).click()
  const file = await waiting
  const text = readFileSync(await file.path(), 'utf8')
  const events = new ICAL.Component(ICAL.parse(text)).getAllSubcomponents('vevent').map((c) => new ICAL.Event(c))
  return { name: file.suggestedFilename(), events }
}

test('from a date to a plan that is ticked off, timed anew and taken along', async ({ page }) => {
  await openPlan(page)
  await page.getByLabel('begins').fill('')
  await expect(page.getByText('When does the event begin?')).toBeVisible()
  await page.getByLabel('begins').fill('2031-06-14T15:00')
  await clockOf(page, 'Europe/Lisbon')

  await test.step('it goes backwards from there, by days', async () => {
    await expect(page.getByRole('region', { name: 'Saturday 14 June, the day itself' })).toBeVisible()
    await expect(row(page, 'set')).toContainText('–14:00')
    await expect(row(page, 'arrive-3')).toContainText('09:00')
    await expect(page.getByRole('region', { name: 'Wednesday 11 June, 3 days before' })).toContainText(
      'Take in the flowers',
    )
  })

  await test.step('the minutes of a person change the hours', async () => {
    const before = await sum(page).textContent()
    await page.getByRole('spinbutton', { name: /^each piece, minutes/ }).fill('20')
    await page.keyboard.press('Enter')
    await expect(sum(page)).not.toHaveText(before ?? '')
    // Ten minutes more for each of 14 pieces and for one trial piece.
    const minutes = (text: string | null) => {
      const [, h, min] = /(\d+) h (\d+) min of hands/.exec(text ?? '') ?? []
      return Number(h) * 60 + Number(min)
    }
    expect(minutes(await sum(page).textContent()) - minutes(before)).toBe(150)
  })

  await test.step('what is too much for the hands stands at the top and at its task', async () => {
    await page.getByRole('spinbutton', { name: /^each stem placed, minutes/ }).fill('5')
    await page.keyboard.press('Enter')
    const clashes = page.getByRole('region', { name: 'Will not go as it stands' })
    await expect(clashes).toContainText(
      /Friday 13 June: [\d]+ h( \d+ min)? of work do not fit into 9 h with 2 pairs of hands/,
    )
    await expect(row(page, 'place-1')).toContainText(/Note \d/)
    await page.getByRole('spinbutton', { name: 'people' }).fill('8')
    await page.keyboard.press('Enter')
    await expect(page.getByRole('heading', { name: 'Nothing is in the way' })).toBeVisible()
    await page.getByRole('combobox', { name: 'cooler' }).selectOption('yes')
    await expect(clashes).toContainText('A cooler at 3 °C is too cold for Zinnia (4–10 °C)')
  })

  await test.step('a tick is kept', async () => {
    await row(page, 'book').getByRole('checkbox').check()
    await expect(sum(page)).toContainText('1 of ')
    await page.reload()
    await keptDesign(page, 'Orchard supper').click()
    await expect(page.getByTestId('elevation')).toBeVisible()
    await sheets(page).getByRole('button', { name: /Event/ }).click()
    await page.getByRole('button', { name: 'Plan of work' }).click()
    await expect(row(page, 'book').getByRole('checkbox')).toBeChecked()
    await expect(row(page, 'trial').getByRole('checkbox')).not.toBeChecked()
  })

  await test.step('a calendar file that another program reads, at the clock of the zone', async () => {
    const { name, events } = await calendar(page)
    expect(name).toMatch(/\.ics$/)
    expect(events.length).toBe(await page.locator('[data-task]').count())
    const end = (from: ICAL.Event[]) => from.find((e) => e.uid.startsWith('set.'))?.endDate.toString()
    expect(end(events)).toBe('2031-06-14T13:00:00Z')
    await clockOf(page, 'America/New_York')
    await expect(row(page, 'set')).toContainText('–14:00')
    const there = (await calendar(page)).events
    expect(end(there)).toBe('2031-06-14T18:00:00Z')
    expect(there.map((e) => e.uid)).toEqual(events.map((e) => e.uid))
    await page.getByLabel('Title of the event').fill('Another name')
    await page.keyboard.press('Enter')
    const renamed = await calendar(page)
    expect(renamed.name).toBe('Another-name.ics')
    expect(renamed.events.map((e) => e.uid)).toEqual(events.map((e) => e.uid))
    expect(renamed.events[0]?.summary).toContain('(Another name)')
  })

  await test.step('as text', async () => {
    await page.context().grantPermissions(['clipboard-read', 'clipboard-write'])
    await page.getByRole('button', { name: 'Copy as text' }).click()
    await expect(page.getByRole('status').filter({ hasText: 'The plan is copied.' })).toHaveCount(1)
    const text = await page.evaluate(() => navigator.clipboard.readText())
    expect(text).toContain('[x] Order the flowers')
    expect(text).toContain('Saturday 14 June 2031, the day itself')
    expect(text).toContain('! A cooler at 3 °C is too cold for Zinnia')
  })
})

test('flowers come on the days that a seller has, plant by plant', async ({ page }) => {
  await openPlan(page)
  await page.getByLabel('begins').fill('2031-06-14T15:00')
  const come = page.getByRole('region', { name: 'When flowers come' })
  const dayOf = (plant: string) => come.getByRole('combobox', { name: plant, exact: true })
  const deliveries = page.locator('[data-task^="arrive-"]')
  const undo = page.getByRole('button', { name: 'Undo', exact: true })
  await expect(deliveries).toHaveCount(3)

  await test.step('one press brings them together, one undo takes it back', async () => {
    const steps = await undo.getAttribute('title')
    await come.getByRole('button', { name: 'Bring them together' }).click()
    await expect(deliveries).toHaveCount(2)
    await expect(undo).toHaveAttribute('title', /flowers come on Thursday 12 June and Friday 13 June/)
    await expect(come.getByRole('checkbox', { checked: true })).toHaveCount(2)
    await undo.click()
    await expect(deliveries).toHaveCount(3)
    await expect(undo).toHaveAttribute('title', steps ?? '')
  })

  await test.step('a day that is ticked is the only one, and each plant says what that costs', async () => {
    await come.getByRole('checkbox', { name: 'Thursday 12 June, 2 days before' }).check()
    await expect(deliveries).toHaveCount(1)
    await expect(row(page, 'arrive-2')).toContainText('further on, as asked for')
    await expect(dayOf('Dahlia')).toHaveAccessibleDescription(
      'comes a day early: as fresh as can be had, and kept cool',
    )
    await expect(page.getByRole('region', { name: 'Will not go as it stands' })).toContainText('Dahlia may be past its')
  })

  await test.step('one plant is moved by keys, and the focus stays with it', async () => {
    await tabToIt(page, dayOf('Dahlia'))
    await page.keyboard.type('Fri 13')
    await expect(row(page, 'arrive-1')).toContainText('Dahlia')
    await expect(dayOf('Dahlia')).toBeFocused()
    await expect(page.getByText('Dahlia may be past its')).toHaveCount(0)
    await undo.click()
    await expect(row(page, 'arrive-1')).toHaveCount(0)
  })
})

test('who is there, by name, and what one piece took', async ({ page }) => {
  await openPlan(page)
  await page.getByLabel('begins').fill('2031-06-14T15:00')
  await page.getByLabel('names, a comma between').fill('Ana, Rui')
  await page.keyboard.press('Enter')
  await expect(row(page, 'arrive-3')).toContainText('Ana, 10 min of hands')
  await expect(row(page, 'arrive-3')).toContainText('09:00–09:10')
  await expect(row(page, 'carry')).toContainText('Ana, the road')
  await expect(row(page, 'place-1')).toContainText('Ana and Rui')

  await test.step('Rui prepares the vessels while Ana conditions', async () => {
    await tabToIt(page, row(page, 'vessels').locator('summary', { hasText: 'Who' }))
    await page.keyboard.press('Enter')
    await tabToIt(page, row(page, 'vessels').getByRole('checkbox', { name: 'Ana' }))
    await page.keyboard.press('Space')
    await expect(row(page, 'vessels')).toContainText('Rui, ')
    await row(page, 'condition-2').locator('summary', { hasText: 'Who' }).click()
    await row(page, 'condition-2').getByRole('checkbox', { name: 'Rui' }).uncheck()
    await expect(row(page, 'vessels')).toContainText(/09:00–/)
    await expect(row(page, 'condition-2')).toContainText(/09:10–.*Ana, /)
    await row(page, 'vessels').getByRole('button', { name: 'As usual' }).click()
    await expect(row(page, 'vessels')).toContainText('Ana and Rui')
    await focusIsSomewhere(page)
  })

  await test.step('the trial piece of a design', async () => {
    const placing = page.getByRole('spinbutton', { name: 'placing one, minutes, Orchard supper' })
    await placing.fill('30')
    await page.keyboard.press('Enter')
    await expect(page.getByRole('region', { name: 'How the hours come about' })).toContainText('by stems')
    await page.reload()
    await keptDesign(page, 'Orchard supper').click()
    await expect(page.getByTestId('elevation')).toBeVisible()
    await sheets(page).getByRole('button', { name: /Event/ }).click()
    await page.getByRole('button', { name: 'Plan of work' }).click()
    await expect(placing).toHaveValue('30')
    await page.getByRole('button', { name: 'Reckon placing Orchard supper by its stems' }).click()
    await expect(placing).not.toHaveValue('30')
    await focusIsSomewhere(page)
  })
})

test('for a morning, what goes in last goes in on the evening before', async ({ page }) => {
  await openPlan(page)
  await page.getByLabel('begins').fill('2031-06-14T10:00')
  await expect(row(page, 'place-0')).toContainText('Dahlia')
  await page.getByRole('button', { name: 'Place them on the evening before' }).click()
  await expect(page.getByRole('heading', { name: 'Will not go as it stands' })).toBeFocused()
  await expect(row(page, 'place-0')).toHaveCount(0)
  await expect(row(page, 'place-evening')).toContainText(/–18:00.*Dahlia/)
  await expect(page.getByRole('combobox', { name: 'what goes in last' })).toHaveValue('evening')
  await page.getByRole('button', { name: 'Undo', exact: true }).click()
  await expect(row(page, 'place-0')).toContainText('Dahlia')
})

test('a year that no calendar has changes nothing', async ({ page }) => {
  await openPlan(page)
  await page.getByLabel('begins').fill('2031-06-14T15:00')
  await page.getByLabel('begins').fill('12031-06-14T15:00')
  await page.getByRole('button', { name: 'Calendar file' }).focus()
  await expect(page.getByLabel('begins')).toHaveValue('2031-06-14T15:00')
  await expect(row(page, 'set')).toBeVisible()
})

test('an event that is near or over says so', async ({ page }) => {
  await openPlan(page)
  const inDays = (n: number): string => new Date(Date.now() + n * 86_400_000).toISOString().slice(0, 10)
  await page.getByLabel('begins').fill(`${inDays(10)}T15:00`)
  const clashes = page.getByRole('region', { name: 'Will not go as it stands' })
  await expect(clashes).toContainText('less than two weeks away')
  await page.getByLabel('begins').fill(`${inDays(-10)}T15:00`)
  await expect(clashes).toContainText('This event is over')
})

test('what nobody has checked is said to be so, and whose word goes first', async ({ page }) => {
  await openPlan(page)
  await page.getByLabel('begins').fill('2031-06-14T15:00')
  const care = page.getByRole('region', { name: 'Take care' })
  await expect(care.locator('div > div').filter({ hasText: 'Craspedia' })).toContainText('Not checked')
  await expect(care.getByRole('listitem').first()).toContainText("The venue's rules, local fire and building codes")
  await expect(care).toContainText('Netting')
})

test('by the keyboard alone', async ({ page }) => {
  await page.goto('/')
  await tabTo(page, 'button', /Orchard supper/)
  await page.keyboard.press('Enter')
  await expect(page.getByTestId('elevation')).toBeVisible()
  await tabToIt(page, sheets(page).getByRole('button', { name: /Event/ }))
  await page.keyboard.press('Enter')
  await tabToIt(page, page.getByRole('button', { name: 'Plan of work' }))
  await page.keyboard.press('Enter')
  // From the title on, so that the first part of the date is reached first: month, day, year.
  await tabTo(page, 'textbox', 'Title of the event')
  await page.keyboard.press('Tab')
  await page.keyboard.type('06142031')
  await expect(page.getByRole('region', { name: 'Saturday 14 June, the day itself' })).toBeVisible()
  // The year was typed in four keys, and is one step all the same.
  await expect(page.getByRole('button', { name: 'Undo', exact: true })).toHaveAttribute('title', /2031/)
  await tabToIt(page, row(page, 'settle').getByRole('checkbox'))
  await page.keyboard.press('Space')
  await expect(row(page, 'settle').getByRole('checkbox')).toBeChecked()
  await focusIsSomewhere(page)
  await tabToIt(page, row(page, 'settle').locator('summary'))
  await page.keyboard.press('Enter')
  await expect(row(page, 'settle').getByText('What is settled now can still be ordered.')).toBeVisible()
  await typeInto(page, 'people', 5)
  await expect(row(page, 'place-1')).toContainText('5 people')
  await tabTo(page, 'button', 'Calendar file')
  const waiting = page.waitForEvent('download')
  await page.keyboard.press('Enter')
  await waiting
  await page.keyboard.press('Control+z')
  await expect(row(page, 'place-1')).toContainText('2 people')
})

for (const [width, height] of [
  [1440, 900],
  [1024, 768],
  [390, 844],
] as const)
  test(`the rules of access hold at ${width} × ${height}`, async ({ page }) => {
    await page.setViewportSize({ width, height })
    await openPlan(page)
    if (width < 700) await page.getByRole('button', { name: / change$/ }).click()
    await page.getByLabel('begins').fill('2031-06-14T15:00')
    await page.getByRole('combobox', { name: 'cooler' }).selectOption('yes')
    await row(page, 'condition-3').getByText('Why', { exact: true }).click()
    await row(page, 'condition-3').getByText('Who', { exact: true }).click()
    await row(page, 'book').getByRole('checkbox').check()
    const { violations } = await new AxeBuilder({ page })
      .withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'])
      .analyze()
    expect(violations.map((v) => `${v.id}: ${v.nodes.map((n) => n.target.join(' ')).join(', ')}`)).toEqual([])
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width)
    const panel = page.locator('.event-sheet')
    expect(await panel.evaluate((e) => e.scrollWidth - e.clientWidth)).toBeLessThanOrEqual(0)
  })
