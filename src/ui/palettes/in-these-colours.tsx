import { nearness } from '../../colour/index.ts'
import type { NamedSlot } from '../../state/index.ts'
import { formatNumber } from '../parts/index.ts'
import { type Match, offersFor, type Worn } from './matches.ts'

interface Props {
  slots: readonly NamedSlot[]
  worn: readonly Worn[]
  wordOf: (hex: string) => string
}

const MatchLine = ({ match, wanted }: { match: Match; wanted: string }) => {
  const words = nearness(match.apart)
  return (
    <li className={words === 'not near' ? 'not-near' : undefined}>
      <span className="halves" aria-hidden="true">
        <span style={{ background: wanted }} />
        <span style={{ background: match.hex }} />
      </span>
      <span>
        {match.plant.name}, {match.colour}{' '}
        <span className="dim">
          ΔE {formatNumber(match.apart, 1, true)}, {words === 'not near' ? 'not to be had near it' : words}
        </span>
      </span>
    </li>
  )
}

const offersWords = (offers: number, mine: number, part: string): string => {
  if (offers === 0) return `no ${mine > 0 ? 'other ' : ''}plant for ${part} comes near it`
  return mine > 0 ? 'others, nearest first' : 'nearest first'
}

/** For each colour the plants of the design that wear it, with the nearest that they come in, and plants that come nearer. */
export const InTheseColours = ({ slots, worn, wordOf }: Props) => (
  <details className="to-be-had">
    <summary>Plants in these colours</summary>
    {slots.map((slot, i) => {
      const mine = worn.filter((w) => w.wanted === slot.colour.toLowerCase())
      const offers = offersFor(slot, new Set(mine.map((w) => w.plant.id)))
      return (
        <section key={i} aria-label={`${slot.name ?? wordOf(slot.colour)}, ${slot.part}`}>
          <h3>
            {slot.name ?? wordOf(slot.colour)} <span className="dim">{slot.part}</span>
          </h3>
          {mine.length > 0 ? (
            <ul aria-label="in the design">
              {mine.map((m) => (
                <MatchLine key={m.plant.id} match={m} wanted={slot.colour} />
              ))}
            </ul>
          ) : null}
          <p className="dim">{offersWords(offers.length, mine.length, slot.part)}</p>
          {offers.length > 0 ? (
            <ul aria-label="others">
              {offers.map((m) => (
                <MatchLine key={m.plant.id} match={m} wanted={slot.colour} />
              ))}
            </ul>
          ) : null}
        </section>
      )
    })}
  </details>
)
