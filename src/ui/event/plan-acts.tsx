import { useState } from 'react'
import { say } from '../../state/index.ts'
import { calendarName, calendarOf, planText } from '../../work-plan/index.ts'
import { download } from '../files/index.ts'
import { Button, Dialog } from '../parts/index.ts'
import { clashesOf } from './plan-clashes.ts'
import { type WorkedEvent, workedNow } from './use-worked-event.ts'

const fileName = (title: string): string =>
  `${title.replace(/[^\p{L}\p{N}]+/gu, '-').replace(/^-|-$/g, '') || 'event'}.ics`

/** In one column the fields stand far below: on to them, focus and all. */
const toHands = (): void => document.getElementById('plan-come')?.focus()

/** The plan into the person's own calendar, or into a message. */
export const PlanActs = ({ worked }: { worked: WorkedEvent }) => {
  const [byHand, setByHand] = useState('')
  const saveCalendar = (): void => {
    const { event, plan } = workedNow(worked)
    const text = calendarOf(plan.tasks, event.title, calendarName(event), Date.now())
    const name = fileName(event.title)
    download(new Blob([text], { type: 'text/calendar;charset=utf-8' }), name)
    say(`Saved ${name}: ${plan.tasks.length} tasks.`)
  }
  const copy = async (): Promise<void> => {
    const { event, plan } = workedNow(worked)
    const text = planText(event, plan.tasks, clashesOf(plan, Date.now(), event.done))
    try {
      await navigator.clipboard.writeText(text)
      say('The plan is copied.')
    } catch {
      // Without leave to the clipboard the person can still copy by hand.
      setByHand(text)
    }
  }
  return (
    <p className="plan-acts">
      <Button onClick={saveCalendar}>Calendar file</Button>
      <Button onClick={() => void copy()}>Copy as text</Button>
      <Button kind="word" className="plan-jump" onClick={toHands}>
        Deliveries, hands, hours
      </Button>
      {byHand && (
        <Dialog title="The plan as text" onClose={() => setByHand('')} width={720}>
          <textarea className="plan-text" aria-label="The plan as text" readOnly value={byHand} rows={16} />
        </Dialog>
      )}
    </p>
  )
}
