import { readFileSync } from 'node:fs'
import AxeBuilder from '@axe-core/playwright'
import type { Locator, Page } from '@playwright/test'
import { expect, focusIsSomewhere, tabTo, test, typeInto } from './helpers.ts'
import { keptDesign, openSample } from './sheet.ts'

const toEvent = async (page: Page): Promise<void> => {
  await page.getByRole('navigation', { name: 'Sheets' }).getByRole('button', { name: /Event/ }).click()
  await expect(page.getByRole('navigation', { name: 'Of the event' })).toBeVisible()
}
/** The page loaded anew, and again at the event with the kept design open. */
const reloaded = async (page: Page): Promise<void> => {
  await page.reload()
  await keptDesign(page, 'Orchard supper').click()
  await expect(page.getByTestId('elevation')).toBeVisible()
  await toEvent(page)
}
const panel = (page: Page, name: string): Promise<void> =>
  page.getByRole('navigation', { name: 'Of the event' }).getByRole('button', { name }).click()

/** Two designs kept in this browser, the event with the second of them open. */
const withTwo = async (page: Page): Promise<void> => {
  await openSample(page, 'Window-sill bowl')
  await expect(page.getByText(/kept in this browser/)).toBeVisible()
  await openSample(page, 'Orchard supper')
  await expect(page.getByText(/kept in this browser/)).toBeVisible()
  await toEvent(page)
  await page.getByRole('button', { name: 'Put it in' }).click()
  await expect(row(page, 'Designs of the event', /Window-sill bowl/)).toBeVisible()
}

const row = (page: Page, table: string, name: RegExp): Locator =>
  page.getByRole('table', { name: table }).getByRole('row', { name }).first()
const TO_BUY = 'What to buy, by plant and colour'

const cell = async (from: Locator, n: number): Promise<string> =>
  ((await from.getByRole('cell').nth(n).textContent()) ?? '').trim()
/** Stems needed of a plant; its plate is the first cell, its pieces the second. */
const stemsOf = async (page: Page, plant: RegExp): Promise<number> => Number(await cell(row(page, TO_BUY, plant), 2))
const spareOf = async (page: Page, plant: RegExp): Promise<number> => Number(await cell(row(page, TO_BUY, plant), 4))
const cost = async (page: Page): Promise<number> =>
  Number((await page.locator('.order-sum b').first().textContent())?.replace(/[^\d.]/g, ''))

const events = (page: Page): Locator => page.getByRole('region', { name: 'Your events, kept in this browser' })

const put = async (field: Locator, value: number | string): Promise<void> => {
  await field.fill(String(value))
  await field.press('Enter')
}

const downloaded = async (page: Page, button: string): Promise<{ text: string; name: string }> => {
  const waiting = page.waitForEvent('download')
  await page.getByRole('button', { name: button }).click()
  const file = await waiting
  return { text: readFileSync(await file.path(), 'utf8'), name: file.suggestedFilename() }
}

test('a second design with its number changes the order and the money; it can be taken back, and a reload keeps it', async ({
  page,
}) => {
  await withTwo(page)
  await panel(page, 'Order')
  const [before, peonies] = [await cost(page), await stemsOf(page, /^Peony/)]
  expect(peonies).toBe(1)

  await panel(page, 'Designs')
  await put(page.getByRole('spinbutton', { name: /how many, Window-sill bowl/ }), 30)
  await panel(page, 'Order')
  await expect.poll(() => stemsOf(page, /^Peony/)).toBe(30)
  // Dahlias and roses are of the other design: they stay.
  expect(await stemsOf(page, /^Dahlia/)).toBe(56)
  const after = await cost(page)
  expect(after).toBeGreaterThan(before)

  await page.keyboard.press('Control+z')
  await expect.poll(() => stemsOf(page, /^Peony/)).toBe(1)
  expect(await cost(page)).toBe(before)
  await page.getByRole('button', { name: 'Redo' }).click()
  await expect.poll(() => cost(page)).toBe(after)

  await reloaded(page)
  await panel(page, 'Order')
  await expect.poll(() => stemsOf(page, /^Peony/)).toBe(30)
  await expect.poll(() => cost(page)).toBe(after)
})

