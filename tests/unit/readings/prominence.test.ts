import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import type { Arrangement, Stem } from '../../../src/arrangement/index.ts'
import { findPlant } from '../../../src/catalogue/index.ts'
import { hexOf, labOf } from '../../../src/colour/index.ts'
import { resolveArrangement } from '../../../src/geometry/index.ts'
import { offGrounds } from '../../../src/readings/contrast.ts'
import { measureProminence } from '../../../src/readings/focal-prominence.ts'
import { createEngine, readAll } from '../../../src/readings/index.ts'
import { sketched } from './generated.ts'
import { ballStandins, bowl, design, mound, resolve, stem } from './made.ts'

const engine = createEngine(ballStandins)
const lead = (d: Arrangement) => {
  const r = readAll(resolve(d), { engine, advice: false })[0]!
  const [share, visible, rank, vessel] = ['focalShare', 'focalVisible', 'focalRank', 'vesselRank'].map(
    (k) => r.values[k] as number,
  )
  const pull = r.values.vesselPull as number
  return { score: r.score!, share: share!, visible: visible!, rank: rank!, vessel: vessel!, pull }
}
const GREENS: Partial<Stem> = { plant: 'green', role: 'greens', colour: '#55703f' }
const others = mound(18, (i) => ({ colour: '#f0d3cf', head: 40, ...(i % 3 === 1 ? GREENS : {}) }))
const face = (over: Partial<Stem> = {}): Stem =>
  stem('f', [0, -105, 110], { role: 'focal', colour: '#7b1734', head: 100, ...over })

describe('what leads, as an eye sees it', () => {
  it('one large bloom that faces one side leads, is unhidden, and scores high', () => {
    const r = lead(design([face(), ...others]))
    expect(r.rank).toBe(1)
    expect(r.visible).toBeGreaterThan(0.7)
    expect(r.score).toBeGreaterThan(95)
    expect(r.vessel).toBeGreaterThan(3)
  })
  it('four large blooms round a centrepiece lead, though each is hidden from the other side', () => {
    const four = [0, 1, 2, 3].map((i) => {
      const a = (i * Math.PI) / 2 + 0.4
      return face({ id: `f${i}`, tip: [105 * Math.cos(a), 105 * Math.sin(a), 110], head: 90 })
    })
    const r = lead(design([...four, ...others]))
    expect([r.rank, r.score > 90]).toEqual([1, true])
  })
  it('a cream bloom among greens leads on a pale cloth', () => {
    const green = mound(18, (i) => ({ head: 44, ...(i % 2 ? GREENS : { colour: '#c9a3c4', head: 30 }) }))
    expect(lead(design([face({ colour: '#f3e3d8' }), ...green])).rank).toBe(1)
  })
  it('a scatter of florets draws less than one bloom of the same visible area', () => {
    const scatter = [-60, 60].flatMap((x) =>
      [90, 130, 170, 210].map((z) => stem(`${x} ${z}`, [x, 0, z], { colour: '#7b1734', head: 20 })),
    )
    const solid = stem('solid', [0, 0, 150], { role: 'focal', colour: '#7b1734', head: 20 * Math.sqrt(8) })
    expect(lead(design([solid, ...scatter])).rank).toBe(1)
  })
  it('smaller or paler: share and score never rise, and fall in the end', () => {
    const runs: Partial<Stem>[][] = [
      [100, 75, 55, 40, 25].map((head) => ({ head })),
      ['#7b1734', '#a55a68', '#c99a9b', '#f0d3cf'].map((colour) => ({ colour, head: 50 })),
    ]
    for (const run of runs) {
      const seen = run.map((over) => lead(design([face(over), ...others])))
      seen.slice(1).forEach((r, i) => {
        expect(r.share).toBeLessThan(seen[i]!.share)
        expect(r.score).toBeLessThanOrEqual(seen[i]!.score + 1e-9)
        expect(r.rank).toBeGreaterThanOrEqual(seen[i]!.rank)
      })
      expect(seen.at(-1)!.score).toBeLessThan(seen[0]!.score - 4)
    }
  })
  it('each leaf set before it hides more of it and takes from its share', () => {
    const leaf = (x: number, z: number): Stem => stem(`g${x} ${z}`, [x, -150, z], { ...GREENS, head: 70 })
    const leaves = [leaf(-40, 90), leaf(40, 130), leaf(-30, 150), leaf(35, 75), leaf(0, 110)]
    const seen = [0, 1, 2, 3, 4, 5].map((n) => lead(design([face(), ...others, ...leaves.slice(0, n)])))
    seen.slice(1).forEach((r, i) => {
      expect(r.share).toBeLessThan(seen[i]!.share)
      expect(r.visible).toBeLessThan(seen[i]!.visible)
      expect(r.rank).toBeGreaterThanOrEqual(seen[i]!.rank)
    })
    expect(seen.at(-1)!.score).toBeLessThan(seen[0]!.score - 10)
  })
  it('a vessel made loud ranks before more stems and costs points', () => {
    const d = (colour: string) => lead(design([face(), ...others], { vessel: bowl({ colour }) }))
    const [quiet, loud] = [d('#f1ece2'), d('#d01818')]
    expect(loud.vessel).toBeLessThan(quiet.vessel)
    expect(loud.score).toBeLessThan(quiet.score)
  })
  it('a focal bloom far down the order scores no better than half', () => {
    const many = mound(24, () => ({ colour: '#7b1734', head: 60 }))
    const r = lead(design([face({ colour: '#f0d3cf', head: 20, tip: [0, -60, 40] }), ...many]))
    expect(r.rank).toBeGreaterThanOrEqual(10)
    expect(r.score).toBeLessThan(50)
  })
})

