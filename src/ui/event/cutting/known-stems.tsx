import { type Figure, findPlant, sideLength_mm } from '../../../catalogue/index.ts'
import { useStudio } from '../../../state/index.ts'
import type { Order } from '../../../stem-list/index.ts'
import { formatLength, type Units } from '../../../units/index.ts'
import { from } from '../order/known.tsx'
import { plantsOf } from '../words.ts'

const Known = ({ figure, words }: { figure: Figure; words: (value: number) => string }) => (
  <>
    {words(figure.value)} ({words(figure.range[0])}–{words(figure.range[1])})
    <span className="order-use">{from(figure)}</span>
  </>
)

const bare = (mm: number, units: Units): string => formatLength(mm, units).replace(` ${units}`, '')

/** Where the catalogue has its figures of stems from, one press away. */
export const KnownStems = ({ order }: { order: Order }) => {
  const units = useStudio((s) => s.units)
  const plants = plantsOf(order.lines).flatMap((id) => findPlant(id) ?? [])
  return (
    <details className="order-fold">
      <summary>Where these figures come from</summary>
      <p>
        Of the range in brackets the catalogue takes one figure to work with; what you measured stands in its place.
        Greens that have leaves all along may be cut into pieces, as eucalyptus is for garlands, to about 10 in (common
        practice).
      </p>
      <table className="event-table">
        <thead>
          <tr>
            <th scope="col">plant</th>
            <th scope="col">stem, {units}</th>
            <th scope="col">heads</th>
            <th scope="col">side stem, {units}</th>
          </tr>
        </thead>
        <tbody>
          {plants.map((plant) => {
            const side = sideLength_mm(plant)
            return (
              <tr key={plant.id}>
                <th scope="row">{plant.name}</th>
                <td>
                  <Known figure={plant.stem_mm} words={(mm) => bare(mm, units)} />
                </td>
                <td>{side ? <Known figure={plant.bloomsPerStem} words={String} /> : '–'}</td>
                <td>{side ? <Known figure={side} words={(mm) => bare(mm, units)} /> : '–'}</td>
              </tr>
            )
          })}
        </tbody>
      </table>
    </details>
  )
}
