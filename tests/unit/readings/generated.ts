import { type Arrangement, FORMS, type Stem } from '../../../src/arrangement/index.ts'
import { bowl, design, stem } from './made.ts'

/** Park and Miller's generator (CACM 31(10), 1988): the same numbers every time. 0–1. */
export const numbersFrom = (seed: number): (() => number) => {
  let state = (seed * 48271 + 11) % 2147483647
  return () => {
    state = (state * 48271) % 2147483647
    return state / 2147483647
  }
}

const COLOURS = ['#7b1734', '#f0d3cf', '#e8683f', '#8d9cc4', '#f3e3d8', '#c9a3c4', '#f2b632']

/** A design as someone might sketch it: a dome, ring or fan of heads, some greens, one to three focal blooms; seldom good. */
export const sketched = (seed: number): Arrangement => {
  const next = numbersFrom(seed)
  const between = (a: number, b: number): number => a + (b - a) * next()
  const count = Math.round(between(6, 22))
  const [reach, up, focal] = [between(60, 190), between(60, 260), Math.ceil(between(0, 3))]
  const two = [COLOURS[Math.floor(between(0, 7))]!, COLOURS[Math.floor(between(0, 7))]!]
  const stems = Array.from({ length: count }, (_, i): Stem => {
    const [turn, lean] = [between(0, 360) * (Math.PI / 180), between(0.1, 1.5)]
    const tip: Stem['tip'] = [
      reach * Math.sin(lean) * Math.cos(turn),
      reach * Math.sin(lean) * Math.sin(turn),
      20 + up * Math.cos(lean),
    ]
    const mouth: Stem['mouth'] = [30 * Math.cos(turn), 30 * Math.sin(turn)]
    if (i < focal) return stem(`s${i}`, tip, { role: 'focal', colour: two[0]!, head: between(50, 100), mouth })
    if (i % 3 === 2)
      return stem(`s${i}`, tip, { plant: 'green', role: 'greens', colour: '#55703f', head: between(40, 80), mouth })
    return stem(`s${i}`, tip, {
      role: i % 3 === 1 ? 'filler' : 'mass',
      colour: two[i % 2]!,
      head: between(25, 70),
      mouth,
    })
  })
  const vessel = bowl({
    width: 140,
    height: between(60, 200),
    colour: next() < 0.3 ? '#b03020' : '#f1ece2',
  })
  return design(stems, { form: FORMS[seed % FORMS.length]!, vessel })
}
