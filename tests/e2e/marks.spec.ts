import type { Page } from '@playwright/test'
import { expect, hearCanvas, test, undoButton } from './helpers.ts'
import { begin, openSample, saved } from './sheet.ts'

/** What the drawing itself says that it has just drawn over the flowers. */
const marks = async (page: Page): Promise<string[]> =>
  ((await page.getByTestId('views').getAttribute('data-marks')) ?? '').split(', ').filter((m) => m !== '')
const litStems = async (page: Page) => (await marks(page)).filter((m) => m.startsWith('stem ')).map((m) => m.slice(5))
const reading = (page: Page, name: string) => page.getByRole('button', { name: new RegExp(`^${name}`) })
/** The small picture of the side on which the largest hole gapes. */
const worstSide = (page: Page) => page.getByRole('button', { name: /largest hole .*the most/ }).first()

test('pointing at a reading, by focus, shows its marks on the drawing; leaving it takes them away', async ({
  page,
}) => {
  const heard = await hearCanvas(page)
  await openSample(page, 'Orchard supper')
  const focal = (await saved(page)).stems.filter((s) => s.role === 'focal').map((s) => s.id)

  await test.step('what leads the eye: the focal flowers', async () => {
    await reading(page, 'What leads the eye').focus()
    await expect.poll(async () => (await litStems(page)).sort()).toEqual(expect.arrayContaining(focal))
  })
  await test.step('air and holes: a circle with its width in the person’s units', async () => {
    // The hole is drawn from the side on which it gapes; its values stand beside every side.
    await worstSide(page).click()
    await reading(page, 'Air and holes').focus()
    await expect.poll(() => marks(page)).toContain('circle')
    expect(await litStems(page)).toEqual([])
    expect((await heard()).slice(-40).some((t) => /^hole ⌀ \d+\.\d cm$/.test(t))).toBe(true)
  })
  await test.step('colours together: the pair that agrees least', async () => {
    await reading(page, 'Colours together').focus()
    await expect.poll(async () => (await litStems(page)).length).toBeGreaterThan(1)
    expect(await marks(page)).not.toContain('circle')
  })
  await test.step('height to the vessel: level lines', async () => {
    await reading(page, 'Height to the vessel').focus()
    await expect.poll(() => marks(page)).toContain('level')
    expect((await heard()).slice(-40).some((t) => /^\d\.\d ×$/.test(t))).toBe(true)
  })
  await test.step('none pointed at: none drawn', async () => {
    await page.getByLabel('Title of the design').focus()
    await expect.poll(() => marks(page)).toEqual([])
  })
})

test('marks that hold from another side are one press away', async ({ page }) => {
  await openSample(page, 'Orchard supper')
  await reading(page, 'Air and holes').click()
  await worstSide(page).click()
  await expect.poll(() => marks(page)).toContain('circle')
  await page.getByRole('button', { name: '+ 15°: turn anticlockwise' }).click()
  await expect.poll(() => marks(page)).not.toContain('circle')
  await page
    .getByTestId('elevation')
    .getByRole('button', { name: /^seen from/ })
    .click()
  await expect.poll(() => marks(page)).toContain('circle')
})

test('advice that is pointed at lights its stems and draws where they would go; done, it is one step', async ({
  page,
}) => {
  await openSample(page, 'Orchard supper')
  // For a vertical design it is far too wide, and drawing it in is advised.
  const score = page.getByRole('meter', { name: 'Height to the vessel, score' })
  const was = (await score.getAttribute('aria-valuenow')) ?? ''
  await page.getByLabel('form', { exact: true }).selectOption('vertical')
  await expect(score).not.toHaveAttribute('aria-valuenow', was)
  const before = await saved(page)
  await reading(page, 'Height to the vessel').click()
  const act = page.getByRole('button', { name: 'Do it' })
  await act.hover()
  await expect.poll(() => marks(page)).toContain('phantom')
  const lit = await litStems(page)
  expect(lit.length).toBeGreaterThan(0)
  expect(await saved(page)).toEqual(before)
  // Pressed for the file the pointer left it; back on it, the same is lit.
  await act.hover()
  await expect.poll(() => litStems(page)).toEqual(lit)
  await act.click()
  await expect.poll(() => marks(page)).not.toContain('phantom')
  const changed = (await saved(page)).stems.filter((s, i) => JSON.stringify(s) !== JSON.stringify(before.stems[i]))
  expect(changed.map((s) => s.id).sort()).toEqual([...lit].sort())
  await undoButton(page).click()
  expect(await saved(page)).toEqual(before)
  await undoButton(page).click()
  await expect(undoButton(page)).toHaveAttribute('aria-disabled', 'true')
})

