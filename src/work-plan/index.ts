export { calendarName, calendarOf, foldLine } from './calendar.ts'
export { shortDay, weekdayWords } from './clock.ts'
export { bestDays, costWords, settledTiming } from './deliveries.ts'
export { dayOfDelivery, EARLIEST_DAY, possibleDays } from './delivery-days.ts'
export { lateOf } from './late.ts'
export { type About, type Load, loadOf, type PieceTime, pieceTimes } from './load.ts'
export { type Placing, placeDaysOf, placedOnDay, placingOf } from './placing.ts'
export { planOf } from './plan.ts'
export { beforeWords, byDay, fiveWords, minuteWords, planText, timeWords } from './plan-text.ts'
export { type Timing, timingOf } from './timing.ts'
export * from './types.ts'
export {
  aboutDesigns,
  choicesOf,
  designsOf,
  type EventDesign,
  plantName,
  resolvedOf,
  type WorkedEvent,
  withParts,
  workOut,
} from './work-out.ts'
