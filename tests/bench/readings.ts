/**
 * How long readings take in Node, on one thread, and the steps that they are made of, each against a plain way of doing
 * the same. One JSON object a line; --smoke runs a few rounds each, to see that it runs.
 */
import { setFlagsFromString } from 'node:v8'
import { runInNewContext } from 'node:vm'
import { differenceCiede2000 } from 'culori'
import type { Arrangement, Stem } from '../../src/arrangement/index.ts'
import { findPlant, PLANTS } from '../../src/catalogue/index.ts'
import { deltaE2000, type Lab } from '../../src/colour/index.ts'
import { createGapSpace, measureAir, resolveArrangement } from '../../src/geometry/index.ts'
import { createEngine, readAll } from '../../src/readings/index.ts'
import { slowAir, slowSplat } from './naive.ts'

const smoke = process.argv.includes('--smoke')
/** Rounds before the first that counts: the compiler warms up. */
const WARM = 12

/** A mound of n stems from the catalogue, the same every time. */
const mound = (n: number): Arrangement => ({
  format: 'pedicel-arrangement',
  version: 1,
  title: 'bench',
  form: 'round',
  vessel: {
    plan: 'round',
    width: 140,
    depth: 140,
    height: 84,
    wall: 4,
    material: 'ceramic',
    colour: '#f1ece2',
    mechanics: 'netting',
    waterFill: 0.8,
  },
  palette: { name: 'bench', slots: [] },
  stems: Array.from({ length: n }, (_, i): Stem => {
    const [a, k] = [i * 2.399963, Math.sqrt((i + 0.5) / n)]
    const plant = PLANTS[(i * 7) % PLANTS.length]!
    const [lean, reach] = [1.35 * k, 150 + 20 * Math.sin(i)]
    return {
      id: `s${i}`,
      plant: plant.id,
      role: i % 10 === 0 ? 'focal' : plant.role,
      colour: plant.colours[i % plant.colours.length]?.hex ?? plant.leafColour,
      openness: 0.3 + 0.07 * (i % 10),
      mouth: [45 * k * Math.cos(a), 45 * k * Math.sin(a)],
      tip: [reach * Math.sin(lean) * Math.cos(a), reach * Math.sin(lean) * Math.sin(a), 10 + reach * Math.cos(lean)],
      bend: 0,
      piece: 'whole',
    }
  }),
  setting: { copies: 1, light: 'daylight', linen: '#fbfaf7', table: { shape: 'round', diameter: 1524 } },
})

const time = (runs: number, prepare: (i: number) => () => void): number[] => {
  const times: number[] = []
  for (let i = 0; i < runs + WARM; i++) {
    const run = prepare(i)
    const start = performance.now()
    run()
    if (i >= WARM) times.push(performance.now() - start)
  }
  return times.sort((a, b) => a - b)
}

const middle = (values: number[]): number => values[Math.floor(values.length / 2)]!
const line = (name: string, unit: string, values: number[], other: number, against: string): void => {
  const sorted = [...values].sort((a, b) => a - b)
  const median = middle(sorted)
  const figures = { name, median, unit, min: sorted[0], max: sorted.at(-1), ratio: median / other, against }
  console.log(JSON.stringify(figures))
}

const engine = createEngine()
const PAINTING = 'painting the twelve ways round alone, pixel by pixel, without reading anything'
for (const [n, rounds] of [
  [60, 40],
  [500, 15],
] as const) {
  const runs = smoke ? 3 : rounds
  const base = resolveArrangement(mound(n), findPlant)
  engine.update(base)
  // Every time the whole picture is painted anew: a design with another stem in front of the list is another picture.
  const two = [base, { ...base, stems: base.stems.slice(1) }]
  const slow = middle(time(runs, (i) => () => void slowSplat(two[i % 2]!, engine)))
  const whole = (i: number) => () => void readAll(two[i % 2]!, { engine, advice: false })
  line(`readings-${n}`, 'ms', time(runs, whole), slow, PAINTING)
  let document = base.document
  const moved = (i: number) => {
    document = {
      ...document,
      stems: document.stems.map((s, k) =>
        k === 30 ? { ...s, tip: [s.tip[0] + 3 * Math.sin(i), s.tip[1], s.tip[2]] } : s,
      ),
    }
    return () => void readAll(resolveArrangement(document, findPlant), { engine, advice: false })
  }
  line(`readings-one-moved-${n}`, 'ms', time(runs, moved), slow, PAINTING)
}

