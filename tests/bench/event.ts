/**
 * How long an event takes after one design changed: its order, its cutting plan and its plan of work, as the page works them
 * out. Against all of it from nothing, every design looked up anew. One JSON object; --smoke runs a few rounds.
 */
import type { Arrangement, Stem } from '../../src/arrangement/index.ts'
import { EXAMPLE_PRICES, findPlant } from '../../src/catalogue/index.ts'
import { type EventPlan, newEvent } from '../../src/event/index.ts'
import { benchRows, cutPlan, uncutOf } from '../../src/stem-list/index.ts'
import { designsOf, workOut } from '../../src/work-plan/index.ts'
import { dome } from './made.ts'

const smoke = process.argv.includes('--smoke')
const [DESIGNS, STEMS, COPIES] = [20, 60, 500]
/** Rounds before the first that counts: the compiler warms up. */
const WARM = 10

/** Twenty designs that differ in every length; many-headed stems are cut apart. */
const design = (k: number): Arrangement => {
  const { stems, ...rest } = dome(STEMS)
  return {
    ...rest,
    title: `Design ${k}`,
    stems: stems.map((s): Stem => {
      const piece = findPlant(s.plant)?.manyHeaded ? 'lateral' : 'whole'
      return { ...s, piece, tip: [s.tip[0], s.tip[1], s.tip[2] + k] }
    }),
  }
}
const copied = (document: Arrangement): Arrangement => ({ ...document, stems: document.stems.map((s) => ({ ...s })) })
const moved = (document: Arrangement, by: number): Arrangement => ({
  ...document,
  stems: document.stems.map((s, i) => (i === 30 ? { ...s, tip: [s.tip[0], s.tip[1], s.tip[2] + by] } : s)),
})

const documents = Array.from({ length: DESIGNS }, (_, k) => design(k))
const event: EventPlan = {
  ...newEvent('Europe/Lisbon'),
  date: '2027-10-09T17:00',
  tables: COPIES,
  parts: documents.map((_, k) => ({ design: `d${k}`, copies: COPIES, place: '' })),
}
const prices = { currency: EXAMPLE_PRICES.currency, perBunch: {} }
const inCm = (mm: number): string => (mm / 10).toFixed(1)

/** What stands on the event's panels. */
const all = (from: readonly Arrangement[]): number => {
  const worked = workOut(
    event,
    designsOf(event, (id) => from[Number(id.slice(1))]),
    prices,
  )
  const uncut = uncutOf(worked.order, { prices }, findPlant)
  const rows = worked.order.lines.flatMap((line) => benchRows(cutPlan(line.places, line.given), line.places, inCm))
  const cut = rows.reduce((n, r) => n + r.stems, 0)
  if (cut !== worked.order.lines.reduce((n, l) => n + l.stems, 0))
    throw new Error('the plan cuts other stems than it buys')
  if (worked.plan.tasks.length === 0 || uncut.size === 0) throw new Error('nothing was planned')
  return cut
}

const time = (runs: number, prepare: (i: number) => readonly Arrangement[]): number[] => {
  const times: number[] = []
  for (let i = 0; i < runs + WARM; i++) {
    const from = prepare(i)
    const start = performance.now()
    all(from)
    if (i >= WARM) times.push(performance.now() - start)
  }
  return times.sort((a, b) => a - b)
}
const middle = (values: number[]): number => values[Math.floor(values.length / 2)]!

const runs = smoke ? 3 : 40
const anew = time(runs, () => documents.map(copied))
all(documents)
const changed = time(runs, (i) => documents.map((d, k) => (k === i % DESIGNS ? moved(d, 0.01 * (i + 1)) : d)))
console.log(
  JSON.stringify({
    name: `event-${DESIGNS}x${STEMS}x${COPIES}`,
    median: middle(changed),
    unit: 'ms',
    min: changed[0],
    max: changed.at(-1),
    ratio: middle(changed) / middle(anew),
    against: 'all of it from nothing',
  }),
)
