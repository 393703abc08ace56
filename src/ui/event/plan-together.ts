import { changeEvent, say, useEvent } from '../../state/index.ts'
import { bestDays, dayOfDelivery, possibleDays, weekdayWords } from '../../work-plan/index.ts'
import type { WorkedEvent } from './use-worked-event.ts'
import { plantsOf } from './words.ts'

/** Days that flowers are brought together on, unless the person says another number. Ours. */
export const TOGETHER = 2

/** Brings all flowers together on so many days at the most, as one step: on those that do all plants least harm. */
export const bringTogether = ({ order }: WorkedEvent, count: number): void => {
  // As it is set by now: what is worked out of it follows a moment later.
  const { date, zone, hours, deliveries } = useEvent.getState().event
  const plants = plantsOf(order.lines)
  const days = bestDays(plants, hours, count, possibleDays(date, zone, Date.now()))
  const same = days.length === deliveries.days.length && days.every((d) => deliveries.days.includes(d))
  if (same && Object.keys(deliveries.of).length === 0) return say('They come so already.')
  const words = days.map((day) => weekdayWords(dayOfDelivery(date, zone, day))).join(' and ')
  changeEvent({ deliveries: { days, of: {} } }, `flowers come on ${words}`)
}
