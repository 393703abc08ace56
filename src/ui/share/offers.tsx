import type { NamedPalette } from '../../state/index.ts'
import { MOST_OFFERS } from '../../storage/index.ts'
import { listed } from '../../telling/index.ts'

interface Props {
  known: readonly NamedPalette[]
  /** The one on the sheet: it always goes along. */
  now: string
  offered: readonly string[]
  onOffer: (names: string[]) => void
}

/** Palettes to choose from, up to five beside the one on the sheet. */
export const Offers = ({ known, now, offered, onOffer }: Props) => {
  const full = offered.length >= MOST_OFFERS - 1
  return (
    <fieldset className="share-offers">
      <legend>
        Palettes to choose from: {listed([now || 'the one on the sheet', ...offered])}
        {full ? '' : `, and up to ${MOST_OFFERS - 1 - offered.length} more`}
      </legend>
      <div className="share-list">
        {known
          .filter((p) => p.name !== now)
          .map((p) => {
            const on = offered.includes(p.name)
            return (
              <label key={p.name}>
                <input
                  type="checkbox"
                  checked={on}
                  disabled={full && !on}
                  onChange={() => onOffer(on ? offered.filter((n) => n !== p.name) : [...offered, p.name])}
                />
                <span className="mini" aria-hidden="true">
                  {p.slots.map((s, i) => (
                    <span key={i} style={{ background: s.colour }} />
                  ))}
                </span>
                {p.name}
              </label>
            )
          })}
      </div>
    </fieldset>
  )
}
