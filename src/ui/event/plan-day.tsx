import { useId } from 'react'
import type { Work } from '../../event/index.ts'
import { tick } from '../../state/index.ts'
import { beforeWords, type Clash, fiveWords, type Task, timeWords, weekdayWords } from '../../work-plan/index.ts'
import { PlanBar } from './plan-bar.tsx'
import { PlanWho } from './plan-who.tsx'

/** Numbers of the clashes that a task is in; the words of those that show at it first. */
const clashesAt = (key: string, clashes: readonly Clash[]): { number: number; text: string | null }[] =>
  clashes.flatMap((c, i) =>
    c.tasks.includes(key) ? [{ number: i + 1, text: c.tasks[0] === key ? c.text : null }] : [],
  )

const handWords = ({ kind, hand_min, who }: Task): string =>
  [who, hand_min > 0 ? `${fiveWords(hand_min)} of hands` : kind === 'carry' ? 'the road' : '']
    .filter(Boolean)
    .join(', ')

const Steps = ({ steps }: Pick<Task, 'steps'>) => (
  <ul>
    {steps.map((step) => (
      <li key={step}>{step}</li>
    ))}
  </ul>
)

interface WordsProps {
  task: Task
  done: boolean
}

/** What to do, why and by whom one press away; of what is done, what and why. */
const Words = ({ task, done }: WordsProps) => (
  <>
    {!done && <Steps steps={task.steps} />}
    <div className="plan-asides">
      <Reasons task={task} done={done} />
      {!done && <PlanWho task={task} />}
    </div>
  </>
)

const Reasons = ({ task: { title, steps, reasons }, done }: Pick<WordsProps, 'task' | 'done'>) => (
  <details>
    <summary aria-label={`${done ? 'What and why' : 'Why'}: ${title}`}>{done ? 'What and why' : 'Why'}</summary>
    {done && <Steps steps={steps} />}
    <ul>
      {reasons.map((r) => (
        <li key={r.text}>
          {r.text} <span className="quiet">({r.source})</span>
        </li>
      ))}
    </ul>
  </details>
)

const Against = ({ id, found }: { id: string; found: ReturnType<typeof clashesAt> }) => (
  <p className="plan-against" id={id}>
    {found.map(({ number, text }) => (
      <span key={number}>{text ? `Note ${number}: ${text} ` : `See note ${number}. `}</span>
    ))}
  </p>
)

interface TaskRowProps {
  task: Task
  clashes: readonly Clash[]
  done: boolean
}

const TaskRow = ({ task, clashes, done }: TaskRowProps) => {
  const id = useId()
  const found = clashesAt(task.key, clashes)
  return (
    <li className={done ? 'plan-task done' : 'plan-task'} data-task={task.key}>
      <input
        id={id}
        type="checkbox"
        checked={done}
        onChange={(e) => tick(task.key, e.target.checked, task.title)}
        aria-describedby={found.length > 0 ? `${id}-against` : undefined}
      />
      <label htmlFor={id}>
        <span className="plan-time">{timeWords(task)} </span>
        <b>{task.title}</b>
      </label>
      <span className="plan-hands">{handWords(task)}</span>
      <div className="plan-words">
        {found.length > 0 && <Against id={`${id}-against`} found={found} />}
        <Words task={task} done={done} />
      </div>
    </li>
  )
}

interface PlanDayProps {
  day: string
  daysBefore: number
  tasks: readonly Task[]
  work: Work
  /** First and last of the bar, the same on all days. */
  hours: [number, number]
  clashes: readonly Clash[]
  done: readonly string[]
}

/** One day of the plan: its hours as a bar, its tasks under it. */
export const PlanDay = ({ day, daysBefore, tasks, work, hours, clashes, done }: PlanDayProps) => {
  const id = useId()
  const hands = tasks.reduce((n, t) => n + t.hand_min, 0)
  return (
    <section className="plan-day" aria-labelledby={id}>
      <h3 id={id}>
        {weekdayWords(day)}
        <span className="quiet">, {beforeWords(daysBefore)}</span>
      </h3>
      {hands > 0 && <span className="plan-hands">{fiveWords(hands)} in all</span>}
      <PlanBar day={day} tasks={tasks} work={work} hours={hours} />
      <ul>
        {tasks.map((t) => (
          <TaskRow key={t.key} task={t} clashes={clashes} done={done.includes(t.key)} />
        ))}
      </ul>
    </section>
  )
}
