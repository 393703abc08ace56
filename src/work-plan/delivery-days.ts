import { dayBefore, momentOf, weekdayWords } from './clock.ts'

/** Days before the event that are looked at: flowers that come earlier are for no plan of this kind. Ours. */
export const EARLIEST_DAY = 7

/** `YYYY-MM-DD` of the day so many days before the event. @throws RangeError for a date or a zone that can't be read */
export const dayOfDelivery = (date: string, zone: string, daysBefore: number): string =>
  dayBefore(momentOf(date, zone), daysBefore, '00:00').toPlainDate().toString()

/**
 * Days before the event on which flowers may still come: none that is past and no Sunday, on which many sellers deliver nothing
 * (from memory); where nothing else is left, Sundays too, and for an event that is over all that there were.
 * @param now_ms milliseconds since 1970
 */
export const possibleDays = (date: string, zone: string, now_ms: number): number[] => {
  const event = momentOf(date, zone)
  const all = Array.from({ length: EARLIEST_DAY + 1 }, (_, i) => EARLIEST_DAY - i)
  // A day is past once its evening is.
  const coming = all.filter((day) => dayBefore(event, day, '18:00').epochMilliseconds > now_ms)
  const there = coming.length > 0 ? coming : all
  const weekdays = there.filter((day) => !weekdayWords(dayOfDelivery(date, zone, day)).startsWith('Sunday'))
  return weekdays.length > 0 ? weekdays : there
}
