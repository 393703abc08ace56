import type { OfferedPalette } from '../storage/index.ts'

interface Props {
  offers: OfferedPalette[]
  /** Words for each colour of each palette. */
  words: string[][]
  which: number
  chosen: number | null
  onShow: (which: number) => void
}

export const offerName = (offer: OfferedPalette | undefined): string => offer?.name.trim() || 'These colours'

/** The palettes on offer: one is shown at a time, and the words for its colours with it. */
export const Palettes = ({ offers, words, which, chosen, onShow }: Props) => (
  <fieldset className="offers">
    <legend>{offers.length > 1 ? `In ${offers.length} palettes` : 'Its palette'}</legend>
    {offers.map((offer, i) => (
      <label key={i} className={i === which ? 'shown' : ''}>
        <input type="radio" name="offer" checked={i === which} onChange={() => onShow(i)} />
        <span className="name">{offerName(offer)}</span>
        <span className="strip" aria-hidden="true">
          {offer.slots.map((s, k) => (
            <span key={k} style={{ background: s.colour }} />
          ))}
        </span>
        <span className="words">
          {i === chosen ? <span className="liked">You like this one. </span> : null}
          {i === which ? [...new Set(words[i] ?? [])].join(', ') : null}
        </span>
      </label>
    ))}
  </fieldset>
)
