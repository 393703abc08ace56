import { readFileSync, writeFileSync } from 'node:fs'
import { gzipSync } from 'node:zlib'
import { PLANTS } from '../../src/catalogue/index.ts'
import { type Measured, measurePlant, waysFor } from './measure.ts'

/** Measures the stand-ins of every plant (or of those named) on our own solids and writes src/geometry/habits/fitted.json. */
const FILE = new URL('../../src/geometry/habits/fitted.json', import.meta.url)
/** A composition is good enough at this mean difference in each view. Ours. */
const GOOD = 0.025

const only = process.argv.slice(2)
const before = JSON.parse(readFileSync(FILE, 'utf8')).plants as Record<string, readonly number[]>
const rows: Record<string, readonly number[]> = {}
for (const plant of PLANTS) {
  const old = before[plant.id]
  if (only.length > 0 && !only.includes(plant.id)) {
    if (old) rows[plant.id] = old
    continue
  }
  let best: Measured | null = null
  const worst = (m: Measured): number => Math.max(...m.apart.map(Math.abs)) + 0.5 * m.rms
  for (const way of waysFor(plant)) {
    const made = measurePlant(plant, way)
    if (made && (!best || worst(made) < 0.9 * worst(best))) best = made
    if (best && Math.max(...best.apart.map(Math.abs)) < GOOD && best.rms < 0.04) break
  }
  if (!best) throw new Error(`${plant.id} can't be measured`)
  rows[plant.id] = best.row
  const percent = best.apart.map((x) => (100 * x).toFixed(1).padStart(5)).join(' ')
  console.log(`${plant.id.padEnd(20)} ${best.row.slice(1, 4)}  ${percent}  rms ${(100 * best.rms).toFixed(1)}`)
}
const about = 'Measured on our own solids by tests/calibrate/standins.ts; what the numbers mean: fitted.ts'
const text = `{\n"about": ${JSON.stringify(about)},\n"plants": {\n${Object.entries(rows)
  .map(([id, row]) => `${JSON.stringify(id)}: ${JSON.stringify(row)}`)
  .join(',\n')}\n}\n}\n`
writeFileSync(FILE, text)
console.log(`${gzipSync(text).length} bytes compressed`)
