import { findPlant, RECUT_mm, spareShare } from '../../../catalogue/index.ts'
import { useStudio } from '../../../state/index.ts'
import type { Order } from '../../../stem-list/index.ts'
import { formatLength } from '../../../units/index.ts'
import { plantsOf } from '../words.ts'

/** A source as it is, or the standing with why this figure: a standing that the reason begins with is said once. */
export const from = ({ standing, source }: { standing: string; source: string }): string =>
  standing === 'source' || source.startsWith(standing) ? source : `${standing}: ${source}`

/** Where the figures of the order come from, one press away. */
export const Known = ({ order }: { order: Order }) => {
  const units = useStudio((s) => s.units)
  const plants = plantsOf(order.lines).flatMap((id) => findPlant(id) ?? [])
  return (
    <details className="order-fold">
      <summary>Where these figures come from</summary>
      <p>
        Stems are the fewest that give all pieces at their cut lengths, over the whole event; spare goes on top, and
        only then is it rounded up to bunches, once, in the cheapest mix of the sizes sold. Of each stem{' '}
        {formatLength(RECUT_mm, units)} go on arrival (Floral Design Institute; California Cut Flower Commission); a
        seller is asked for that and the longest piece as it is first cut, rounded up. No measured table of spare was
        found: the usual shares are from memory, by how easily a flower breaks or fails.
      </p>
      <table className="event-table">
        <thead>
          <tr>
            <th scope="col">plant</th>
            <th scope="col">usual spare</th>
            <th scope="col">stem, {units}</th>
            <th scope="col">in a bunch</th>
          </tr>
        </thead>
        <tbody>
          {plants.map((plant) => {
            const spare = spareShare(plant)
            const [least, most] = spare.range
            return (
              <tr key={plant.id}>
                <th scope="row">{plant.name}</th>
                <td>
                  {Math.round(spare.value * 100)} % ({Math.round(least * 100)}–{Math.round(most * 100)})
                  <span className="order-use">{from(spare)}</span>
                </td>
                <td>
                  {formatLength(plant.stem_mm.value, units).replace(` ${units}`, '')}
                  <span className="order-use">{from(plant.stem_mm)}</span>
                </td>
                <td>
                  {plant.bunch ? plant.bunch.value : 'not known'}
                  <span className="order-use">{plant.bunch ? from(plant.bunch) : 'reckoned by the stem'}</span>
                </td>
              </tr>
            )
          })}
        </tbody>
      </table>
    </details>
  )
}
