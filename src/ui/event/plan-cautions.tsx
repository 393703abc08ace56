import {
  type Caution,
  cautionsOf,
  dangerOf,
  findPlant,
  GENERAL_CAUTIONS,
  gravestFirst,
  MECHANICS_ROWS,
} from '../../catalogue/index.ts'
import { listed } from '../../telling/index.ts'
import { plantName, type WorkedEvent } from './use-worked-event.ts'
import { plantsOf } from './words.ts'

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
  const plants = gravestFirst(plantsOf(order.lines))
  const cats = plants.filter((id) => dangerOf(id).pets === 'emergency')
  const held = new Set(designs.map((d) => d.document.vessel.mechanics))
  return (
    <section className="plan-cautions" aria-labelledby="plan-cautions">
      <h2 id="plan-cautions">Take care</h2>
      {cats.length > 0 && (
        <p className="plan-cats">
          <b>{listed(cats.map(plantName))}: never where a cat lives or visits.</b> Ask the host before they are ordered.
          Leaf, petal, pollen and vase water can all kill a cat: a vet is called at once, before any sign shows.
        </p>
      )}
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
