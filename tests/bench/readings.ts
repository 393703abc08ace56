import type { Arrangement, Stem } from '../../src/arrangement/index.ts'
import { findPlant, PLANTS } from '../../src/catalogue/index.ts'
import { PART_STRIDE, type Resolved, resolveArrangement } from '../../src/geometry/index.ts'
import { createEngine, readAll } from '../../src/readings/index.ts'

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
  for (let i = 0; i < runs + 10; i++) {
    const run = prepare(i)
    const start = performance.now()
    run()
    // The first ten warm up the compiler.
    if (i >= 10) times.push(performance.now() - start)
  }
  return times.sort((a, b) => a - b)
}

/** The plain way for comparison: one view after another, every pixel asked of every ellipsoid whose box it is in. */
const slowSplat = (resolved: Resolved, engine: ReturnType<typeof createEngine>): number => {
  engine.update(resolved)
  const { mm, zeroRow, width, height } = engine.frame.grid
  let touched = 0
  for (let way = 0; way < 12; way++) {
    const [c, s] = [Math.cos((way * Math.PI) / 6), Math.sin((way * Math.PI) / 6)]
    const depth = new Float32Array(width * height).fill(-1e9)
    for (const { parts } of engine.ready)
      for (let o = 0; o < parts.length; o += PART_STRIDE) {
        if (parts[o] !== 0) continue
        const [xx, xy, xz, yy, yz, zz] = [5, 6, 7, 8, 9, 10].map((k) => parts[o + k]!) as [
          number,
          number,
          number,
          number,
          number,
          number,
        ]
        const sxx = c * c * xx - 2 * c * s * xy + s * s * yy
        const sxu = c * xz - s * yz
        const det = sxx * zz - sxu * sxu
        const X = parts[o + 2]! * c - parts[o + 3]! * s
        const [w, h] = [Math.sqrt(sxx), Math.sqrt(zz)]
        for (let U = parts[o + 4]! - h; U < parts[o + 4]! + h; U += mm)
          for (let V = X - w; V < X + w; V += mm) {
            const [dx, du] = [V - X, U - parts[o + 4]!]
            if ((zz * dx * dx - 2 * sxu * dx * du + sxx * du * du) / det > 1) continue
            const i = Math.floor(U / mm + zeroRow) * width + Math.floor(V / mm + width / 2)
            depth[i] = Math.max(depth[i] ?? 0, parts[o + 2]! * s + parts[o + 3]! * c)
            touched += 1
          }
      }
  }
  return touched
}

const line = (name: string, times: number[], slow: number): void => {
  const median = times[Math.floor(times.length / 2)]!
  const [min, max] = [times[0]!, times.at(-1)!]
  const against = 'painting the twelve ways round alone, pixel by pixel, without reading anything'
  console.log(JSON.stringify({ name, median, unit: 'ms', min, max, ratio: median / slow, against }))
}

const engine = createEngine()
const middle = (times: number[]): number => times[Math.floor(times.length / 2)]!
for (const [n, runs] of [
  [60, 40],
  [500, 15],
] as const) {
  const base = resolveArrangement(mound(n), findPlant)
  engine.update(base)
  // Every time the whole picture is painted anew: a design with another stem in front of the list is another picture.
  const two = [base, { ...base, stems: base.stems.slice(1) }]
  const slow = middle(time(runs, (i) => () => void slowSplat(two[i % 2]!, engine)))
  line(
    `readings-${n}`,
    time(runs, (i) => () => void readAll(two[i % 2]!, { engine, advice: false })),
    slow,
  )
  if (n !== 60) continue
  let document = base.document
  line(
    'readings-one-moved-60',
    time(runs, (i) => {
      document = {
        ...document,
        stems: document.stems.map((s, k) =>
          k === 30 ? { ...s, tip: [s.tip[0] + 3 * Math.sin(i), s.tip[1], s.tip[2]] } : s,
        ),
      }
      return () => void readAll(resolveArrangement(document, findPlant), { engine, advice: false })
    }),
    slow,
  )
}