describe('ground and vessel', () => {
  it('white lilies on white cloth are not lost: behind them is the room too', () => {
    const lilies = (colour: string) =>
      [-40, 0, 40].map((x) => stem(`l${x}`, [x, -40, 150], { role: 'focal', colour, head: 120 }))
    const leaves = [-90, 90].map((x) => stem(`g${x}`, [x, 0, 110], { ...GREENS, head: 60 }))
    const share = (colour: string) => lead(design([...lilies(colour), ...leaves])).share
    expect(share('#faf8f2')).toBeGreaterThan(0.25)
    expect(share('#faf8f2')).toBeLessThan(share('#7b1734'))
  })
  it('what is lost against the cloth or the room is lost more than by half, and nothing is below nothing', () => {
    expect(offGrounds(0, 0)).toBe(0)
    expect(offGrounds(40, 40)).toBeCloseTo(40, 9)
    expect(offGrounds(0, 48)).toBeLessThan(24)
    for (const d of [0, 10, 50]) expect(offGrounds(d + 1, 30)).toBeGreaterThan(offGrounds(d, 30))
  })
  it('a long trough under four focal roses is held against all of them together', () => {
    const vessel = bowl({ plan: 'rectangular', width: 420, depth: 120, height: 100, colour: '#c9a37a' })
    const roses = [-150, -50, 50, 150].map((x) => stem(`r${x}`, [x, -30, 70], { colour: '#b3405a', head: 60 }))
    const focal = (n: number) =>
      lead(
        design(
          roses.map((s, i) => (i < n ? { ...s, role: 'focal' } : s)),
          { vessel },
        ),
      ).pull
    expect(focal(4)).toBeLessThan(focal(2))
    expect(focal(2)).toBeLessThan(focal(1))
  })
})