test('what a design costs, all designs, each table and the budget agree', async ({ page }) => {
  await withTwo(page)
  await page.getByRole('spinbutton', { name: /budget/ }).fill('1000')
  await page.getByRole('spinbutton', { name: /budget/ }).press('Enter')
  await panel(page, 'Order')
  const amount = (text: string): number => Math.round(100 * Number(text.replace(/[^\d.]/g, '')))
  const money = page.getByRole('region', { name: 'What it costs' })
  const all = amount(await cell(money.getByRole('row', { name: /^All the flowers/ }), 1))
  const parts = await Promise.all(
    [/^Orchard supper/, /^Window-sill bowl/].map(async (name) =>
      amount(await cell(money.getByRole('row', { name }), 1)),
    ),
  )
  expect(parts[0]! + parts[1]!).toBe(all)
  expect(all).toBe(Math.round(100 * (await cost(page))))
  const each = amount(await cell(money.getByRole('row', { name: /^For each of 15 tables/ }), 2))
  expect(each).toBe(Math.round(all / 15))
  const left = money.getByRole('row', { name: /budget/ })
  expect(amount(await cell(left, 1))).toBe(Math.abs(100_000 - all))
  await expect(left).toContainText(all > 100_000 ? 'Over the budget' : 'Left of the budget')
})

test('by keys alone: more of a design, a price and the spare of a flower', async ({ page }) => {
  await openSample(page, 'Orchard supper')
  await tabTo(page, 'button', /Event/)
  await page.keyboard.press('Enter')
  await typeInto(page, /how many, Orchard supper/, 20)
  await tabTo(page, 'button', /^Order$/)
  await page.keyboard.press('Enter')
  await expect.poll(() => stemsOf(page, /^Garden rose/)).toBe(80)
  await typeInto(page, 'spare, %, Garden rose', 5)
  await expect.poll(() => spareOf(page, /^Garden rose/)).toBe(4)
  await typeInto(page, /^price, Garden rose/, 10)
  // 84 stems are seven bunches of twelve.
  await expect(row(page, TO_BUY, /^Garden rose/)).toContainText('€70.00')
})

test('spare is by the plant, and goes back to what is usual', async ({ page }) => {
  await openSample(page, 'Orchard supper')
  await toEvent(page)
  await panel(page, 'Order')
  expect([await stemsOf(page, /^Garden rose/), await spareOf(page, /^Garden rose/)]).toEqual([56, 6])
  await put(page.getByRole('spinbutton', { name: 'spare, %, Garden rose' }), 25)
  await expect.poll(() => spareOf(page, /^Garden rose/)).toBe(14)
  await page.getByRole('button', { name: 'Garden rose: the usual spare, 10 %' }).click()
  await expect.poll(() => spareOf(page, /^Garden rose/)).toBe(6)
})

test('a price and a second size are put in where they stand; the list of the drawing shows the same', async ({
  page,
}) => {
  await openSample(page, 'Orchard supper')
  await toEvent(page)
  await panel(page, 'Order')
  const rose = row(page, TO_BUY, /^Garden rose/)
  await put(rose.getByRole('spinbutton', { name: /^price, Garden rose/ }), 30)
  await expect(rose).not.toContainText('example')
  // 56 and 6 spare: six bunches of twelve.
  await expect(rose).toContainText('6 × 12')
  await expect(rose).toContainText('€180.00')
  await rose.getByRole('button', { name: 'Garden rose: another size' }).click()
  await put(rose.getByRole('spinbutton', { name: 'stems in it, Garden rose, the new size' }), 25)
  await put(rose.getByRole('spinbutton', { name: 'price, Garden rose, the new size, EUR' }), 50)
  await expect(rose).toContainText('6 × 12')
  await rose.getByRole('button', { name: 'Garden rose: add this size' }).click()
  // 2 × 25 and one of 12 hold 62, for 130.
  await expect(rose).toContainText('2 × 25 + 1 × 12')
  await expect(rose).toContainText('€130.00')

  await page
    .getByRole('navigation', { name: 'Sheets' })
    .getByRole('button', { name: /Drawing/ })
    .click()
  await page.getByRole('button', { name: 'Prices' }).click()
  await put(page.getByRole('spinbutton', { name: /Garden rose, a bunch of 25/ }), 40)
  await toEvent(page)
  await panel(page, 'Order')
  await expect(rose).toContainText('€110.00')
})

