import { useMemo, useState } from 'react'
import { findPlant } from '../../catalogue/index.ts'
import { halfOf, whenOf } from '../../event/index.ts'
import { undo, useStudio } from '../../state/index.ts'
import { type SwapOffer, swapsFor } from '../../stem-list/index.ts'
import { plantName, type WorkedEvent } from '../../work-plan/index.ts'
import { Button, SelectField } from '../parts/index.ts'
import { SeasonSources } from './season-sources.tsx'
import { swapIn } from './swap/apply.ts'
import { OfferRow } from './swap/offer-row.tsx'
import { SwapWords } from './swap/swap-words.tsx'
import { byPlant, lineKey, useLineColour } from './words.ts'
import './order.css'

/** So many are shown at first, and so many more on each press. Ours. */
const SOME = 5

/** Takes the last swap back as long as it is the last step of the open design. */
const TakeBack = ({ design, words }: { design: string; words: string }) => {
  const last = useStudio((s) => s.lastDone)
  const open = useStudio((s) => s.designId)
  if (words === '' || open !== design || last !== words) return null
  return (
    <p>
      Done: {words}. It is a step of the design itself, which is open now. <Button onClick={undo}>Take it back</Button>
    </p>
  )
}

/** Other plants for one of the order, nearest first, with what each would do. */
export const SwapPanel = ({ worked }: { worked: WorkedEvent }) => {
  const colourOf = useLineColour()
  const lines = byPlant(worked.order.lines)
  const [chosen, setChosen] = useState('')
  const [shown, setShown] = useState(SOME)
  const [done, setDone] = useState({ design: '', words: '' })
  const line = lines.find((l) => lineKey(l) === chosen) ?? lines[0]
  const key = line ? lineKey(line) : ''
  const when = whenOf(worked.event)
  const [month, half] = [when?.month, halfOf(worked.event)]
  const offers = useMemo(() => {
    const [id = '', colour = ''] = key.split(' ')
    const plant = findPlant(id)
    return plant ? swapsFor(plant, colour, month === undefined ? null : { month, half }) : []
  }, [key, month, half])
  if (!line) return <p className="dim">Nothing to swap yet.</p>

  const swap = async (design: string, to: SwapOffer): Promise<void> => {
    const label = `${plantName(line.plant).toLowerCase()} swapped for ${to.plant.name.toLowerCase()}`
    const words = await swapIn(design, line, to, label)
    // Where nothing was changed, what was done before can still be taken back.
    if (words) setDone({ design, words })
  }
  return (
    <div className="order">
      <div className="swap-head">
        <SelectField
          label="in place of"
          value={key}
          options={lines.map((l) => ({ value: lineKey(l), words: `${plantName(l.plant)}, ${colourOf(l)}` }))}
          onChange={(to) => {
            setChosen(to)
            setShown(SOME)
          }}
        />
        <SwapWords formClass={findPlant(line.plant)?.formClass} half={half} dated={when !== null} />
      </div>
      <div aria-live="polite">
        <TakeBack {...done} />
      </div>
      {offers.length === 0 ? (
        <p>The catalogue has no other plant of that class.</p>
      ) : (
        <table className="event-table order-table">
          <caption className="unseen">Plants that may stand for it</caption>
          <thead>
            <tr>
              <th colSpan={2} scope="colgroup">
                plant, nearest colour
              </th>
              <th scope="col" className="swap-words">
                colour
              </th>
              <th scope="col">size</th>
              <th scope="col" className="swap-words">
                season
              </th>
              <th scope="col">stems in all</th>
              <th scope="col">cost</th>
              <th scope="col" className="swap-words">
                readings, 0 to 100
              </th>
            </tr>
          </thead>
          <tbody>
            {offers.slice(0, shown).map((offer) => (
              <OfferRow
                key={`${key} ${offer.plant.id}`}
                line={line}
                offer={offer}
                colour={colourOf({ plant: offer.plant.id, colour: offer.colour })}
                worked={worked}
                onSwap={(design) => void swap(design, offer)}
              />
            ))}
          </tbody>
        </table>
      )}
      {offers.length > shown ? (
        <p>
          <Button onClick={() => setShown(shown + SOME)}>{Math.min(SOME, offers.length - shown)} more</Button>
        </p>
      ) : null}
      {offers.length > 0 ? <SeasonSources plants={offers.slice(0, shown).map((o) => o.plant.id)} half={half} /> : null}
    </div>
  )
}