describe('a focal bloom that takes the colour of what it stands in', () => {
  const apart = (a: string, b: string): number => {
    const [p, q] = [labOf(a), labOf(b)]
    return Math.hypot(p[0] - q[0], p[1] - q[1], p[2] - q[2])
  }
  const toward = (from: string, to: string, t: number): string => {
    const [a, b] = [labOf(from), labOf(to)]
    return hexOf([a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1]), a[2] + t * (b[2] - a[2])])
  }
  const LEAF = '#55703f'
  /** Sketches whose focal blooms stand off both cloth and leaves, and have greens about them. */
  const SKETCHES = Array.from({ length: 60 }, (_, seed) => sketched(seed + 1)).filter(({ stems, setting }) => {
    const focal = stems.find((s) => s.role === 'focal')
    return focal && apart(focal.colour as string, setting.linen) > 35 && apart(focal.colour as string, LEAF) > 35
  })
  const recoloured = (d: Arrangement, to: string, t: number) =>
    lead({
      ...d,
      stems: d.stems.map((s) => (s.role === 'focal' ? { ...s, colour: toward(s.colour as string, to, t) } : s)),
    })

  it('washed out to the cloth it holds less of the eye and scores no more, in every sketch', () => {
    expect(SKETCHES.length).toBeGreaterThan(30)
    for (const d of SKETCHES) {
      const [before, after] = [recoloured(d, d.setting.linen, 0), recoloured(d, d.setting.linen, 1)]
      expect(after.share).toBeLessThanOrEqual(before.share)
      expect(after.score).toBeLessThanOrEqual(before.score + 1e-9)
    }
  })
  it('turned leaf green it holds less of the eye, in seven sketches of eight where a third is greens', () => {
    const leafy = SKETCHES.filter(
      ({ stems }) => stems.filter((s) => s.role === 'greens').length >= stems.length / 3 - 1,
    )
    const lost = leafy.filter((d) => recoloured(d, LEAF, 1).share < recoloured(d, LEAF, 0).share)
    expect(leafy.length).toBeGreaterThan(15)
    expect(lost.length).toBeGreaterThanOrEqual(0.875 * leafy.length)
  })
  it('a pale bloom much larger than the pale ones about it leads; a leaf-green one among leaves does not', () => {
    const pale = mound(18, (i) => ({ colour: '#f0d3cf', head: 50, ...(i % 3 === 1 ? GREENS : {}) }))
    const own = lead(design([face({ colour: '#f0d3cf', head: 100 }), ...pale]))
    expect(own.rank).toBe(1)
    expect(own.score).toBeGreaterThan(95)
    const leaves = mound(24, (i) => ({
      ...GREENS,
      head: 55,
      ...(i % 4 ? {} : { plant: 'ball', role: 'mass', colour: '#f0d3cf' }),
    }))
    expect(lead(design([face({ colour: LEAF, head: 60 }), ...leaves])).rank).toBeGreaterThan(1)
  })
  it.each(['orchard-supper', 'twenty-four-cups'])(
    '%s: its focal flowers lead as they are, and hold less turned to the colour of its greens or its cloth',
    (name) => {
      const d = JSON.parse(readFileSync(`public/samples/${name}.json`, 'utf8')) as Arrangement
      const real = createEngine()
      const seen = (colour?: string) => {
        const stems = d.stems.map((s) => (s.role === 'focal' && colour ? { ...s, colour } : s))
        real.update(resolveArrangement({ ...d, stems }, findPlant))
        return measureProminence(real)
      }
      const own = seen()
      expect(own.focalRank).toBe(1)
      const greens = d.palette.slots.find((s) => s.part === 'greens')!.colour
      for (const colour of [greens, d.setting.linen]) {
        expect(seen(colour).focalShare!).toBeLessThan(0.85 * own.focalShare!)
        expect(seen(colour).focalLead!).toBeLessThan(own.focalLead!)
      }
    },
  )
  // Pale among pale: turned to the colour of its greens it would hold as much, which the model's contrast can't tell apart.
  it('window-sill-bowl: its pale peony leads as it is', () => {
    const d = JSON.parse(readFileSync('public/samples/window-sill-bowl.json', 'utf8')) as Arrangement
    const real = createEngine()
    real.update(resolveArrangement(d, findPlant))
    expect(measureProminence(real).focalRank).toBe(1)
  })
  it('among leaves a red bloom leads, and a leaf-green one of the same size does not', () => {
    const leaves = mound(20, () => ({ ...GREENS, head: 60 }))
    const some = mound(6, () => ({ colour: '#f0d3cf', head: 45 })).map((s) => ({ ...s, id: `p${s.id}` }))
    const [red, green] = ['#b3202c', LEAF].map((colour) =>
      lead(design([face({ colour, head: 70 }), ...leaves, ...some])),
    )
    expect(red!.rank).toBe(1)
    expect(green!.rank).toBeGreaterThan(1)
    expect(green!.share).toBeLessThan(red!.share / 2)
  })
})