/** Bytes that a run leaves for the collector, typed arrays among them; it is asked to clear up before each run. */
const allocated = (runs: number, prepare: (i: number) => () => void): number[] => {
  setFlagsFromString('--expose-gc')
  const collect = runInNewContext('gc') as () => void
  return Array.from({ length: runs }, (_, i) => {
    const run = prepare(i)
    collect()
    const before = process.memoryUsage()
    run()
    const after = process.memoryUsage()
    return (after.heapUsed - before.heapUsed + after.arrayBuffers - before.arrayBuffers) / 1024
  })
}
{
  const base = resolveArrangement(mound(60), findPlant)
  const two = [base, { ...base, stems: base.stems.slice(1) }]
  const runs = smoke ? 3 : 20
  const kept = allocated(runs, (i) => () => void readAll(two[i % 2]!, { engine, advice: false }))
  const anew = allocated(runs, (i) => () => void readAll(two[i % 2]!, { engine: createEngine(), advice: false }))
  line('readings-allocation-60', 'kB', kept, middle(anew.sort((a, b) => a - b)), 'the same with an engine made anew')
}

{
  engine.update(resolveArrangement(mound(60), findPlant))
  const { width, zeroRow } = engine.frame.grid
  const space = createGapSpace(width * width)
  const holes = (mask: Uint8Array) => measureAir(mask, width, width, zeroRow, space)
  // A lattice cut from each outline, so that there are holes to look into.
  const lattice = (v: number, i: number): number => (v && (i % 23 < 5 || Math.floor(i / width) % 19 < 5) ? 1 : 0)
  const rings = engine.layers.flatMap(({ mass }) => (mass ? [mass.map(lattice)] : []))
  for (const mask of rings) {
    const [quick, plain] = [holes(mask), slowAir(mask, width, zeroRow)]
    if (quick.enclosed !== plain.enclosed || Math.abs(quick.radius ** 2 - plain.best) > 1e-6)
      throw new Error('the quick way finds other holes than the plain way')
  }
  const slow = middle(time(smoke ? 1 : 3, () => () => void rings.map((m) => slowAir(m, width, zeroRow))))
  const against = 'filling from the edge, then each enclosed pixel against each pixel of mass'
  line(
    'holes-of-six-ways',
    'ms',
    time(smoke ? 3 : 40, () => () => void rings.map(holes)),
    slow,
    against,
  )
}

{
  const some = Array.from({ length: 200 }, (_, i): Lab => {
    const at = (step: number): number => (i * step) % 1
    return [100 * at(0.618034), 160 * at(0.7548777) - 80, 160 * at(0.5698403) - 80]
  })
  const theirs = differenceCiede2000()
  const objects = some.map(([l, a, b]) => ({ mode: 'lab65' as const, l, a, b }))
  const pairs = some.length ** 2
  const perSecond = (times: number[]): number[] => times.map((ms) => (1000 * pairs) / ms)
  let sum = 0
  const all =
    <T>(list: T[], of: (p: T, q: T) => number) =>
    () => {
      for (const p of list) for (const q of list) sum += of(p, q)
    }
  const runs = smoke ? 3 : 20
  const own = perSecond(time(runs, () => all(some, deltaE2000)))
  const other = middle(perSecond(time(runs, () => all(objects, theirs))))
  if (!(sum > 0)) throw new Error('no difference was worked out')
  line('differences-per-second', 'ΔE00/s', own, other, 'culori, the same pairs, already in CIELAB')
}
