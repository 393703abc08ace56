import type { Delivery, OrderLine } from '../../../stem-list/index.ts'
import type { WorkedEvent } from '../../../work-plan/index.ts'
import { settledTiming, type Timing, weekdayWords } from '../../../work-plan/index.ts'
import { count } from '../words.ts'

/** In what state a flower is to come for the days it has; '' where nothing is to be asked. */
const howWords = ({ arrive, best, opens, lacks, later, sooner }: Timing): string => {
  if (lacks > 0) {
    const state = later > 0 || arrive === 0 ? 'as open as it is to be' : 'further on'
    return `${state}, as it has only ${arrive} of up to ${count(opens, 'day', 'days')} to open`
  }
  if (arrive > best && opens > 0) return `in tighter bud, as it comes ${count(arrive - best, 'day', 'days')} early`
  return arrive > best && sooner > 0 ? 'as fresh as can be had' : ''
}

/** When each line of the order is to come, by the plan's own tasks; null where the plan has no day for it. */
export const deliveryIn = ({ event, plan }: WorkedEvent): ((line: Pick<OrderLine, 'plant'>) => Delivery | null) => {
  const arrivals = plan.tasks.filter((t) => t.kind === 'arrive')
  const days = new Map(arrivals.flatMap((t) => t.plants.map((plant) => [plant, t.start.slice(0, 10)] as const)))
  return ({ plant }) => {
    const day = days.get(plant)
    if (!day) return null
    const words = `${weekdayWords(day)} ${day.slice(0, 4)}`
    return { day, words, how: howWords(settledTiming(plant, event.hours, event.deliveries)) }
  }
}
