/**
 * How long pictures take in Node, on one thread: a design of 40 stems at 1.1 px to the mm (a view of the sheet) on an
 * ordinary screen (DPR 1) and a dense one (DPR 2). `cold` starts with nothing remembered but compiled code.
 * One JSON object a line; --smoke runs one round each.
 */
import type { Arrangement, Stem } from '../../src/arrangement/index.ts'
import { PLANTS } from '../../src/catalogue/index.ts'
import { createCache, type PaintOptions, paintPicture, type Quality, stemSprite } from '../../src/drawing/index.ts'
import { type Resolved, resolveArrangement } from '../../src/geometry/index.ts'

const smoke = process.argv.includes('--smoke')
const SCALE = 1.1
const FRONT = { turn: 0, pitch: 0 }
const ABOVE = { turn: 0, pitch: 90 }
const ELEVATION = { left: -240, right: 240, bottom: -100, top: 230 }
const PLAN = { left: -240, right: 240, bottom: -240, top: 240 }

/** A round design of so many stems of all kinds, the heads of table size, laid out at golden angles. */
const design = (count: number): Arrangement => {
  const plants = PLANTS.filter((p) => p.headOpen_mm.value <= 110)
  const stems = Array.from({ length: count }, (_, i): Stem => {
    const plant = plants[(i * 7) % plants.length]!
    const k = Math.sqrt((i + 0.5) / count)
    const a = i * 2.39996
    const [x, y] = [Math.cos(a) * k, Math.sin(a) * k]
    const tip: [number, number, number] = [150 * x, 150 * y, 150 - 110 * k * k + (i % 5) * 6]
    const head = Math.min(70, plant.headOpen_mm.value)
    const colour = ['#e8c0a4', '#6f1527', '#cb6634', '#6b4a80', '#eae6d8', '#5b7a45'][i % 6]!
    return {
      id: `s${i}`,
      plant: plant.id,
      role: plant.role,
      colour,
      openness: 0.8,
      mouth: [50 * x, 50 * y],
      tip,
      bend: 0,
      head,
      piece: 'whole',
    }
  })
  return {
    format: 'pedicel-arrangement',
    version: 1,
    title: 'bench',
    form: 'round',
    vessel: {
      plan: 'round',
      width: 150,
      depth: 150,
      height: 92,
      wall: 5,
      material: 'ceramic',
      colour: '#f1ece2',
      mechanics: 'netting',
      waterFill: 0.8,
    },
    palette: { name: '', slots: [] },
    stems,
    setting: { copies: 1, light: 'daylight', linen: '#fbfaf7', table: { shape: 'round', diameter: 1500 } },
  }
}

const bothViews = (resolved: Resolved, dpr: number, quality: Quality, cache = createCache()): void => {
  const options: PaintOptions = { quality, section: true, vessel: 'grey' }
  paintPicture(resolved, FRONT, { ...ELEVATION, scale: SCALE * dpr }, options, cache)
  paintPicture(resolved, ABOVE, { ...PLAN, scale: SCALE * dpr }, options, cache)
}

const measure = (name: string, rounds: number, goal: string, run: (round: number) => void): void => {
  run(0)
  const times: number[] = []
  for (let i = 1; i <= (smoke ? 1 : rounds); i++) {
    const start = performance.now()
    run(i)
    times.push(performance.now() - start)
  }
  times.sort((a, b) => a - b)
  const round = (x: number): number => Math.round(x * 100) / 100
  const median = round(times[times.length >> 1]!)
  const line = { name, median, unit: 'ms', min: round(times[0]!), max: round(times[times.length - 1]!) }
  console.log(JSON.stringify({ ...line, ratio: round(median / Number.parseFloat(goal)), against: goal }))
}

// Fresh stem objects every round, so that nothing is remembered by identity.
const forty = (): Resolved => resolveArrangement(structuredClone(design(40)))

for (const dpr of [1, 2]) {
  measure(`draw-draft-40-cold-dpr${dpr}`, 7, '250 ms', () => bothViews(forty(), dpr, 'draft'))
  measure(`draw-fine-40-cold-dpr${dpr}`, 5, '1500 ms', () => bothViews(forty(), dpr, 'fine'))
  for (const quality of ['draft', 'fine'] as const) {
    const document = design(40)
    const cache = createCache()
    bothViews(resolveArrangement(document), dpr, quality, cache)
    measure(`draw-${quality}-40-one-moved-dpr${dpr}`, 15, '60 ms', (round) => {
      const stems = [...document.stems]
      const [x, y, z] = stems[3]!.tip
      stems[3] = { ...stems[3]!, tip: [x + round, y, z + 0.5 * round] }
      bothViews(resolveArrangement({ ...document, stems }), dpr, quality, cache)
    })
  }
}

const moving = design(40)
measure('draw-sprite-draft-moving', 40, '6 ms', (round) => {
  const stem = moving.stems[round % 20]!
  const [x, y, z] = stem.tip
  const [moved] = resolveArrangement({ ...moving, stems: [{ ...stem, tip: [x + round, y, z + 3] }] }).stems
  stemSprite(moved!, FRONT, SCALE, 'draft', createCache())
})
measure('draw-draft-500-cold', 3, '3 s', () => bothViews(resolveArrangement(structuredClone(design(500))), 1, 'draft'))
