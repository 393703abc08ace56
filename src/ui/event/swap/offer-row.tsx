import { useEffect, useMemo, useState } from 'react'
import { seasonsOf, seasonText, seasonWords } from '../../../catalogue/index.ts'
import { nearness } from '../../../colour/index.ts'
import { halfOf, whenOf } from '../../../event/index.ts'
import { useStudio } from '../../../state/index.ts'
import type { OrderLine, SwapOffer } from '../../../stem-list/index.ts'
import type { WorkedEvent } from '../../../work-plan/index.ts'
import { Button } from '../../parts/index.ts'
import { PlantCells } from '../plant-cells.tsx'
import { money } from '../words.ts'
import { movesOf, orderWith, type Swapped, stemsIn, swappedIn, tooLongIn } from './effect.ts'

const sizeWords = (times: number): string => {
  const percent = Math.round(100 * (times - 1))
  return percent === 0 ? 'as large' : `${Math.abs(percent)} % ${percent > 0 ? 'larger' : 'smaller'}`
}

const signed = (minor: number, currency: string): string =>
  `${minor > 0 ? '+' : minor < 0 ? '−' : '±'}${money(Math.abs(minor), currency)}`

/** By which class it stands there, where that is not the first of both. */
const classWords = ({ plant, shared }: SwapOffer): string =>
  plant.formClass === shared ? `class ${shared}` : `chiefly ${plant.formClass}, also ${shared}`

/** When a plant is to be had, and how well that is known; where from is told below the table. */
const SeasonCell = ({ plant, event }: { plant: string; event: WorkedEvent['event'] }) => {
  const when = whenOf(event)
  const half = halfOf(event)
  const standing = seasonsOf(plant, half)?.trade.standing
  return (
    <td data-head="season" className="swap-words swap-season">
      {when ? seasonWords(plant, when) : (seasonText(plant, half) ?? 'not known')}
      {standing ? <span className="order-use">{standing === 'source' ? 'from a source' : standing}</span> : null}
    </td>
  )
}

const movesWords = (moves: readonly string[] | undefined): string =>
  moves === undefined ? 'being read …' : moves.join('; ') || 'nothing moves by a point'

interface Props {
  line: OrderLine
  offer: SwapOffer
  /** Its colour in words. */
  colour: string
  worked: WorkedEvent
  onSwap: (design: string) => void
}

/** One plant that may stand for another: how near it is, what it costs, what it does to the readings. */
export const OfferRow = ({ line, offer, colour, worked, onSwap }: Props) => {
  const { event, designs, order } = worked
  const prices = useStudio((s) => s.prices)
  const swapped = useMemo(() => swappedIn(designs, line, offer), [designs, line, offer])
  const after = useMemo(() => orderWith(designs, swapped, event, prices), [designs, swapped, event, prices])
  const [moves, setMoves] = useState<ReadonlyMap<Swapped, string[]>>(new Map())
  useEffect(() => {
    let live = true
    const look = async (): Promise<void> => {
      for (const one of swapped) {
        const found = await movesOf(one)
        if (!live) return
        setMoves((all) => new Map([...[...all].filter(([s]) => swapped.includes(s)), [one, found]]))
      }
    }
    void look()
    return () => {
      live = false
    }
  }, [swapped])
  const long = tooLongIn(after) - tooLongIn(order)
  const { plant } = offer
  return (
    <tr>
      <PlantCells plant={plant} hex={offer.colour} colour={colour}>
        {offer.main ? null : <span className="order-use">{classWords(offer)}</span>}
      </PlantCells>
      <td data-head="colour" className="swap-words">
        {nearness(offer.apart)} <span className="dim">ΔE {offer.apart.toFixed(1)}</span>
      </td>
      <td data-head="size">{sizeWords(offer.times)}</td>
      <SeasonCell plant={plant.id} event={event} />
      <td data-head="stems">
        {stemsIn(order)} → {stemsIn(after)}
        {long > 0 ? (
          <span className="order-use">
            <b>!</b> {long} too long for it
          </span>
        ) : null}
      </td>
      <td data-head="cost">{signed(after.minor - order.minor, order.currency)}</td>
      <td data-head="readings" className="swap-words swap-readings">
        {swapped.map((one) => (
          <div key={one.design.design}>
            <b>{one.design.title}</b> {movesWords(moves.get(one))}{' '}
            <Button
              kind="word"
              aria-label={`Swap for ${plant.name.toLowerCase()} in ${one.design.title}`}
              onClick={() => onSwap(one.design.design)}
            >
              Swap here
            </Button>
          </div>
        ))}
      </td>
    </tr>
  )
}
