import { execFile } from 'node:child_process'
import { readFileSync, writeFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { promisify } from 'node:util'
import { gzipSync } from 'node:zlib'
import { PLANTS, type Plant } from '../../src/catalogue/index.ts'
import { type Measured, measurePlant, waysFor } from './measure.ts'

/**
 * Measures the stand-ins of every plant (or of those named) on our own solids and writes src/geometry/habits/fitted.json.
 * `--rows` prints them instead, one a line; two of those work at once.
 */
const FILE = new URL('../../src/geometry/habits/fitted.json', import.meta.url)
/** A composition is good enough when no view of the examples differs by more. Ours. */
const GOOD = 0.042
const AT_ONCE = 2

/** What is worst in a composition; the examples may not differ by more than 5 %. */
const fault = ({ worst, first, rms }: Measured): number =>
  Math.max(...worst.map(Math.abs)) + 0.5 * rms + 3 * Math.max(0, first - GOOD)

const bestOf = (plant: Plant): Measured => {
  let best: Measured | null = null
  for (const way of waysFor(plant)) {
    const made = measurePlant(plant, way)
    if (made && (!best || fault(made) < (best.first > GOOD ? 0.98 : 0.9) * fault(best))) best = made
    if (best && Math.max(...best.worst.map(Math.abs)) < 0.05 && best.first < GOOD) break
  }
  if (!best) throw new Error(`${plant.id} can't be measured`)
  const percent = best.worst.map((x) => (100 * x).toFixed(1).padStart(5)).join(' ')
  console.error(
    `${plant.id.padEnd(20)} ${best.row.slice(1, 4)}  ${percent}  first ${(100 * best.first).toFixed(1)} rms ${(100 * best.rms).toFixed(1)}`,
  )
  return best
}

const asked = process.argv.slice(2).filter((word) => !word.startsWith('--'))
const plants = asked.length > 0 ? PLANTS.filter((plant) => asked.includes(plant.id)) : PLANTS
if (process.argv.includes('--rows')) {
  for (const plant of plants) console.log(JSON.stringify({ [plant.id]: bestOf(plant).row }))
} else {
  const run = promisify(execFile)
  const me = fileURLToPath(import.meta.url)
  const shares = Array.from({ length: AT_ONCE }, (_, k) => plants.filter((_, i) => i % AT_ONCE === k).map((p) => p.id))
  const found = await Promise.all(
    shares
      .filter((ids) => ids.length > 0)
      .map(async (ids) => {
        const child = run('npx', ['tsx', me, '--rows', ...ids])
        child.child.stderr?.pipe(process.stderr)
        const lines = (await child).stdout.trim().split('\n')
        return Object.assign({}, ...lines.map((line) => JSON.parse(line))) as Record<string, readonly number[]>
      }),
  )
  const before = JSON.parse(readFileSync(FILE, 'utf8')).plants as Record<string, readonly number[]>
  const now = Object.assign({}, before, ...found) as Record<string, readonly number[]>
  const about = 'Measured on our own solids by tests/calibrate/standins.ts; what the numbers mean: fitted.ts'
  const text = `{\n"about": ${JSON.stringify(about)},\n"plants": {\n${PLANTS.filter(({ id }) => now[id])
    .map(({ id }) => `${JSON.stringify(id)}: ${JSON.stringify(now[id])}`)
    .join(',\n')}\n}\n}\n`
  writeFileSync(FILE, text)
  console.log(`${gzipSync(text).length} bytes compressed`)
}
