import { useRef } from 'react'
import type { Work } from '../../event/index.ts'
import { changeEvent, useEvent } from '../../state/index.ts'
import type { Task } from '../../work-plan/index.ts'
import { Button } from '../parts/index.ts'

/** With more pairs of hands than this nobody is chosen one by one. Ours. */
const MOST_TO_CHOOSE = 12

const handName = (hand: number, { names }: Work): string => names[hand] ?? `hand ${hand + 1}`

/** Who is at a task. What was chosen is taken from the event as it is now: the plan follows a moment later. */
export const PlanWho = ({ task }: { task: Task }) => {
  const work = useEvent((s) => s.event.work)
  const head = useRef<HTMLElement>(null)
  if (task.hands.length === 0 || work.people < 2 || work.people > MOST_TO_CHOOSE) return null
  const own = Object.hasOwn(work.who, task.key) ? work.who[task.key] : undefined
  const there = own ? own.map((n) => n - 1) : task.hands
  const { [task.key]: _, ...others } = work.who
  const take = (hands: readonly number[]): void => {
    const who = hands.length > 0 ? { ...others, [task.key]: hands.map((h) => h + 1) } : others
    const said = hands.map((h) => handName(h, work)).join(', ')
    changeEvent({ work: { ...work, who } }, `${task.title}: ${said || 'who is usual'}`)
  }
  const toggle = (hand: number, on: boolean): void =>
    take(on ? [...there, hand].sort((a, b) => a - b) : there.filter((h) => h !== hand))
  return (
    <details className="plan-who">
      <summary ref={head} aria-label={`Who: ${task.title}`}>
        Who
      </summary>
      <fieldset>
        <legend className="unseen">Who is at it: {task.title}</legend>
        {Array.from({ length: work.people }, (_, hand) => (
          <label key={handName(hand, work)}>
            <input type="checkbox" checked={there.includes(hand)} onChange={(e) => toggle(hand, e.target.checked)} />
            {handName(hand, work)}
          </label>
        ))}
        {own && (
          <Button
            kind="word"
            onClick={() => {
              take([])
              head.current?.focus()
            }}
          >
            As usual
          </Button>
        )}
      </fieldset>
    </details>
  )
}
