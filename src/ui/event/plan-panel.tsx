import { useMemo, useState } from 'react'
import { changeEvent, useEvent } from '../../state/index.ts'
import { byDay, type Clash, fiveWords, minuteWords, weekdayWords } from '../../work-plan/index.ts'
import { Button } from '../parts/index.ts'
import { PlanActs } from './plan-acts.tsx'
import { hoursOf } from './plan-bar.tsx'
import { PlanCautions } from './plan-cautions.tsx'
import { clashesOf } from './plan-clashes.ts'
import { PlanDay } from './plan-day.tsx'
import { PlanDeliveries } from './plan-deliveries.tsx'
import { PlanHands } from './plan-hands.tsx'
import { PlanHours } from './plan-hours.tsx'
import { bringTogether, TOGETHER } from './plan-together.ts'
import type { WorkedEvent } from './use-worked-event.ts'
import './plan.css'

/** What has to be there before there can be a plan. */
const Missing = ({ worked: { event } }: { worked: WorkedEvent }) => (
  <p className="advice">
    {event.date
      ? 'Nothing is placed in any design of this event yet: there is no work to plan.'
      : 'When does the event begin? Set its day and hour above: the plan counts back from them.'}
  </p>
)

/** One press against what will not go. What it stood at may be gone after it: the heading takes the focus. */
const Mend = ({ worked, mend }: { worked: WorkedEvent; mend: NonNullable<Clash['mend']> }) => {
  const act = (): void => {
    if (mend === 'together') bringTogether(worked, TOGETHER)
    // From what is set by now: the plan follows a moment later.
    else {
      const { work } = useEvent.getState().event
      changeEvent({ work: { ...work, evening: true } }, 'what goes in last goes in on the evening before')
    }
    document.getElementById('plan-clashes')?.focus()
  }
  return (
    <Button kind="word" onClick={act}>
      {mend === 'together' ? `Bring them together on ${TOGETHER} days` : 'Place them on the evening before'}
    </Button>
  )
}

/** What in the plan will not go, numbered: the numbers stand at the tasks as well. */
const Clashes = ({ clashes, worked }: { clashes: readonly Clash[]; worked: WorkedEvent }) => (
  <section className="plan-clashes" aria-labelledby="plan-clashes">
    <h2 id="plan-clashes" tabIndex={-1}>
      {clashes.length === 0 ? 'Nothing is in the way' : 'Will not go as it stands'}
    </h2>
    {clashes.length === 0 ? (
      <p className="quiet">Hands, hours, cooler and the keeping of each flower agree, as far as they are known.</p>
    ) : (
      <ol>
        {clashes.map((c) => (
          <li key={c.text}>
            {c.text} <span className="quiet">({c.known})</span>
            {c.mend && <Mend worked={worked} mend={c.mend} />}
          </li>
        ))}
      </ol>
    )}
  </section>
)

/** All the hours in one line. */
const Sum = ({ worked: { event, plan } }: { worked: WorkedEvent }) => {
  const hands = plan.tasks.reduce((n, t) => n + t.hand_min, 0)
  const first = plan.tasks.find((t) => t.kind === 'arrive')
  const done = plan.tasks.filter((t) => event.done.includes(t.key)).length
  return (
    <p className="plan-sum">
      <b>{fiveWords(hands)}</b> of hands and {minuteWords(event.work.drive)} on the road
      {first ? `; the first flowers come on ${weekdayWords(first.start)}` : ''}. {done} of {plan.tasks.length} ticked
      off.
    </p>
  )
}

/** The plan of work, backwards from the event: what, when, by how many hands, why, and what will not go. */
export const PlanPanel = ({ worked }: { worked: WorkedEvent }) => {
  const { event, plan } = worked
  const done = useEvent((s) => s.event.done)
  const asNow = useEvent((s) => s.event)
  const [now] = useState(() => Date.now())
  const clashes = useMemo(() => clashesOf(plan, now, done), [plan, now, done])
  const days = useMemo(() => byDay(plan.tasks, event.date), [plan, event.date])
  const hours = useMemo(() => hoursOf(days, event.work), [days, event.work])
  const planned = plan.tasks.length > 0
  return (
    <div className="plan">
      <div className="plan-days">
        {planned ? (
          <>
            <Sum worked={worked} />
            <PlanActs worked={worked} />
            <Clashes clashes={clashes} worked={worked} />
            {days.map((d) => (
              <PlanDay key={d.day} {...d} work={event.work} hours={hours} clashes={clashes} done={done} />
            ))}
          </>
        ) : (
          <Missing worked={worked} />
        )}
      </div>
      <div className="plan-margin">
        {planned && <PlanDeliveries worked={worked} />}
        <PlanHands event={asNow} />
        {planned && <PlanHours worked={worked} />}
      </div>
      {worked.order.lines.length > 0 && <PlanCautions worked={worked} />}
    </div>
  )
}
