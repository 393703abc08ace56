import { useMemo } from 'react'
import type { HandMinutes } from '../../event/index.ts'
import { changeEvent, changePart, useEvent } from '../../state/index.ts'
import {
  aboutDesigns,
  fiveWords,
  loadOf,
  minuteWords,
  type PieceTime,
  pieceTimes,
  type TaskKind,
  withParts,
} from '../../work-plan/index.ts'
import { Button, NumberField } from '../parts/index.ts'
import type { WorkedEvent } from './use-worked-event.ts'

interface DesignRowProps {
  time: PieceTime
  title: string
}

/** What placing one piece of a design takes: reckoned, or as the person timed it. */
const DesignRow = ({ time, title }: DesignRowProps) => {
  // As it is now: the hours follow a moment later, and two quick steps are two.
  const own = useEvent((s) => s.event.parts.find((p) => p.design === time.design)?.placing_min)
  const reckon = (): void => {
    const parts = useEvent.getState().event.parts.map((part) => {
      if (part.design !== time.design) return part
      const { placing_min: _, ...rest } = part
      return rest
    })
    changeEvent({ parts }, `${title}: placing reckoned by stems`)
    document.getElementById('plan-hours')?.focus()
  }
  return (
    <tr>
      <th scope="row">placing {title}</th>
      <td>
        <NumberField
          label="placing one"
          spoken={`minutes, ${title}`}
          hideLabel
          value={own ?? time.placing_min}
          min={0}
          max={1440}
          digits={1}
          onChange={(to) => changePart(time.design, { placing_min: to }, `${to} minutes to place one ${title}`)}
        />
        {time.own && (
          <Button kind="word" onClick={reckon} aria-label={`Reckon placing ${title} by its stems`}>
            by stems
          </Button>
        )}
      </td>
      <td>{time.copies}</td>
      <td>{minuteWords(time.copies * time.placing_min)}</td>
    </tr>
  )
}

/** All other work, in its order. */
const OTHERS: readonly { kind: TaskKind; key: keyof HandMinutes; words: string }[] = [
  { kind: 'arrive', key: 'receiving', words: 'taking in' },
  { kind: 'condition', key: 'conditioning', words: 'conditioning' },
  { kind: 'vessels', key: 'vessel', words: 'vessels' },
  { kind: 'bind', key: 'binding', words: 'binding' },
  { kind: 'water', key: 'watering', words: 'topping up' },
  { kind: 'pack', key: 'packing', words: 'packing' },
  { kind: 'set', key: 'setting', words: 'setting out' },
  { kind: 'clear', key: 'setting', words: 'taking down' },
]

/** How the hours come about: placing design by design, then all other work. */
export const PlanHours = ({ worked: { event, designs, order, plan } }: { worked: WorkedEvent }) => {
  const { minutes } = event.work
  const rows = useMemo(() => {
    const load = loadOf(order, withParts(event, designs), aboutDesigns(designs))
    return pieceTimes(load.works, minutes)
  }, [order, designs, event, minutes])
  const titleOf = (design: string): string => designs.find((d) => d.design === design)?.title ?? design
  const of = (kind: TaskKind): number => plan.tasks.reduce((n, t) => (t.kind === kind ? n + t.hand_min : n), 0)
  const trial = { words: 'trial pieces', one: of('trial') / Math.max(1, rows.length), all: of('trial') }
  const others = [...OTHERS.map(({ kind, key, words }) => ({ words, one: minutes[key], all: of(kind) })), trial]
  return (
    <section aria-labelledby="plan-hours">
      <h2 id="plan-hours" tabIndex={-1}>
        How the hours come about
      </h2>
      <table className="plan-table">
        <thead>
          <tr>
            <th scope="col">of one pair of hands</th>
            <th scope="col">one, min</th>
            <th scope="col">of them</th>
            <th scope="col">all</th>
          </tr>
        </thead>
        <tbody>
          {rows.map((r) => (
            <DesignRow key={r.design} time={r} title={titleOf(r.design)} />
          ))}
        </tbody>
        <tbody>
          {others
            .filter((r) => r.all > 0)
            .map((r) => (
              <tr key={r.words}>
                <th scope="row">{r.words}</th>
                <td>{Number(r.one.toFixed(2))}</td>
                <td>{Math.round(r.all / r.one)}</td>
                <td>{minuteWords(r.all)}</td>
              </tr>
            ))}
        </tbody>
        <tfoot>
          <tr>
            <th scope="row" colSpan={3}>
              in all
            </th>
            <td>{fiveWords(plan.tasks.reduce((n, t) => n + t.hand_min, 0))}</td>
          </tr>
        </tfoot>
      </table>
      <details>
        <summary>What one is made of</summary>
        <ul>
          {rows.map((r) => (
            <li key={r.design}>
              {titleOf(r.design)}: vessel {r.vessel_min}, placing {r.placing_min.toFixed(1)} (
              {r.own ? 'yours' : `${r.stems} stems and the piece`}), packing, setting and taking down {r.after_min}:{' '}
              {minuteWords(r.vessel_min + r.placing_min + r.after_min)}.
            </li>
          ))}
        </ul>
      </details>
    </section>
  )
}
