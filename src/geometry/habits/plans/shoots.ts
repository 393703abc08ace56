import type { Point3 } from '../../../arrangement/index.ts'
import type { LeafForm } from '../leaf.ts'
import { frameAt } from '../line.ts'
import { num, word } from '../organs.ts'
import { isOutline } from '../petal.ts'
import {
  about,
  along,
  at,
  clamp,
  cross,
  dot,
  type Frame,
  GOLDEN,
  lerp,
  mix,
  sub,
  TAU,
  turned,
  unit,
} from '../vector.ts'
import type { Plan, PlanCase } from './index.ts'
import { leafAt } from './leaves.ts'

/** A leafy length: its frame at a share of it (0 foot … 1 tip), its length in mm, how large its leaves are. */
interface Shoot {
  frame: (t: number) => Frame
  long: number
  size: number
  /** 0 the stem itself, then its twigs. */
  number: number
}

/** Nodes on one shoot: more would be a hedge. Ours. */
const MOST_NODES = 48
/** Leaves narrower than this are laid with fewer squares, mm. Ours. */
const SLIM = 18
/** So many leaves are laid in turn round the stem before the next higher: neighbours share a stand-in. Ours. */
const STRETCH = 8
/** Size of the topmost leaves over the lowest. Ours. */
const TIP = 0.45
/** Seed cups or fruits in a cluster hang round a point so many of their radii from the stem. Ours. */
const CLUSTER = 2.6

/** Leaves of a whole plant keep their size unless its width is set by hand: then they grow with it. */
const grownOf = ({ input, head }: PlanCase): number => head / Math.max(1, input.plant.headOpen_mm.value)

/** Length of the leaf that ends a shoot of full size, mm. */
const endLeaf = ({ shape }: PlanCase, length: number): number => length * Math.max(0.5, num(shape, 'tip', TIP))

/** Leaves along a shoot, `perNode` at each node: alternate in two ranks or a spiral, or pairs each turned from the last. */
const addLeaves = (c: PlanCase, shoot: Shoot, perNode: 1 | 2, every: number, length: number): void => {
  const { shape, random, layout } = c
  const ratio = num(shape, 'ratio', perNode === 2 ? 0.8 : 0.42)
  const outline = word(shape, 'outline', perNode === 2 ? 'disc' : 'leaf')
  const least = shoot.number === 0 ? num(shape, 'least', 2) : 2
  const n = clamp(Math.round(shoot.long / every), least, MOST_NODES)
  const spiral = num(shape, 'whorl', 0) > 0
  const flat = num(shape, 'flat', 0) * (Math.PI / 2)
  const roll = num(shape, 'roll', 0)
  const crowd = num(shape, 'crowd', 1)
  const spread = num(shape, 'spread', perNode === 2 ? 1 : 0.95)
  const rise = num(shape, 'rise', 0.6)
  const tip = num(shape, 'tip', TIP)
  const lobes = num(shape, 'lobes', 0)
  const slim = length * ratio < SLIM
  const laid: { leaf: LeafForm; at: number }[] = []
  for (let i = 0; i < n; i++) {
    const k = i / (n - 1)
    // Crowded leaves leave the lower part of a shoot bare.
    const f = shoot.frame(1 - 0.985 * (1 - k) ** crowd)
    const size = shoot.size * lerp(1, tip, k ** 1.5)
    const stretch = Math.floor((i * perNode) / STRETCH)
    for (let side = 0; side < perNode; side++) {
      const base =
        perNode === 2 ? (i % 2) * (Math.PI / 2) + side * Math.PI + 0.5 : spiral ? i * GOLDEN : i % 2 ? 0 : Math.PI
      const turn = base + (random() - 0.5) * 0.5
      const l = length * size * about(random, 0.08)
      const sideways = Math.cos(turn) < 0 ? 1 : -1
      laid.push({
        at: stretch + ((9 + (turn + stretch * GOLDEN) / TAU) % 1),
        leaf: leafAt(f, turn, l, l * ratio * about(random, 0.06), {
          outline: isOutline(outline) ? outline : 'leaf',
          fold: num(shape, 'fold', 0.16),
          droop: num(shape, 'droop', 0.2) * about(random, 0.5),
          wave: num(shape, 'wave', 0),
          stalk: num(shape, 'stalk', slim ? 0.02 : 0.1),
          spread: lerp(spread, spread * 0.6, k),
          rise: lerp(rise, Math.max(rise, 0.4), k ** 3),
          roll: sideways * flat + (random() < 0.5 ? -1 : 1) * roll * lerp(0.4, 1, random()),
          lobes,
          depth: num(shape, 'depth', 0),
          slant: lobes > 0 ? 0.5 : 0,
          nu: lobes > 0 ? 16 : slim ? 6 : 8,
          nv: slim ? 2 : 4,
          closing: lobes === 0,
          shoot: shoot.number,
        }),
      })
    }
  }
  // Stretch by stretch round the stem: those that follow each other hang together, as stand-ins need it.
  layout.leaves.push(...laid.sort((a, b) => a.at - b.at).map(({ leaf }) => leaf))
  const f = shoot.frame(1)
  const l = endLeaf(c, length) * shoot.size
  layout.leaves.push({
    ...leafAt(f, 0, l, l * ratio, {
      stalk: 0.02,
      droop: 0,
      nu: 6,
      nv: slim ? 2 : 4,
      closing: true,
      shoot: shoot.number,
    }),
    outline: isOutline(outline) ? outline : 'leaf',
    along: f.w,
    face: f.v,
  })
}

