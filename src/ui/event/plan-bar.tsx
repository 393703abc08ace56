import type { Work } from '../../event/index.ts'
import type { Task } from '../../work-plan/index.ts'

const minutesOf = (clock: string): number => Number(clock.slice(0, 2)) * 60 + Number(clock.slice(3, 5))

/** Minutes from the start of a day to a local time, past midnight too. */
const since = (day: string, time: string): number =>
  (Date.parse(time.slice(0, 10)) - Date.parse(day)) / 60_000 + minutesOf(time.slice(11))

/** Hours written under the bar: so many apart that they don't touch on a phone. */
const stepOf = (hours: number): number => (hours > 16 ? 4 : hours > 8 ? 2 : 1)

interface Stroke {
  key: string
  from: number
  to: number
}

const strokesOf = (day: string, tasks: readonly Task[]): Stroke[] =>
  tasks.flatMap((t) =>
    !t.span_ms || t.start === t.end ? [] : [{ key: t.key, from: since(day, t.start), to: since(day, t.end) }],
  )

/** The hours that hold all tasks of all days and the day's work, so that the days can be compared. */
export const hoursOf = (days: readonly { day: string; tasks: readonly Task[] }[], work: Work): [number, number] => {
  const strokes = days.flatMap((d) => strokesOf(d.day, d.tasks))
  const [from, to] = [minutesOf(work.from), minutesOf(work.to)]
  const first = Math.min(from, to, ...strokes.map((s) => s.from))
  const last = Math.max(from, to, ...strokes.map((s) => s.to))
  return [Math.floor(first / 60), Math.max(Math.floor(first / 60) + 1, Math.ceil(last / 60))]
}

interface PlanBarProps {
  day: string
  tasks: readonly Task[]
  work: Work
  hours: [first: number, last: number]
}

/** The hours of a day as a line, the day's work between two limits, each task a stroke on it. The rows below say the same. */
export const PlanBar = ({ day, tasks, work, hours: [first, last] }: PlanBarProps) => {
  const strokes = strokesOf(day, tasks)
  if (strokes.length === 0) return null
  const share = (minutes: number): string => `${((100 * minutes) / 60 / (last - first)).toFixed(2)}%`
  const at = (minutes: number): string => share(minutes - first * 60)
  const step = stepOf(last - first)
  const hours = Array.from({ length: Math.floor((last - first) / step) + 1 }, (_, i) => first + i * step)
  return (
    <div className="plan-bar" aria-hidden="true">
      {[work.from, work.to].map((clock, i) => (
        <span key={i === 0 ? 'from' : 'to'} className="plan-limit" style={{ left: at(minutesOf(clock)) }} />
      ))}
      {strokes.map((s) => (
        <span
          key={s.key}
          className="plan-stroke"
          style={{ left: at(s.from), width: `calc(${share(s.to - s.from)} - 2px)` }}
        />
      ))}
      {hours.map((h) => (
        <span key={h} className="plan-hour" style={{ left: at(h * 60) }}>
          {h % 24}
        </span>
      ))}
    </div>
  )
}
