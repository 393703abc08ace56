import { type Caution, cautionsOf, findPlant, GENERAL_CAUTIONS, MECHANICS_ROWS } from '../../catalogue/index.ts'
import { plantName, type WorkedEvent } from './use-worked-event.ts'

const Said = ({ cautions }: { cautions: readonly Caution[] }) => (
  <ul>
    {cautions.map((c) => (
      <li key={c.about + c.text}>
        {c.text} <span className="quiet">({c.source})</span>
      </li>
    ))}
  </ul>
)

/** The last of the general ones say whose word goes before ours: they stand first. */
const GENERAL = [...GENERAL_CAUTIONS].reverse()

/** Cautions for the plants that are used and for what holds them, and whose word goes first. What has no entry is not checked. */
export const PlanCautions = ({ worked: { order, designs } }: { worked: WorkedEvent }) => {
  const plants = [...new Set(order.lines.map((l) => l.plant))]
  const held = new Set(designs.map((d) => d.document.vessel.mechanics))
  return (
    <section className="plan-cautions" aria-labelledby="plan-cautions">
      <h2 id="plan-cautions">Take care</h2>
      <div className="plan-columns">
        <div>
          <h3>At every event</h3>
          <Said cautions={GENERAL} />
        </div>
        {MECHANICS_ROWS.filter((m) => held.has(m.id) && m.cautions.length > 0).map((m) => (
          <div key={m.id}>
            <h3>{m.name}</h3>
            <Said cautions={m.cautions} />
          </div>
        ))}
        {plants.map((id) => (
          <div key={id}>
            <h3>
              {plantName(id)} <i>{findPlant(id)?.botanical}</i>
            </h3>
            <Said cautions={cautionsOf(id)} />
          </div>
        ))}
      </div>
    </section>
  )
}
