import type { ReactNode } from 'react'
import type { Plant } from '../../catalogue/index.ts'
import { Plate } from '../list/plate.tsx'

interface Props {
  plant: Plant
  /** #rrggbb, and in words. */
  hex: string
  colour: string
  children?: ReactNode
}

/** The first two cells of a row: the plant as it looks, its name and its colour. */
export const PlantCells = ({ plant, hex, colour, children }: Props) => (
  <>
    <td className="order-plate">
      <Plate plant={plant.id} colour={hex} size={34} />
    </td>
    <th scope="row">
      {plant.name} <i>{plant.botanical}</i>
      <span className="order-colour">
        <span className="order-dot" style={{ background: hex }} aria-hidden="true" />
        {colour}
      </span>
      {children}
    </th>
  </>
)