test('a price book goes out and comes in: what is wrong is told by its line, and nothing changes before one agrees', async ({
  page,
}) => {
  await openSample(page, 'Orchard supper')
  await toEvent(page)
  await panel(page, 'Order')
  const rose = row(page, TO_BUY, /^Garden rose/)
  await put(rose.getByRole('spinbutton', { name: /^price, Garden rose/ }), 31.5)
  const { text, name } = await downloaded(page, 'Save the price book')
  expect(name).toBe('price book.csv')
  expect(text.split('\r\n')).toContain('rose-garden,Garden rose,12,31.50,EUR,mine')
  const typed = text.replace(/\r\ndahlia,Dahlia,(\d+),[\d.]+,EUR,example/, '\r\ndahlia,Dahlia,$1,30.00,EUR,example')

  const open = (csv: string): Promise<void> =>
    page
      .getByLabel('Open a price book')
      .setInputFiles({ name: 'mine.csv', mimeType: 'text/csv', buffer: Buffer.from(csv) })
  const book = 'plant,stems in it,price,currency\r\nrose-garden,12,20.00,EUR\r\ndahlia,5,ten,EUR\r\nno-such,1,2,EUR\r\n'
  await open(book)
  const dialog = page.getByRole('dialog', { name: 'Prices from mine.csv' })
  await expect(dialog.getByText('line 3: expected a price in EUR, got "ten"')).toBeVisible()
  await expect(dialog.getByText('line 4: expected the id of a plant, got "no-such"')).toBeVisible()
  await dialog.getByRole('button', { name: 'Leave it' }).click()
  await expect(rose).toContainText('€189.00')
  await open(book)
  await dialog.getByRole('button', { name: 'Take them' }).click()
  await expect(rose).toContainText('€120.00')
  // A price put in at a row that says example is one's own.
  await open(typed)
  await expect(dialog).toContainText('1 row is marked example and not what the example says')
  await dialog.getByRole('button', { name: 'Take them' }).click()
  await expect(row(page, TO_BUY, /^Dahlia/).getByRole('spinbutton', { name: /^price, Dahlia/ })).toHaveValue('30.00')
})

