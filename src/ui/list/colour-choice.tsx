import type { StemColour } from '../../arrangement/index.ts'
import { findPlant } from '../../catalogue/index.ts'
import { useStudio } from '../../state/index.ts'

interface Props {
  label: string
  /** #rrggbb as it is now. */
  value: string
  plant: string
  onChoose: (colour: StemColour) => void
}

/** A colour of the palette, a colour the plant comes in, or one of the person's own. */
export const ColourChoice = ({ label, value, plant, onChoose }: Props) => {
  const palette = useStudio((s) => s.document.palette)
  const own = findPlant(plant)?.colours ?? []
  const slot = palette.slots.findIndex((s) => s.colour === value)
  const named = own.find((c) => c.hex === value)
  const now = slot >= 0 ? `slot ${slot}` : named ? named.hex : 'own'
  return (
    <label className="choice">
      {label}
      <span className="choice-colour">
        <select
          aria-label={label}
          value={now}
          onChange={(e) => {
            const v = e.target.value
            if (v.startsWith('slot ')) onChoose({ slot: Number(v.slice(5)) })
            else if (v !== 'own') onChoose(v)
          }}
        >
          <optgroup label={`palette ${palette.name}`}>
            {palette.slots.map((s, i) => (
              <option key={i} value={`slot ${i}`}>
                {i + 1}, {s.part} {s.colour}
              </option>
            ))}
          </optgroup>
          <optgroup label="it comes in">
            {own.map((c) => (
              <option key={c.name} value={c.hex}>
                {c.name}
              </option>
            ))}
          </optgroup>
          {now === 'own' ? <option value="own">{value}</option> : null}
        </select>
        <input
          type="color"
          value={value}
          onChange={(e) => onChoose(e.target.value)}
          aria-label={`${label}: any other`}
        />
      </span>
    </label>
  )
}
