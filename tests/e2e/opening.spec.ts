import { expect, test } from './helpers.ts'
import { openSample, saved } from './sheet.ts'

const asFile = (name: string, buffer: Buffer) => ({ name, mimeType: 'application/json', buffer })

test('a file with bad parts says what is wrong and changes nothing before one agrees', async ({ page }) => {
  await openSample(page, 'Window-sill bowl')
  const before = await saved(page)
  const bad = structuredClone(before) as unknown as {
    title: string
    vessel: { waterFill: unknown }
    stems: { tip: unknown[]; plant: string }[]
    note: unknown
  }
  bad.title = 'Damaged'
  bad.note = { of: 'another tool' }
  bad.vessel.waterFill = 7
  bad.stems[3]!.tip[2] = 'high'
  bad.stems[5]!.plant = 'triffid'
  const file = asFile('damaged.json', Buffer.from(JSON.stringify(bad)))
  const input = page.getByLabel('Open a design file')

  await input.setInputFiles(file)
  const dialog = page.getByRole('dialog')
  await expect(dialog.getByRole('heading')).toHaveText('damaged.json is not right')
  await expect(dialog).toContainText('3 things are wrong in it.')
  await expect(dialog).toContainText(`with ${before.stems.length - 2} stems`)
  const wrong = dialog.getByRole('list', { name: 'What is wrong' }).getByRole('listitem')
  await expect(wrong).toHaveCount(3)
  await expect(wrong.nth(0)).toContainText(/vessel\.waterFill expected .*7/)
  await expect(wrong.nth(1)).toContainText('stems[3].tip[2] expected a number in mm, got "high": this stem is left out')
  await expect(wrong.nth(2)).toContainText(/stems\[5\]\.plant .*"triffid": this stem is left out/)
  await dialog.getByRole('button', { name: 'Leave it' }).click()
  await expect(dialog).toBeHidden()
  expect(await saved(page)).toEqual(before)

  await input.setInputFiles(file)
  await expect(dialog).toBeVisible()
  await page.keyboard.press('Escape')
  await expect(dialog).toBeHidden()
  expect(await saved(page)).toEqual(before)

  await input.setInputFiles(file)
  await dialog.getByRole('button', { name: 'Open what is good' }).click()
  await expect(page.getByLabel('Title of the design')).toHaveValue('Damaged')
  const opened = await saved(page)
  expect(opened.stems).toEqual(before.stems.filter((_, i) => i !== 3 && i !== 5))
  // What this tool does not know is kept for the one that wrote it.
  expect(opened).toMatchObject({ note: { of: 'another tool' } })

  // The design that was open is still there, as one of two.
  await page.getByRole('button', { name: 'Start', exact: true }).click()
  await page.getByRole('button', { name: /^Window-sill bowl \d+ stems, \w+ \d+/ }).click()
  await expect(page.getByLabel('Title of the design')).toHaveValue('Window-sill bowl')
  expect(await saved(page)).toEqual(before)
})

/** The first bytes of a PNG, as it would be with its name changed. */
const PNG = Buffer.from(
  'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==',
  'base64',
)
const HOPELESS: [what: string, name: string, bytes: Buffer, words: RegExp][] = [
  ['an empty file', 'empty.json', Buffer.alloc(0), /expected JSON, got an empty file/],
  ['a file of something else', 'other.json', Buffer.from('{"a": 1}'), /format expected "pedicel-arrangement"/],
  [
    'half a file',
    'half.json',
    Buffer.from('{"format": "pedicel-arrangement", "version": 1, "stems": ['),
    /expected JSON/,
  ],
  ['a file of 3 MB', 'long.json', Buffer.alloc(3_000_000, ' '), /expected at most 2 MB, got 3\.0 MB/],
  ['a picture by another name', 'picture.json', PNG, /the file is a picture that carries no design/],
  [
    'a file of a newer tool',
    'newer.json',
    Buffer.from('{"format": "pedicel-arrangement", "version": 9}'),
    /version .*written by a newer Pedicel/,
  ],
  ['a deep file', 'deep.json', Buffer.from('['.repeat(5000)), /expected at most 32 levels of nesting, got 5000/],
]

test('what can’t be opened is refused in words, and the work stays', async ({ page }) => {
  await openSample(page, 'Window-sill bowl')
  const before = await saved(page)
  const dialog = page.getByRole('dialog')
  for (const [what, name, bytes, words] of HOPELESS)
    await test.step(what, async () => {
      await page.getByLabel('Open a design file').setInputFiles(asFile(name, bytes))
      await expect(dialog.getByRole('heading')).toHaveText(`${name} is not right`)
      await expect(dialog.getByRole('list', { name: 'What is wrong' })).toHaveText(words)
      await expect(dialog).toContainText('Your work is as it was')
      await expect(dialog.getByRole('button', { name: 'Open what is good' })).toBeHidden()
      await dialog.getByRole('button', { name: 'Leave it' }).click()
      await expect(dialog).toBeHidden()
    })
  expect(await saved(page)).toEqual(before)
})

test('a file that is dropped on the page opens like one that is chosen', async ({ page }) => {
  await openSample(page, 'Window-sill bowl')
  const before = await saved(page)
  const drop = async (name: string, text: string) => {
    const data = await page.evaluateHandle(
      ([n, t]) => {
        const carried = new DataTransfer()
        carried.items.add(new File([t], n))
        return carried
      },
      [name, text] as const,
    )
    // The browser would leave the page for the file if nobody took it.
    expect(
      await page.getByTestId('elevation').evaluate((view, dataTransfer) => {
        const over = new DragEvent('dragover', { dataTransfer, bubbles: true, cancelable: true })
        const down = new DragEvent('drop', { dataTransfer, bubbles: true, cancelable: true })
        return [view.dispatchEvent(over), view.dispatchEvent(down)]
      }, data),
    ).toEqual([false, false])
  }
  await drop('poem.txt', 'A rose is a rose')
  const dialog = page.getByRole('dialog')
  await expect(dialog).toContainText('expected JSON, got something else')
  await dialog.getByRole('button', { name: 'Leave it' }).click()
  expect(await saved(page)).toEqual(before)
  await drop('dropped.json', JSON.stringify({ ...before, title: 'Dropped' }))
  await expect(page.getByLabel('Title of the design')).toHaveValue('Dropped')
  expect(await saved(page)).toEqual({ ...before, title: 'Dropped' })
})
