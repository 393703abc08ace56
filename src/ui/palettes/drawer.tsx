import { type NamedPalette, removePalette } from '../../state/index.ts'
import { Button } from '../parts/index.ts'

interface Props {
  all: readonly NamedPalette[]
  /** Name of the one on the sheet. */
  now: string
  chosen: readonly string[]
  most: number
  onToggle: (name: string) => void
  onRemoved: (palette: NamedPalette) => void
}

/** All palettes, to choose those that are held beside the one on the sheet. */
export const PaletteDrawer = ({ all, now, chosen, most, onToggle, onRemoved }: Props) => (
  <fieldset className="palette-names">
    <legend>Up to {most} beside the one on the sheet; one more takes the place of the first.</legend>
    {all.map((p) => (
      <span key={p.name} className="palette-name">
        <label className={p.name === now ? 'on-sheet' : ''}>
          <input
            type="checkbox"
            checked={p.name === now || chosen.includes(p.name)}
            disabled={p.name === now}
            onChange={() => onToggle(p.name)}
          />
          <span className="mini" aria-hidden="true">
            {p.slots.map((s, i) => (
              <span key={i} style={{ background: s.colour }} />
            ))}
          </span>
          {p.name}
          {p.own ? ' (yours)' : ''}
        </label>
        {p.own ? (
          <Button
            kind="word"
            aria-label={`Throw away ${p.name}`}
            onClick={() => {
              onRemoved(p)
              void removePalette(p.name)
            }}
          >
            throw away
          </Button>
        ) : null}
      </span>
    ))}
  </fieldset>
)
