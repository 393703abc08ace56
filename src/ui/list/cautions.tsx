import { cautionsOf, findPlant, GENERAL_CAUTIONS, gravestFirst, MECHANICS_ROWS } from '../../catalogue/index.ts'
import type { ListView } from './derived.ts'

/** The cautions for what is in the vessel: emergencies first, then the rest, always with the words that defer. */
export const Cautions = ({ view }: { view: ListView }) => {
  const plants = gravestFirst([...new Set(view.resolved.stems.map((s) => s.plant.id))]).flatMap(
    (id) => findPlant(id) ?? [],
  )
  if (plants.length === 0) return null
  const held = MECHANICS_ROWS.find((m) => m.id === view.resolved.vessel.mechanics)?.cautions ?? []
  return (
    <div className="cautions">
      <dl>
        {plants.map((p) => (
          <div key={p.id}>
            <dt>{p.name}</dt>
            {cautionsOf(p.id).map((c) => (
              <dd key={c.about + c.text}>
                {c.text} <span className="dim">({c.standing === 'source' ? c.source : c.standing})</span>
              </dd>
            ))}
          </div>
        ))}
        <div>
          <dt>Handling</dt>
          {[...held, ...GENERAL_CAUTIONS].map((c) => (
            <dd key={c.about + c.text}>
              {c.text} <span className="dim">({c.standing === 'source' ? c.source : c.standing})</span>
            </dd>
          ))}
        </div>
      </dl>
    </div>
  )
}
