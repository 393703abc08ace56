import { type Arrangement, mouthFor, type Point2, type Point3, type Role } from '../arrangement/index.ts'
import type { Plant } from '../catalogue/index.ts'

const GOLDEN = Math.PI * (3 - Math.sqrt(5))

/**
 * How far out (× vessel width) and how high (× the larger vessel dimension) a stem of each role starts: focal low and
 * central, lines tall, greens low and wide. Common practice in the order of size and height (transition from the focal
 * point outward); the numbers are ours.
 */
const START: Record<Role, { out: number; up: number }> = {
  focal: { out: 0.4, up: 0.55 },
  form: { out: 0.6, up: 0.5 },
  mass: { out: 0.62, up: 0.6 },
  filler: { out: 0.7, up: 0.75 },
  line: { out: 0.5, up: 1.2 },
  greens: { out: 1, up: 0.3 },
}

/**
 * Where the next stem of a plant may go: turned by the golden angle from the last one and, of twelve tries, the one
 * farthest from the heads that are there. Same document, same place.
 * @returns mouth and tip, mm
 */
export const freePlace = (document: Arrangement, plant: Plant): { mouth: Point2; tip: Point3 } => {
  const { vessel, stems } = document
  const { out, up } = START[plant.role]
  const reach = Math.max(30, out * Math.min(vessel.width, vessel.depth) + plant.headOpen_mm.value * 0.2)
  const height = up * Math.max(vessel.height, vessel.width)
  const same = stems.filter((s) => s.role === plant.role).length
  const best = { gap: -1, mouth: [0, 0] as Point2, tip: [0, 0, height] as Point3 }
  for (let i = 0; i < 12; i++) {
    const a = (same + i) * GOLDEN - Math.PI / 2
    const r = same === 0 && i === 0 && plant.role !== 'greens' ? reach * 0.5 : reach
    const tip: Point3 = [
      Math.round(r * Math.cos(a)),
      Math.round(r * Math.sin(a)),
      Math.round(height * (1 - 0.12 * (i % 3))),
    ]
    const gap = Math.min(...stems.map((s) => Math.hypot(s.tip[0] - tip[0], s.tip[1] - tip[1], s.tip[2] - tip[2])), 1e4)
    if (gap > best.gap + 1e-9) {
      best.gap = gap
      best.tip = tip
    }
  }
  best.mouth = mouthFor(vessel, best.tip)
  return { mouth: best.mouth, tip: best.tip }
}
