import type { Arrangement, Stem, Vessel } from '../../../src/arrangement/index.ts'
import type { Habit, Plant } from '../../../src/catalogue/index.ts'
import type { Mesh, Resolved, ResolvedStem } from '../../../src/geometry/index.ts'
import { facingAxis, seedOf, stemCurve } from '../../../src/geometry/index.ts'

const figure = (value: number) => ({
  value,
  range: [value, value] as [number, number],
  standing: 'ours' as const,
  source: 'a test',
})

export const plantOf = (habit: Habit, head: number): Plant => ({
  id: `test-${habit}`,
  name: habit,
  botanical: habit,
  formClass: 'mass',
  formClasses: ['mass'],
  role: 'mass',
  habit,
  shape: {},
  headClosed_mm: figure(head / 2),
  headOpen_mm: figure(head),
  headLength_mm: null,
  stem_mm: figure(400),
  stemDiameter_mm: figure(4),
  bloomsPerStem: figure(1),
  manyHeaded: false,
  bunch: null,
  stemMass_g: figure(20),
  colours: [],
  leafColour: '#5b7a45',
  care: [],
})

export const BOWL: Vessel = {
  plan: 'round',
  width: 140,
  depth: 140,
  height: 80,
  wall: 4,
  material: 'ceramic',
  colour: '#d8d0c4',
  mechanics: 'none',
  waterFill: 0.8,
}

export interface Put {
  id: string
  habit?: Habit
  head?: number
  colour?: string
  mouth: [number, number]
  tip: [number, number, number]
}

export const resolvedOf = (puts: Put[], vessel: Vessel = BOWL): Resolved => {
  const stems = puts.map(
    ({ id, habit = 'rosette', head = 60, colour = '#c9717b', mouth, tip }, index): ResolvedStem => {
      const plant = plantOf(habit, head)
      const stem: Stem = {
        id,
        plant: plant.id,
        role: 'mass',
        colour,
        openness: 0.8,
        mouth,
        tip,
        bend: 0,
        piece: 'whole',
      }
      const curve = stemCurve(stem, vessel)
      const axis = facingAxis(habit, curve)
      return {
        id,
        index,
        stem,
        plant,
        role: 'mass',
        colour,
        openness: 0.8,
        head_mm: head,
        seed: seedOf(id),
        curve,
        axis,
      }
    },
  )
  const document = { stems: stems.map((s) => s.stem), vessel } as unknown as Arrangement
  return { document, vessel, stems }
}

/** A flat disc of radius r facing the direction n, with a stem of no width; tissue petal. */
export const disc = (r: number, tilt: number, centre: [number, number, number] = [0, 0, 0], sides = 24): Mesh => {
  const positions: number[] = [...centre]
  const triangles: number[] = []
  const [c, s] = [Math.cos(tilt), Math.sin(tilt)]
  for (let i = 0; i < sides; i++) {
    const a = (2 * Math.PI * i) / sides
    const [x, z] = [r * Math.cos(a), r * Math.sin(a)]
    positions.push(centre[0] + x, centre[1] + z * s, centre[2] + z * c)
    triangles.push(0, 1 + i, 1 + ((i + 1) % sides))
  }
  const vertices = positions.length / 3
  const normals = new Float32Array(positions.length)
  for (let i = 0; i < vertices; i++) normals.set([0, -c, s], 3 * i)
  return {
    positions: new Float32Array(positions),
    normals,
    uvs: new Float32Array(2 * vertices).fill(0.5),
    triangles: new Uint32Array(triangles),
    parts: new Uint16Array(triangles.length / 3).fill(1),
    tissues: new Uint8Array(triangles.length / 3),
  }
}
