import { useId, useState } from 'react'
import type { Deliveries } from '../../event/index.ts'
import { changeEvent, useEvent } from '../../state/index.ts'
import {
  beforeWords,
  costWords,
  dayOfDelivery,
  EARLIEST_DAY,
  settledTiming,
  shortDay,
  type Timing,
  timingOf,
  weekdayWords,
} from '../../work-plan/index.ts'
import { Button, NumberField } from '../parts/index.ts'
import { bringTogether, TOGETHER } from './plan-together.ts'
import { plantName, type WorkedEvent } from './use-worked-event.ts'
import { plantsOf } from './words.ts'

const DAYS: readonly number[] = Array.from({ length: EARLIEST_DAY + 1 }, (_, i) => EARLIEST_DAY - i)

const change = (deliveries: Deliveries, words: string): void => changeEvent({ deliveries }, words)

interface OfEvent {
  event: WorkedEvent['event']
}

const dayIn = ({ date, zone }: OfEvent['event'], daysBefore: number): string => dayOfDelivery(date, zone, daysBefore)

/** The days on which a seller can bring flowers. */
const Days = ({ event }: OfEvent) => {
  const { deliveries } = event
  const tick = (day: number, on: boolean): void => {
    const days = on ? [...deliveries.days, day].sort((a, b) => b - a) : deliveries.days.filter((d) => d !== day)
    change({ ...deliveries, days }, `flowers ${on ? 'can' : 'can not'} come on ${weekdayWords(dayIn(event, day))}`)
  }
  return (
    <fieldset className="plan-come-days">
      <legend>they can come on {deliveries.days.length === 0 ? '(none ticked: any day)' : ''}</legend>
      {DAYS.map((day) => (
        <label key={day}>
          <input
            type="checkbox"
            checked={deliveries.days.includes(day)}
            aria-label={`${weekdayWords(dayIn(event, day))}, ${beforeWords(day)}`}
            onChange={(e) => tick(day, e.target.checked)}
          />
          {shortDay(dayIn(event, day))}
        </label>
      ))}
    </fieldset>
  )
}

interface PlantProps extends OfEvent {
  timing: Timing
}

const THE_BEST = 'best'

/** When one plant comes, and what that costs it. */
const PlantDay = ({ event, timing: { plant, ...timing } }: PlantProps) => {
  const id = useId()
  const { deliveries, hours } = event
  const name = plantName(plant)
  const own = deliveries.of[plant]
  const byItself = settledTiming(plant, hours, { ...deliveries, of: {} }).arrive
  const cost = costWords({ plant, ...timing })
  const take = (value: string): void => {
    const { [plant]: _, ...others } = deliveries.of
    if (value === THE_BEST) return change({ ...deliveries, of: others }, `${name} comes when it is best`)
    const day = Number(value)
    change({ ...deliveries, of: { ...others, [plant]: day } }, `${name} comes on ${weekdayWords(dayIn(event, day))}`)
  }
  const optionWords = (day: number): string => {
    const words = costWords(timingOf(plant, hours, day))
    return `${shortDay(dayIn(event, day))}${words ? `: ${words}` : ''}`
  }
  return (
    <li>
      <label htmlFor={id}>{name}</label>
      <select
        id={id}
        value={own ?? THE_BEST}
        aria-describedby={cost ? `${id}-cost` : undefined}
        onChange={(e) => take(e.target.value)}
      >
        <option value={THE_BEST}>{shortDay(dayIn(event, byItself))}, the best there is</option>
        {DAYS.map((day) => (
          <option key={day} value={day}>
            {optionWords(day)}
          </option>
        ))}
      </select>
      {cost && (
        <span className="quiet" id={`${id}-cost`}>
          {cost}
        </span>
      )}
    </li>
  )
}

/** On which days flowers come: chosen, brought together, or plant by plant. */
export const PlanDeliveries = ({ worked }: { worked: WorkedEvent }) => {
  // As it is now: the plan follows a moment later, and a box must not spring back for that long.
  const event = useEvent((s) => s.event)
  const { order } = worked
  const [count, setCount] = useState(TOGETHER)
  if (event.date === '') return null
  const plants = plantsOf(order.lines)
  const timings = plants.map((plant) => settledTiming(plant, event.hours, event.deliveries))
  return (
    <section className="plan-come" aria-labelledby="plan-come">
      <h2 id="plan-come" tabIndex={-1}>
        When flowers come
      </h2>
      <Days event={event} />
      <div className="plan-together">
        <NumberField label="together on" unit="days" value={count} min={1} max={4} onChange={setCount} />
        <Button onClick={() => bringTogether(worked, count)}>Bring them together</Button>
      </div>
      <ul className="plan-come-plants">
        {timings.map((timing) => (
          <PlantDay key={timing.plant} event={event} timing={timing} />
        ))}
      </ul>
      <details>
        <summary>How a day is chosen</summary>
        <ul>
          <li>
            By each plant’s days in hand, days to open and vase life in the catalogue. Of all choices of days the one
            that takes the fewest plants out of their own ranges, then leaves most time to open, then stands nearest to
            each plant’s best day. Each plant counts alike (ours).
          </li>
          <li>Brought together, nothing comes on a Sunday or on a day that is past.</li>
        </ul>
      </details>
    </section>
  )
}
