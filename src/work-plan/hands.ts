import type { EventPlan, Work } from '../event/index.ts'
import { dayBefore, localDay, type Moment, minutesBetween, weekdayWords } from './clock.ts'
import { byHands, fewestHands, inTurn } from './crew.ts'
import { counted, type Draft } from './draft.ts'
import { type Leg, legMinutes } from './last-day.ts'
import { forTwo, kiloWords } from './lifting.ts'
import type { Load } from './load.ts'
import { minuteWords } from './plan-text.ts'
import { bearsEvening } from './timing.ts'
import type { Clash, Task } from './types.ts'

const RECKONED = 'ours: reckoned from your minutes, hands and hours'

/** What is to be done, before it has hours: the days before by their number, and the day itself. */
export interface Undated {
  days: ReadonlyMap<number, readonly Draft[]>
  legs: readonly Leg[]
}

const hands = (people: number): string => (people === 1 ? 'one pair of hands' : `${people} pairs of hands`)
const keysOf = (tasks: readonly Task[]): string[] => tasks.map((t) => t.key)

/** How many pairs of hands would do, or that none would. */
const wanted = (fits: (people: number) => boolean): string => {
  const fewest = fewestHands(fits)
  return fewest === null
    ? 'No number of hands helps: begin earlier, or do more the day before.'
    : `It wants ${hands(fewest)}.`
}

/** Minutes from the beginning of a day's work to its end. */
const spanOf = (drafts: readonly Draft[], work: Work): number =>
  Math.max(0, ...inTurn(drafts, work).map((slot) => slot.to))

/** A day before the event's whose work does not fit between the hours that the hands are there. */
export const fullDays = (tasks: readonly Task[], { work }: EventPlan, event: Moment, { days }: Undated): Clash[] =>
  [...days].flatMap(([day, drafts]): Clash[] => {
    const there = Math.max(0, minutesBetween(dayBefore(event, day, work.from), dayBefore(event, day, work.to)))
    const needed = spanOf(drafts, work)
    if (needed <= there) return []
    const mine = tasks.filter((t) => drafts.some((d) => d.key === t.key)).sort((a, b) => b.hand_min - a.hand_min)
    const fits = (people: number): boolean => {
      const crew = byHands(drafts, work, people)
      return spanOf(crew.drafts, crew.work) <= there
    }
    const text = `${weekdayWords(mine[0]!.start)}: ${minuteWords(needed)} of work do not fit into ${minuteWords(there)} with ${hands(work.people)}. ${wanted(fits)}`
    return [{ tasks: keysOf(mine), text, known: RECKONED }]
  })

/** What goes in on the day only, and may stand in the piece from the evening before. */
const theEveningBefore = ({ arriving }: Load): string => {
  const those = arriving.filter(bearsEvening)
  if (those.length === 0) return ''
  const water_h = Math.max(...those.map((a) => a.water_h[0]))
  return ` ${those.map((a) => a.name).join(', ')} may go in on the evening before, after ${water_h} h in water.`
}

/** The last day's work, where it would have to begin before the hands are there. */
export const earlyStart = (
  tasks: readonly Task[],
  load: Load,
  { work }: EventPlan,
  event: Moment,
  { legs }: Undated,
): Clash[] => {
  const mine = tasks.filter((t) => legs.some((leg) => leg.key === t.key))
  const [start, end] = [mine[0]?.span_ms?.[0] ?? 0, mine.at(-1)?.span_ms?.[1] ?? 0]
  const opens = dayBefore(event, 0, work.from).epochMilliseconds
  if (opens <= start) return []
  const fits = (people: number): boolean => {
    const crew = byHands(legs, work, people)
    return end - 60_000 * legMinutes(crew.drafts, crew.work) >= opens
  }
  const early = minuteWords((opens - start) / 60_000)
  const evening = theEveningBefore(load)
  const text = `On the day itself work would have to begin at ${timeBeside(mine[0]!.start, localDay(event))}, ${early} before ${work.from}. ${wanted(fits)}${evening}`
  return [{ tasks: keysOf(mine), text, known: RECKONED, ...(evening ? { mend: 'evening' as const } : {}) }]
}

/** A time, with its day in front where that is not the day of the other. */
const timeBeside = (time: string, other: string): string =>
  `${time.slice(0, 10) === other.slice(0, 10) ? '' : `${weekdayWords(time)}, `}${time.slice(11)}`

/** Two tasks at one time that want the same hands. Days that are too full by themselves are said to be so elsewhere. */
export const overlaps = (tasks: readonly Task[], { work }: EventPlan, full: ReadonlySet<string>): Clash[] => {
  const busy = tasks.filter((t) => t.span_ms && t.kind !== 'clear')
  const still = (t: Task): string =>
    t.people < work.people || work.names.length > 0
      ? t.who
      : t.people === 1
        ? 'the one pair of hands'
        : `all ${hands(t.people)}`
  return busy.flatMap((a, i): Clash[] => {
    const b = busy
      .slice(i + 1)
      .find(
        (t) =>
          t.span_ms![0] < a.span_ms![1] && t.span_ms![1] > a.span_ms![0] && t.hands.some((h) => a.hands.includes(h)),
      )
    if (!b || full.has(a.key)) return []
    const text = `“${b.title}” begins at ${b.start.slice(11)} on ${weekdayWords(b.start)}, while “${a.title}” still takes ${still(a)} until ${timeBeside(a.end, b.start)}.`
    return [{ tasks: [b.key, a.key], text, known: RECKONED }]
  })
}

/** Pieces too heavy for one, where only one is there to lift them. */
export const tooHeavy = (tasks: readonly Task[], load: Load): Clash[] => {
  const heavy = forTwo(load)
  const alone = tasks.filter((t) => ['pack', 'carry', 'set', 'clear'].includes(t.kind) && t.people < 2)
  if (heavy.length === 0 || alone.length === 0) return []
  const which = heavy.map((w) => `${w.title} (about ${kiloWords(w.mass_g!)} full)`).join(', ')
  const text = `${which} ${heavy.length === 1 ? 'wants' : 'want'} two to lift, and ${counted(alone.length, 'task')} with ${heavy.length === 1 ? 'it' : 'them'} ${alone.length === 1 ? 'has' : 'have'} one pair of hands. Fill it where it stands, or ask for a second.`
  return [
    {
      tasks: keysOf(alone),
      text,
      known: 'ours: two from 16 kg, below the 23 kg of NIOSH’s best case; weights from memory',
    },
  ]
}
