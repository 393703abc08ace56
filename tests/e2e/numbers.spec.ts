import { execFile } from 'node:child_process'
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import { promisify } from 'node:util'
import type { Inspected } from '../../src/inspect/inspect.ts'
import { expect, hearCanvas, test } from './helpers.ts'
import { openSample, saved } from './sheet.ts'

/** What `npm run -s inspect` says of a design. */
const inspect = async (design: unknown): Promise<Inspected> => {
  const folder = mkdtempSync(join(tmpdir(), 'pedicel-'))
  try {
    const file = join(folder, 'design.json')
    writeFileSync(file, JSON.stringify(design))
    const cwd = resolve(import.meta.dirname, '../..')
    const { stdout } = await promisify(execFile)('npm', ['run', '-s', 'inspect', '--', file], { cwd })
    return JSON.parse(stdout) as Inspected
  } finally {
    rmSync(folder, { recursive: true })
  }
}

test('drawing, list and readings say the same as the command does of the saved file', async ({ page }) => {
  const heard = await hearCanvas(page)
  await openSample(page, 'Orchard supper')
  // One head moved, so that nothing on the sheet can be left over from the sample.
  await page.getByTestId('elevation').press(']')
  await page.getByTestId('elevation').press('ArrowUp')
  await page.getByTestId('elevation').press('ArrowUp')
  const design = await saved(page)
  const said = await inspect(design)
  const readings = page.getByRole('button', { name: /^Height to the vessel/ })
  const main = (key: string) => said.readings.proportion!.values[key] as number

  await test.step('readings', async () => {
    await expect(readings).toContainText(main('heightRatio').toFixed(2))
    for (const [name, id] of [
      ['What leads the eye', 'focal-prominence'],
      ['Air and holes', 'negative-space'],
      ['Height to the vessel', 'proportion'],
    ] as const) {
      const score = said.readings[id]!.score!
      const meter = page.getByRole('meter', { name: `${name}, score` })
      // What is shown at first may still be of the sample.
      await expect
        .poll(async () => Math.abs(Number(await meter.getAttribute('aria-valuenow')) - score))
        .toBeLessThanOrEqual(0.5)
    }
  })

  await test.step('all the way round: the widest spread and the largest hole are those of the readings', async () => {
    const sides = page.getByRole('region', { name: 'All the way round' }).getByRole('button')
    const most = async () => {
      const said = await sides.allTextContents()
      expect(said).toHaveLength(12)
      return Math.max(...said.map((text) => Number(/([\d.]+)$/.exec(text)?.[1])))
    }
    const shown = (mm: number) => Math.round(mm) / 10
    const hole = said.readings['negative-space']!.values.largestHole_mm as number
    await expect.poll(most).toBe(shown(hole))
    await readings.click()
    await expect(page.getByRole('region', { name: 'All the way round' })).toContainText('spread, cm')
    await expect.poll(most).toBe(shown(said.readings.proportion!.values.spread_mm as number))
  })

  await test.step('dimensions on the drawing', async () => {
    const { vessel } = design
    const tallest = main('heightRatio') * Math.max(vessel.width, vessel.depth, vessel.height)
    const lengths = async () => (await heard()).slice(-60).flatMap((t) => (/^\d+\.\d$/.test(t) ? [Number(t) * 10] : []))
    // The vessel's own height, and the flowers' above the rim: what is measured on the picture fits the reading within 5 %.
    await expect.poll(lengths).toContain(vessel.height)
    const near = (mm: number) => lengths().then((all) => Math.min(...all.map((l) => Math.abs(l - mm) / mm)))
    await expect.poll(() => near(tallest)).toBeLessThan(0.05)
    await expect.poll(() => near(tallest + vessel.height)).toBeLessThan(0.05)
  })

  await test.step('stem list and cost', async () => {
    const rows = page.getByRole('table').locator('tbody tr')
    await expect(rows).toHaveCount(said.stemList.length)
    for (const [i, { pieces, cut_mm }] of said.stemList.entries()) {
      const row = rows.nth(i)
      await expect(row.getByRole('spinbutton')).toHaveValue(String(pieces))
      const [least, most] = cut_mm.map((mm) => (Math.round(mm) / 10).toFixed(1))
      await expect(row).toContainText(least === most ? `${least}` : `${least}–${most}`)
    }
    const { total, lines, copies } = said.purchase
    expect(copies).toBe(design.setting.copies)
    const foot = page.getByRole('table').locator('tfoot')
    await expect(foot).toContainText(String(lines.reduce((n, l) => n + l.stems + l.spareStems, 0)))
    const cost = async () => Number(((await foot.getByRole('cell').last().textContent()) ?? '').replace(/[^\d.]/g, ''))
    await expect.poll(cost).toBeCloseTo(total, 2)
  })
})