test('the order leaves as a table that no spreadsheet takes for a formula, and as a message', async ({ page }) => {
  await withTwo(page)
  await put(page.getByLabel('Title of the event'), '=SUM(A1:A9)')
  await panel(page, 'Order')
  const { text } = await downloaded(page, 'Save as CSV')
  const rows = text.trimEnd().split('\r\n')
  expect(rows[0]).toBe(
    'plant,botanical,colour,to come on,date,needed,spare,bunches,stems bought,left over,stem at least (cm),longer than usual,those at least (cm),side stems at least (cm),how open,cost,currency,price',
  )
  const rose = rows.find((r) => r.startsWith('Garden rose'))
  expect(rose).toMatch(/,\w+day \d+ October 2027,2027-10-0\d,56,6,6 x 12,72,10,\d\d,/)
  expect(rose).toContain(',208.80,EUR,example')
  for (const field of text.split(/[,\r\n]+/)) expect(field).not.toMatch(/^"?[=+@-]/)
  await page.getByRole('checkbox', { name: 'with cost' }).uncheck()
  expect((await downloaded(page, 'Save as CSV')).text).not.toContain('EUR')

  await page.getByRole('combobox', { name: 'CSV with' }).selectOption('1,50, semicolons between cells')
  await page.getByRole('checkbox', { name: 'with cost' }).check()
  expect((await downloaded(page, 'Save as CSV')).text).toContain(';208,80;EUR;example\r\n')
  expect((await downloaded(page, 'Save the price book')).text).toMatch(/\r\nrose-garden;Garden rose;12;\d+,\d\d;EUR;/)

  await page.getByRole('button', { name: 'As a message' }).click()
  const dialog = page.getByRole('dialog', { name: 'The order as a message' })
  await expect(dialog.getByLabel('Message')).toHaveValue(
    /^=SUM\(A1:A9\): flowers to order\nThe event is on Saturday 9 October 2027\. /,
  )
  const message = await dialog.getByLabel('Message').inputValue()
  expect(message).toMatch(/\n- Garden rose, .*: 6 × 12 \(72 stems\); at least \d+ cm long/)
  // As the plan takes them in.
  const days = [...message.matchAll(/^To come on (.*) 2027:$/gm)].map((found) => found[1]!)
  expect(days.length).toBeGreaterThan(0)
  await dialog.getByRole('button', { name: 'Close' }).click()
  await panel(page, 'Plan')
  for (const day of days)
    await expect(page.getByRole('region', { name: day }).or(page.getByText(day)).first()).toBeVisible()

  await reloaded(page)
  await panel(page, 'Order')
  await expect(page.getByRole('combobox', { name: 'CSV with' })).toHaveValue('semicolon')
})

test('an event leaves as a file and comes back; one with something wrong in it waits for a word', async ({ page }) => {
  await withTwo(page)
  await put(page.getByLabel('Title of the event'), 'Late harvest')
  await panel(page, 'Designs')
  const { text, name } = await downloaded(page, 'Save the event')
  expect(name).toBe('Late harvest.event.json')
  await page.getByRole('button', { name: 'Begin a new event' }).click()
  await expect(page.getByLabel('Title of the event')).toHaveValue('')
  const designs = page.getByRole('table', { name: 'Designs of the event' }).locator('tbody').getByRole('row')
  await expect(designs).toHaveCount(1)

  const open = (content: string): Promise<void> =>
    page
      .getByLabel("Open an event's file")
      .setInputFiles({ name: 'harvest.json', mimeType: 'application/json', buffer: Buffer.from(content) })
  await open(text)
  await expect(page.getByLabel('Title of the event')).toHaveValue('Late harvest')
  await expect(designs).toHaveCount(2)
  await expect(
    page.getByRole('status').filter({ hasText: 'is kept in this browser as it is in harvest.json' }),
  ).toHaveCount(1)

  await open(text.replace('Late harvest', 'Later harvest'))
  const twin = page.getByRole('dialog', { name: 'This event is kept already' })
  await expect(twin).toContainText('harvest.json holds another state of “Late harvest”')
  await twin.getByRole('button', { name: 'Put it in place of the kept one' }).click()
  await expect(page.getByLabel('Title of the event')).toHaveValue('Later harvest')
  await page.keyboard.press('Control+z')
  await expect(page.getByLabel('Title of the event')).toHaveValue('Late harvest')
  await open(text.replace('Late harvest', 'Later harvest'))
  await twin.getByRole('button', { name: 'Open it as a copy' }).click()
  await expect(page.getByLabel('Title of the event')).toHaveValue('Later harvest (copy)')
  await expect(events(page).getByRole('button', { name: /^Late harvest/ })).toBeVisible()
  await events(page)
    .getByRole('button', { name: /^Late harvest/ })
    .click()
  await expect(page.getByLabel('Title of the event')).toHaveValue('Late harvest')

  await open(text.replace('"copies": 14', '"copies": -14').replace('Late harvest', 'Worse harvest'))
  const dialog = page.getByRole('dialog', { name: 'harvest.json is not right' })
  await expect(dialog.getByLabel('What is wrong')).toContainText('copies')
  await expect(page.getByLabel('Title of the event')).toHaveValue('Late harvest')
  await dialog.getByRole('button', { name: 'Leave it' }).click()
  await expect(page.getByLabel('Title of the event')).toHaveValue('Late harvest')
})

test('what is changed in a design is seen in the event, also while another is open', async ({ page }) => {
  await withTwo(page)
  await page.getByRole('button', { name: 'Draw Window-sill bowl' }).click()
  await expect(page.getByLabel('Title of the design')).toHaveValue('Window-sill bowl')
  await put(page.getByLabel('Title of the design'), 'Bowl by the door')
  await toEvent(page)
  await expect(row(page, 'Designs of the event', /Bowl by the door/)).toBeVisible()
  await page.getByRole('button', { name: 'Draw Orchard supper' }).click()
  await expect(page.getByLabel('Title of the design')).toHaveValue('Orchard supper')
  await toEvent(page)
  await expect(row(page, 'Designs of the event', /Bowl by the door/)).toBeVisible()
})

test('a design that this browser no longer has is said to be missing and can be taken out', async ({ page }) => {
  await withTwo(page)
  await put(page.getByLabel('Where they stand, Window-sill bowl'), 'window')
  await page.goto('/')
  await page.getByRole('button', { name: 'Remove Window-sill bowl' }).click()
  await page.getByRole('button', { name: 'Remove for good' }).click()
  await expect(page.getByRole('button', { name: 'Remove for good' })).toBeHidden()
  await keptDesign(page, 'Orchard supper').click()
  await expect(page.getByTestId('elevation')).toBeVisible()
  await toEvent(page)
  const missing = page.getByRole('list', { name: 'Designs that are missing' })
  await expect(missing).toContainText('1 piece for window: this browser no longer has the design')
  await missing.getByRole('button', { name: 'Take it out' }).click()
  await expect(missing).toBeHidden()
})

test('several events: another is opened, thrown away and put back, by keys alone', async ({ page }) => {
  await openSample(page, 'Orchard supper')
  await toEvent(page)
  await put(page.getByLabel('Title of the event'), 'Harvest supper')
  await tabTo(page, 'button', 'Begin a new event')
  await page.keyboard.press('Enter')
  await expect(page.getByLabel('Title of the event')).toHaveValue('')
  await put(page.getByLabel('Title of the event'), 'Winter market')
  await tabTo(page, 'button', /^Harvest supper/)
  await page.keyboard.press('Enter')
  await expect(page.getByLabel('Title of the event')).toHaveValue('Harvest supper')
  await expect(page.getByRole('status').filter({ hasText: 'Harvest supper opened.' })).toHaveCount(1)
  await focusIsSomewhere(page)

  await tabTo(page, 'button', 'Throw Winter market away')
  await page.keyboard.press('Enter')
  await expect(events(page).getByRole('button', { name: /^Winter market/ })).toHaveCount(0)
  await expect(events(page).getByRole('heading')).toBeFocused()
  await reloaded(page)
  await expect(page.getByLabel('Title of the event')).toHaveValue('Harvest supper')
  await events(page).getByText('Thrown away: 1 event').click()
  await tabTo(page, 'button', 'Put Winter market back')
  await page.keyboard.press('Enter')
  await expect(events(page).getByRole('button', { name: /^Winter market/ })).toBeVisible()
})

test('what was changed the moment before the page is loaded anew is there', async ({ page }) => {
  await openSample(page, 'Orchard supper')
  await toEvent(page)
  for (const title of ['The last word', 'And one more']) {
    await put(page.getByLabel('Title of the event'), title)
    await reloaded(page)
    await expect(page.getByLabel('Title of the event')).toHaveValue(title)
  }
})

test('two tabs do not overwrite each other’s event: the newer one is shown, one’s own stays as a copy', async ({
  page,
  context,
}) => {
  await openSample(page, 'Window-sill bowl')
  await toEvent(page)
  const notKeptYet = events(page).getByText('kept from the first change on')
  await expect(notKeptYet).toBeVisible()
  await put(page.getByLabel('Title of the event'), 'Wedding')
  await expect(notKeptYet).toBeHidden()
  const other = await context.newPage()
  await openSample(other, 'Orchard supper')
  await toEvent(other)
  await expect(other.getByLabel('Title of the event')).toHaveValue('Wedding')

  const alert = other.getByRole('alert').filter({ hasText: 'Another tab has gone on with this event' })
  await put(page.getByLabel('Title of the event'), 'The first tab')
  await expect(alert).toBeVisible()
  await alert.getByRole('button', { name: 'Show the newer one' }).click()
  await expect(other.getByLabel('Title of the event')).toHaveValue('The first tab')
  await expect(alert).toBeHidden()

  await put(page.getByLabel('Title of the event'), 'The first tab again')
  // Whose change is kept first is not said of two quick ones: only the later is told.
  await expect(alert).toBeVisible()
  await put(other.getByLabel('Title of the event'), 'The second tab')
  await expect(other.getByRole('button', { name: 'Save it as a file' })).toBeVisible()
  await alert.getByRole('button', { name: 'Show the newer one' }).click()
  await expect(other.getByLabel('Title of the event')).toHaveValue('The first tab again')
  await expect(events(other).getByRole('button', { name: /^The second tab \(copy\)/ })).toBeVisible()
})

test('a price is taken back by the same undo, and a budget in euros is none in yen', async ({ page }) => {
  await openSample(page, 'Orchard supper')
  await toEvent(page)
  await put(page.getByRole('spinbutton', { name: /budget/ }), 1500)
  await panel(page, 'Order')
  const rose = row(page, TO_BUY, /^Garden rose/)
  const field = rose.getByRole('spinbutton', { name: /^price, Garden rose/ })
  const before = await field.inputValue()
  await put(field, 10)
  await expect(rose).toContainText('€60.00')
  await page.getByRole('button', { name: 'As a message' }).focus()
  await page.keyboard.press('Control+z')
  await expect(field).toHaveValue(before)
  await expect(page.getByRole('status').filter({ hasText: 'Undone: Garden rose: €10.00 for 12.' })).toHaveCount(1)

  await page.getByRole('combobox', { name: 'currency' }).selectOption('JPY')
  const money = page.getByRole('region', { name: 'What it costs' })
  await expect(money.getByRole('row', { name: /budget/ })).toContainText('the budget of ¥1,500')
  await page.getByRole('button', { name: 'Undo' }).first().click()
  await expect(money.getByRole('row', { name: /budget/ })).toContainText('the budget of €1,500.00')

  await page.getByLabel('Open a price book').setInputFiles({
    name: 'yen.csv',
    mimeType: 'text/csv',
    buffer: Buffer.from('plant,stems in it,price,currency\r\nrose-garden,12,2000,JPY\r\n'),
  })
  await page.getByRole('button', { name: 'Take them' }).click()
  await expect(money.getByRole('row', { name: /budget/ })).toContainText(
    'The budget is €1,500.00, the prices are in JPY: not compared',
  )
  await panel(page, 'Designs')
  await expect(row(page, 'Designs of the event', /budget/)).toContainText('not compared')
  await page.getByRole('button', { name: '¥1,500 instead' }).click()
  await expect(row(page, 'Designs of the event', /budget/)).toContainText('the budget of ¥1,500')
})

test('on a phone the head is a few words until it is pressed', async ({ page }) => {
  await page.setViewportSize({ width: 390, height: 844 })
  await page.goto('/')
  await page.getByRole('button', { name: /Orchard supper/ }).click()
  await expect(page.getByTestId('elevation')).toBeVisible()
  await toEvent(page)
  const fold = page.getByRole('button', { name: /Saturday 9 October 2027, 17:00 · 14 tables change/ })
  await expect(page.getByLabel('Title of the event')).toHaveCount(0)
  const panels = (await page.getByRole('navigation', { name: 'Of the event' }).boundingBox())!
  expect(panels.y + panels.height).toBeLessThan(240)
  await fold.click()
  await put(page.getByLabel('Title of the event'), 'Forty tables')
  await page.getByRole('button', { name: /^Forty tables Saturday/ }).click()
  await expect(page.getByLabel('Title of the event')).toHaveCount(0)
})

test('the cutting plan cuts what is bought, and says what it saves', async ({ page }) => {
  await openSample(page, 'Orchard supper')
  await toEvent(page)
  await panel(page, 'Order')
  const sprays = await stemsOf(page, /^Spray rose/)
  await panel(page, 'Cutting')
  const spray = page.getByRole('group').filter({ hasText: 'Spray rose' }).first()
  await expect(spray).toContainText(`70 pieces from ${sprays} stems`)
  const counts = await spray.getByRole('rowheader').allTextContents()
  expect(counts.reduce((n, text) => n + Number(text), 0)).toBe(sprays)
  await expect(page.getByText(/Without cutting any apart it would be \d+ stems/)).toBeVisible()
})

test('a swap is shown with what it does, is a step of its design, and is taken back', async ({ page }) => {
  await withTwo(page)
  await panel(page, 'Order')
  const before = await cost(page)
  await panel(page, 'Swap')
  await page.getByLabel('in place of').selectOption({ label: 'Peony, white' })
  const offers = page.getByRole('table', { name: 'Plants that may stand for it' })
  const first = offers.getByRole('row').nth(1)
  await expect(first).toContainText(/Window-sill bowl (nothing moves by a point|\D+ (\d+|not judged) → )/)
  await expect(first.getByRole('cell').nth(3)).toContainText(/season in|all year in the trade|to be had|not known/)
  const said = (await cell(first, 5)).replace(/[^\d.−+]/g, '').replace('−', '-')
  const name = ((await first.getByRole('rowheader').locator('i').first().textContent()) ?? '').trim()
  expect(name).not.toBe('')
  await first.getByRole('button', { name: /^Swap for .* in Window-sill bowl/ }).click()
  await expect(page.getByText(/^Done: peony swapped for/)).toBeVisible()
  await panel(page, 'Order')
  const after = page.getByRole('table', { name: TO_BUY })
  await expect(after.getByRole('row', { name: /^Peony/ })).toHaveCount(0)
  await expect(after).toContainText(name)
  expect(Math.round(100 * ((await cost(page)) - before))).toBe(Math.round(100 * Number(said)))
  await panel(page, 'Swap')

  await page
    .getByRole('navigation', { name: 'Sheets' })
    .getByRole('button', { name: /Drawing/ })
    .click()
  await expect(page.getByLabel('Title of the design')).toHaveValue('Window-sill bowl')
  await page.keyboard.press('Control+z')
  await toEvent(page)
  await panel(page, 'Order')
  await expect(after.getByRole('row', { name: /^Peony/ })).toHaveCount(1)
  expect(await cost(page)).toBe(before)
})

test('a design that another tab keeps is not swapped in', async ({ page, context }) => {
  await withTwo(page)
  const other = await context.newPage()
  await other.goto('/')
  await keptDesign(other, 'Window-sill bowl').click()
  await expect(other.getByTestId('elevation')).toBeVisible()
  await panel(page, 'Swap')
  await page.getByLabel('in place of').selectOption({ label: 'Peony, white' })
  await page
    .getByRole('button', { name: /in Window-sill bowl$/ })
    .first()
    .click()
  await expect(page.getByRole('status').filter({ hasText: 'Another tab keeps this design' })).toHaveCount(1)
  await panel(page, 'Order')
  await expect(row(page, TO_BUY, /^Peony/)).toBeVisible()
})

for (const [width, height] of [
  [1440, 900],
  [1024, 768],
  [390, 844],
] as const)
  test(`the rules of access hold on designs, order, cutting and swap at ${width} × ${height}`, async ({ page }) => {
    await page.setViewportSize({ width, height })
    await page.goto('/')
    await page.getByRole('button', { name: /Orchard supper/ }).click()
    await expect(page.getByTestId('elevation')).toBeVisible()
    await toEvent(page)
    if (width < 700) await page.getByRole('button', { name: / change$/ }).click()
    // The list has an event in each of its places.
    for (const title of ['Gone', 'Beside', 'Open now']) {
      await put(page.getByLabel('Title of the event'), title)
      if (title === 'Open now') continue
      await page.getByRole('button', { name: 'Begin a new event' }).click()
      await expect(page.getByLabel('Title of the event')).toHaveValue('')
    }
    await page.getByRole('button', { name: 'Throw Gone away' }).click()
    await expect(page.getByText('Thrown away: 1 event')).toBeVisible()
    for (const name of ['Designs', 'Order', 'Cutting', 'Swap'])
      await test.step(name, async () => {
        await panel(page, name)
        await expect(page.getByRole('region', { name })).toContainText('Orchard supper')
        await page.locator('details').evaluateAll((folds) => {
          for (const fold of folds) fold.setAttribute('open', '')
        })
        const { violations } = await new AxeBuilder({ page })
          .withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'])
          .analyze()
        expect(violations.map((v) => `${v.id}: ${v.nodes.map((n) => n.target.join(' ')).join(', ')}`)).toEqual([])
        expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width)
        expect(await page.locator('.event-sheet').evaluate((e) => e.scrollWidth - e.clientWidth)).toBe(0)
      })
  })
