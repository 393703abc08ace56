import { keepingOf, type Span } from '../catalogue/index.ts'
import type { Cooler, EventPlan } from '../event/index.ts'
import type { Arriving, Load } from './load.ts'
import type { Clash } from './types.ts'

/** Those whose own range begins here or above are hurt by less; zinnias, tropicals. From memory. */
const CHILLS_C = 4
/** A usual cooler runs at 34–38 °F (FloraLife): what keeps best at 0–2 °C bears it, and what keeps at 2–3 °C bears the least of it. */
const USUAL_C = [1, 4] as const

/** What a plant bears for the few days of a plan, °C. Most bear 2–4 °C for days (NC State University, ASCFG). */
const borne = ({ least, most }: Span): [number, number] => [
  least >= CHILLS_C ? least : Math.min(least, USUAL_C[0]),
  Math.max(most, USUAL_C[1]),
]

export const celsiusWords = (span: Span | null): string => (span ? `${span.least}–${span.most} °C` : 'not known')

/** Whether a plant may wait at a temperature; `unknown` where no range is known. */
export const bearsCool = (plant: string, celsius: number): 'yes' | 'cold' | 'warm' | 'unknown' => {
  const cool = keepingOf(plant)?.cool_C
  if (!cool) return 'unknown'
  const [least, most] = borne(cool)
  return celsius < least ? 'cold' : celsius > most ? 'warm' : 'yes'
}

const withRange = (arriving: readonly Arriving[]): string =>
  arriving.map((a) => `${a.name} (${celsiusWords(keepingOf(a.plant)?.cool_C ?? null)})`).join(', ')

const sourcesOf = (arriving: readonly Arriving[]): string =>
  [...new Set(arriving.flatMap((a) => keepingOf(a.plant)?.cool_C?.source ?? []))].join('; ')

const arrivals = (arriving: readonly Arriving[]): string[] => [...new Set(arriving.map((a) => `condition-${a.arrive}`))]

/** Whether no one temperature suits all. */
const apart = (arriving: readonly Arriving[]): boolean => {
  const spans = arriving.flatMap((a) => {
    const cool = keepingOf(a.plant)?.cool_C
    return cool ? [borne(cool)] : []
  })
  return Math.max(...spans.map((s) => s[0])) > Math.min(...spans.map((s) => s[1]))
}

const temperatures = ({ arriving }: Load, { celsius }: Cooler): Clash[] => {
  const cold = arriving.filter((a) => bearsCool(a.plant, celsius) === 'cold')
  const warm = arriving.filter((a) => bearsCool(a.plant, celsius) === 'warm')
  const clashes: Clash[] = []
  if (cold.length > 0)
    clashes.push({
      tasks: arrivals(cold),
      text: `A cooler at ${celsius} °C is too cold for ${withRange(cold)}${apart(arriving) ? '; no one temperature suits all that wait' : ''}. Keep them out of it, in a cool room.`,
      known: sourcesOf(cold),
    })
  if (warm.length > 0)
    clashes.push({
      tasks: arrivals(warm),
      text: `A cooler at ${celsius} °C is warm for ${withRange(warm)}: they go on opening in it, and fade sooner.`,
      known: sourcesOf(warm),
    })
  return clashes
}

/** Stems that wait in it on the evening of a day: all that have come and are not placed, but for what it is too cold for. */
const waiting = ({ arriving }: Load, { celsius }: Cooler, day: number): number =>
  arriving
    .filter((a) => a.arrive >= day && a.place < day && bearsCool(a.plant, celsius) !== 'cold')
    .reduce((n, a) => n + a.bought, 0)

const tooMany = (load: Load, cooler: Cooler, dayOf: (daysBefore: number) => string): Clash[] => {
  const days = [...new Set(load.arriving.map((a) => a.arrive))]
  const most = days.reduce((a, b) => (waiting(load, cooler, b) > waiting(load, cooler, a) ? b : a), days[0] ?? 0)
  const stems = waiting(load, cooler, most)
  if (stems <= cooler.stems) return []
  const text = `${dayOf(most)}: ${stems} stems wait and the cooler holds ${cooler.stems}. What still has to open can stand outside it; finished pieces, which want room in the cool too, are not counted.`
  return [{ tasks: [`condition-${most}`], text, known: 'ours: counted from the order' }]
}

/**
 * Two that can't share a cooler, what it is too cold or too warm for, and more stems than it holds.
 * @param dayOf a day in words, by days before
 */
export const coolerClashes = (
  load: Load,
  { cooler }: Pick<EventPlan, 'cooler'>,
  dayOf: (daysBefore: number) => string,
): Clash[] =>
  cooler && load.arriving.length > 0 ? [...temperatures(load, cooler), ...tooMany(load, cooler, dayOf)] : []