/** Seed cups or fruits in clusters along the leafy part. shape: clusters, fruits (of a cluster), fruit (width, mm), fruitLong. */
const addFruits = (c: PlanCase, end: number, leafy: number): void => {
  const { shape, random, line, layout } = c
  const clusters = Math.round(num(shape, 'clusters', 0) * clamp(leafy / 300, 0.4, 1.4))
  const each = Math.round(num(shape, 'fruits', 6))
  const r = (num(shape, 'fruit', 5) / 2) * grownOf(c)
  for (let i = 0; i < clusters; i++) {
    const k = (i + 0.5) / clusters
    const f = frameAt(line, end - leafy * lerp(0.86, 0.08, k))
    const turn = i * GOLDEN + 1 + 0.4 * random()
    const out = turned(f, Math.cos(turn), Math.sin(turn), 0.5)
    const middle = along(f.o, unit(out), r * CLUSTER)
    const towards = Array.from({ length: each }, (_, j): Point3 => {
      const h = each > 1 ? 1 - (2 * (j + 0.5)) / each : -1
      const a = j * GOLDEN + random()
      const q = Math.sqrt(1 - h * h)
      return unit(along([q * Math.cos(a), q * Math.sin(a), h], out, each > 1 ? 0.4 : 0))
    })
    layout.fruits.push({ o: middle, r: r * about(random, 0.12), long: num(shape, 'fruitLong', 1.2), towards })
  }
}

/**
 * A branch of greens: leaves along the stem and along its side twigs, so many mm apart, smaller toward the tip.
 * shape: every (mm between nodes), least (nodes of a stem that is cut short), leafLength (mm), ratio, outline, spread, rise, roll (how far they turn on their
 * stalks either way, radians), flat (1: all in the plane of the spray), whorl (1: in a spiral), crowd (more than 1:
 * toward the ends), tip (size of the topmost over the lowest), twigs, reach (of the lowest, mm), crown (of
 * the topmost over the lowest), bend (how steep they
 * turn up), zigzag (mm), lobes and depth (of leaves that are cut in), and those of the fruits.
 */
const leafyBranch =
  (perNode: 1 | 2): Plan =>
  (c) => {
    const { line, shape, random, head, above, long, layout } = c
    const grown = grownOf(c)
    const length = grown * num(shape, 'leafLength', head * 0.5)
    // The last leaf ends where the stem was said to end.
    const end = line.total - Math.min(0.95 * endLeaf(c, length), 0.3 * above)
    const leafy = Math.min(long, above * 0.95) - (line.total - end)
    const every = grown * num(shape, 'every', clamp(leafy / 12, 14, 26))
    const zigzag = num(shape, 'zigzag', 0)
    const nodes = clamp(Math.round(leafy / every), 2, MOST_NODES)
    const main = (t: number): Frame => {
      const f = frameAt(line, end - leafy * (1 - t))
      // From node to node to the side where the next leaf stands, none at the foot.
      const x = (t * (nodes - 1)) % 2
      const side = zigzag * (Math.abs(x - 1) * 2 - 1) * Math.min(1, 6 * t) * Math.min(1, 6 * (1 - t))
      return zigzag > 0 ? { ...f, o: at(f, side, 0, 0) } : f
    }
    addLeaves(c, { frame: main, long: leafy, size: 1, number: 0 }, perNode, every, length)
    const twigs = Math.round(num(shape, 'twigs', 0) * clamp(leafy / 280, 0.4, 1.5))
    const flat = num(shape, 'flat', 0) > 0
    for (let i = 0; i < twigs; i++) {
      const k = (i + 0.3) / twigs
      const f = main(lerp(0.04, 0.84, k))
      const turn = flat ? (i % 2 ? 0 : Math.PI) + 1.1 * (random() - 0.5) : i * GOLDEN + 0.4 * random()
      const reach = grown * num(shape, 'reach', 60) * lerp(1, num(shape, 'crown', 0.5), k) * about(random, 0.15)
      const lean = num(shape, 'lean', 0.7)
      const d = unit(turned(f, lean * Math.cos(turn), lean * Math.sin(turn), 1))
      const elbow = along(f.o, d, 0.55 * reach)
      const end = along(along(f.o, d, reach), f.w, num(shape, 'bend', 0.16) * reach)
      const frame = (t: number): Frame => {
        const w = unit(mix(sub(elbow, f.o), sub(end, elbow), t))
        const v = unit(along(f.v, w, -dot(f.v, w)), f.u)
        return { o: mix(mix(f.o, elbow, t), mix(elbow, end, t), t), u: cross(v, w), v, w }
      }
      const points = [0, 0.33, 0.67, 1].map((t) => frame(t).o)
      layout.twigs.push({ points, r0: layout.stem.r1 * 0.5, r1: 0.6, tissue: layout.stem.tissue })
      const from = num(shape, 'bare', 0.25)
      const part = (t: number): Frame => frame(lerp(from, 1, t))
      const shoot = { frame: part, long: reach * (1 - from), size: lerp(0.85, 0.7, k), number: i + 1 }
      addLeaves(c, shoot, perNode, every * 0.85, length)
    }
    addFruits(c, end, leafy)
    if (zigzag > 0) {
      const points = Array.from({ length: nodes }, (_, i) => main(i / (nodes - 1)).o)
      layout.twigs.push({ points, r0: layout.stem.r1, r1: 0.8, tissue: layout.stem.tissue })
      layout.stem.until = end - leafy
    } else {
      layout.stem.until = end
      layout.stem.r1 *= 0.35
    }
  }

/** Leaves left and right of a stem or in a spiral round it: ruscus, salal, pittosporum. */
export const alternateLeaves = leafyBranch(1)
/** Pairs of leaves, each turned a quarter from the last: eucalyptus, myrtle, boxwood, olive. */
export const oppositeLeaves = leafyBranch(2)
