import { findPlant } from '../../../catalogue/index.ts'
import { type OrderLine, packWords } from '../../../stem-list/index.ts'
import type { EventDesign } from '../../../work-plan/index.ts'
import { TooLong } from '../cutting/too-long.tsx'
import { PlantCells } from '../plant-cells.tsx'
import { money } from '../words.ts'
import { LeftOver } from './left-over.tsx'
import { PriceCell } from './price-cell.tsx'
import { SeasonNote } from './season-note.tsx'
import { SpareCell } from './spare-cell.tsx'

interface Props {
  line: OrderLine
  /** In words. */
  colour: string
  /** Another line of the same plant stands above: spare and price are there. */
  again: boolean
  designs: readonly EventDesign[]
  currency: string
}

const Above = () => (
  <>
    <span aria-hidden="true">″</span>
    <span className="unseen">as above</span>
  </>
)

/** What to buy of one plant in one colour. */
export const OrderRow = ({ line, colour, again, designs, currency }: Props) => {
  const plant = findPlant(line.plant)
  if (!plant) return null
  return (
    <tr>
      <PlantCells plant={plant} hex={line.colour} colour={colour}>
        <TooLong line={line} plant={plant} />
        {again ? null : <SeasonNote plant={plant.id} />}
      </PlantCells>
      <td data-head="pieces">{line.pieces}</td>
      <td data-head="stems">{line.stems}</td>
      <td data-head="spare, %">{again ? <Above /> : <SpareCell plant={plant} />}</td>
      <td data-head="spare">{line.spareStems}</td>
      <td data-head="bunches">{packWords(line)}</td>
      <td data-head="left over" className="order-left">
        <LeftOver line={line} designs={designs} />
      </td>
      <td data-head="price" className="order-price-cell">
        {again ? <Above /> : <PriceCell plant={plant} />}
      </td>
      <td data-head="cost" className="order-cost">
        {money(line.minor, currency)}
      </td>
    </tr>
  )
}