test('lengths of marks and advice follow the units, as soon as those change', async ({ page }) => {
  const heard = await hearCanvas(page)
  await openSample(page, 'Orchard supper')
  await reading(page, 'Air and holes').click()
  await worstSide(page).click()
  const last = async () => (await heard()).slice(-60).findLast((t) => t.startsWith('hole ⌀') && / (mm|cm|in)$/.test(t))
  await expect.poll(last).toMatch(/ cm$/)
  await page.getByRole('button', { name: /^vessel/ }).click()
  await page.getByRole('dialog', { name: 'Vessel' }).getByLabel('measures in').selectOption('in')
  await page.getByRole('dialog', { name: 'Vessel' }).getByRole('button', { name: 'Done' }).click()
  await expect.poll(last).toMatch(/ in$/)
  await expect(page.getByRole('region', { name: 'All the way round' })).toContainText('largest hole, in')
})

test('before there is anything to read, and while nothing is open, the readings say where to begin', async ({
  page,
}) => {
  await page.goto('/')
  await expect(page.getByRole('button', { name: 'Open a file' })).toBeVisible()
  // Nothing is open yet: nothing to save.
  await expect(page.getByRole('button', { name: 'Save a file' })).toBeHidden()
  await begin(page)
  const where = page.getByRole('region', { name: 'Where to begin' })
  await expect(where).toContainText('Readings come with the first stems')
  await openSample(page, 'Orchard supper')
  await expect(where).toContainText(/least so Height to the vessel, \d+ of 100/)
  await where.getByRole('button', { name: 'Open it' }).click()
  await expect(reading(page, 'Height to the vessel')).toHaveAttribute('aria-expanded', 'true')
  await expect(where).toBeHidden()
})

/** A design of one colour, tall enough for the eyes of every guest. */
const tallWhite = {
  format: 'pedicel-arrangement',
  version: 1,
  title: 'Tall and white',
  form: 'vertical',
  vessel: {
    plan: 'round',
    width: 120,
    depth: 120,
    height: 200,
    wall: 4,
    material: 'glass',
    colour: '#dde4e2',
    mechanics: 'none',
    waterFill: 0.7,
  },
  palette: { name: '', slots: [] },
  stems: [-2, -1, 0, 1, 2].map((i) => ({
    id: `w${i + 3}`,
    plant: 'rose-garden',
    role: 'focal',
    colour: '#f5f0e6',
    openness: 0.8,
    mouth: [4 * i, 0],
    tip: [40 * i, 10 * i, 380 - 30 * Math.abs(i)],
    bend: 0,
    piece: 'whole',
  })),
  setting: { copies: 1, light: 'daylight', linen: '#fbfaf7', table: { shape: 'round', diameter: 1524 } },
}
const openFile = async (page: Page, design: object): Promise<void> => {
  await page.goto('/')
  const buffer = Buffer.from(JSON.stringify(design))
  await page.getByLabel('Open a design file').setInputFiles({ name: 'a.json', mimeType: 'application/json', buffer })
  await expect(page.getByTestId('elevation')).toBeVisible()
  // Beside the drawing only from 1200 px on.
  if ((page.viewportSize()?.width ?? 0) >= 1200) return
  await page
    .getByRole('navigation', { name: 'Below the drawing' })
    .getByRole('button', { name: /^Readings/ })
    .click()
}

for (const [width, height] of [
  [1440, 900],
  [1024, 768],
  [390, 844],
] as const)
  test(`the lines of short and of tall guests’ eyes are both named at ${width} × ${height}`, async ({ page }) => {
    await page.setViewportSize({ width, height })
    const heard = await hearCanvas(page)
    await openFile(page, tallWhite)
    // By key: a pointer would come to lie on another row when this one opens.
    await page.getByRole('button', { name: /View across the table/ }).press('Enter')
    await expect.poll(() => marks(page)).toContain('level')
    const last = async () => (await heard()).slice(-40)
    await expect.poll(last).toContain('short guests’ eyes, 38.6 cm')
    expect(await last()).toContain('tall guests’ eyes, 54.8 cm')
  })

test('flowers of a single colour are not judged, but how they stand off the linen is said; no name, no comma', async ({
  page,
}) => {
  await openFile(page, tallWhite)
  await expect(page.getByText(/^From dark to light 0 L\*; against the linen \d+ ΔE00$/)).toBeVisible()
  await reading(page, 'Colours together').click()
  await expect(page.getByText('CIEDE2000, ISO/CIE 11664-6').first()).toBeVisible()
  await expect(page.getByRole('region', { name: 'Palette in use' })).toContainText('Paletteby size of heads')
})
