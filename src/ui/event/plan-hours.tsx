import { useMemo } from 'react'
import { loadOf, minuteWords, pieceTimes } from '../../work-plan/index.ts'
import type { WorkedEvent } from './use-worked-event.ts'
import { aboutDesigns, withParts } from './work-out.ts'

/** How the hours come about, design by design. */
export const PlanHours = ({ worked: { event, designs, order, plan } }: { worked: WorkedEvent }) => {
  const { minutes } = event.work
  const rows = useMemo(() => {
    const load = loadOf(order, withParts(event, designs), aboutDesigns(designs))
    return pieceTimes(load.works, minutes)
  }, [order, designs, event, minutes])
  const titles = new Map(designs.map((d) => [d.design, d.title]))
  const stems = order.lines.reduce((n, l) => n + l.bought, 0)
  const trial = plan.tasks.find((t) => t.kind === 'trial')?.hand_min ?? 0
  const all = plan.tasks.reduce((n, t) => n + t.hand_min, 0)
  return (
    <section aria-labelledby="plan-hours">
      <h2 id="plan-hours">How the hours come about</h2>
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
            <tr key={r.design}>
              <th scope="row">{titles.get(r.design)}</th>
              <td>{(r.vessel_min + r.placing_min + r.after_min).toFixed(1)}</td>
              <td>{r.copies}</td>
              <td>{minuteWords(r.all_min)}</td>
            </tr>
          ))}
          <tr>
            <th scope="row">conditioning, stems</th>
            <td>{minutes.conditioning.toFixed(2)}</td>
            <td>{stems}</td>
            <td>{minuteWords(stems * minutes.conditioning)}</td>
          </tr>
          <tr>
            <th scope="row">trial pieces</th>
            <td>{(trial / Math.max(1, rows.length)).toFixed(1)}</td>
            <td>{rows.length}</td>
            <td>{minuteWords(trial)}</td>
          </tr>
        </tbody>
        <tfoot>
          <tr>
            <th scope="row" colSpan={3}>
              in all
            </th>
            <td>{minuteWords(all)}</td>
          </tr>
        </tfoot>
      </table>
      <details>
        <summary>What one is made of</summary>
        <ul>
          {rows.map((r) => (
            <li key={r.design}>
              {titles.get(r.design)}: vessel {r.vessel_min}, {r.stems} stems and the piece {r.placing_min.toFixed(1)},
              packing, setting and taking down {r.after_min} min.
            </li>
          ))}
        </ul>
      </details>
    </section>
  )
}
