import { Temporal } from 'temporal-polyfill'

/** A moment of a plan, by the clock of its zone; going on by minutes is by real time, across a change of the clocks too. */
export type Moment = Temporal.ZonedDateTime

/**
 * The moment of a local date and time in a zone. An hour that a change of the clocks leaves out is taken as the hour after it, one
 * that comes twice as the first (RFC 5545, 3.3.5). A date alone is taken as noon.
 * @throws RangeError if either can't be read
 */
export const momentOf = (date: string, zone: string): Moment =>
  Temporal.PlainDateTime.from(date.length > 10 ? date : `${date}T12:00`).toZonedDateTime(zone, {
    disambiguation: 'compatible',
  })

/** The same calendar's day, `days` before, at HH:MM by the clock of that day. */
export const dayBefore = (event: Moment, days: number, clock: string): Moment =>
  event
    .toPlainDate()
    .subtract({ days })
    .toZonedDateTime({ timeZone: event.timeZoneId, plainTime: Temporal.PlainTime.from(clock) })

/** Calendar days from a moment to the event's day; after it negative. */
export const daysUntil = (moment: Moment, event: Moment): number =>
  moment.toPlainDate().until(event.toPlainDate(), { largestUnit: 'day' }).days

export const later = (moment: Moment, minutes: number): Moment => moment.add({ seconds: Math.round(minutes * 60) })

/** Times of a plan stand on five minutes: hands are not reckoned more finely than that. Ours. */
const STEP_min = 5
const STEP_ms = STEP_min * 60_000

/** Minutes, so many that it is no less: on five. */
export const onFive = (minutes: number): number => STEP_min * Math.ceil(minutes / STEP_min - 1e-9)

/** Minutes, so many that it is no more: on five. */
export const onFiveDown = (minutes: number): number => STEP_min * Math.floor(minutes / STEP_min + 1e-9)

/** Minutes of a clock's `HH:MM` from midnight on. */
export const minutesOfDay = (clock: string): number => 60 * Number(clock.slice(0, 2)) + Number(clock.slice(3, 5))

/** How long it is past a full five minutes, ms. Zones stand apart from UTC by whole quarters of an hour. */
const over_ms = (moment: Moment): number => ((moment.epochMilliseconds % STEP_ms) + STEP_ms) % STEP_ms

/** The next moment on five minutes, or this one. */
export const upToFive = (moment: Moment): Moment => moment.add({ milliseconds: (STEP_ms - over_ms(moment)) % STEP_ms })

/** The last moment on five minutes, or this one. */
export const downToFive = (moment: Moment): Moment => moment.subtract({ milliseconds: over_ms(moment) })

/** `YYYY-MM-DDTHH:MM` by the clock of the zone. */
export const localText = (moment: Moment): string => moment.toPlainDateTime().toString({ smallestUnit: 'minute' })
export const localDay = (moment: Moment): string => moment.toPlainDate().toString()

/** Minutes from one moment to another, real time. */
export const minutesBetween = (from: Moment, to: Moment): number =>
  (to.epochMilliseconds - from.epochMilliseconds) / 60_000

const inWords = (options: Intl.DateTimeFormatOptions): Intl.DateTimeFormat =>
  new Intl.DateTimeFormat('en', { ...options, timeZone: 'UTC' })
const [WEEKDAY, MONTH] = [inWords({ weekday: 'long' }), inWords({ month: 'long' })]

/** A day as people say it, `Thursday 10 June`. @param day `YYYY-MM-DD`, or longer */
export const weekdayWords = (day: string): string => {
  const date = new Date(`${day.slice(0, 10)}T00:00Z`)
  return `${WEEKDAY.format(date)} ${date.getUTCDate()} ${MONTH.format(date)}`
}

/** The same, short: `Thu 10`. */
export const shortDay = (day: string): string => {
  const [weekday, number] = weekdayWords(day).split(' ') as [string, string]
  return `${weekday.slice(0, 3)} ${number}`
}
