import { ROLES, type Role } from '../../arrangement/index.ts'
import type { NamedPalette } from '../../state/index.ts'
import { Button } from '../parts/index.ts'

interface Props {
  palette: NamedPalette
  /** Names that are in use. */
  taken: string[]
  onChange: (palette: NamedPalette) => void
  onCancel: () => void
  onKeep: (palette: NamedPalette) => void
}

/** Make or change a palette: each colour and the part that it plays. The column beside shows it on the design at once. */
export const PaletteEditor = ({ palette, taken, onChange, onCancel, onKeep }: Props) => {
  const put = (i: number, part: Partial<NamedPalette['slots'][number]>) =>
    onChange({
      ...palette,
      slots: palette.slots.map((s, k) =>
        k === i ? { colour: part.colour ?? s.colour, part: part.part ?? s.part } : s,
      ),
    })
  const name = palette.name.trim()
  const wrong =
    name === '' ? 'A palette needs a name.' : palette.slots.length === 0 ? 'A palette needs at least one colour.' : ''
  return (
    <section className="palette-editor" aria-label="A palette of your own">
      <div className="field-line">
        <label className="choice search">
          name
          <input value={palette.name} maxLength={80} onChange={(e) => onChange({ ...palette, name: e.target.value })} />
        </label>
        <Button kind="main" off={wrong !== ''} onClick={() => onKeep({ ...palette, name, own: true })}>
          {taken.includes(name) ? 'Keep, in place of the one of that name' : 'Keep it'}
        </Button>
        <Button onClick={onCancel}>Leave it</Button>
      </div>
      {wrong ? <p role="alert">{wrong}</p> : null}
      <ol>
        {palette.slots.map((s, i) => (
          <li key={i}>
            <input
              type="color"
              value={s.colour}
              aria-label={`colour ${i + 1}`}
              onChange={(e) => put(i, { colour: e.target.value })}
            />
            <select
              value={s.part}
              aria-label={`part of colour ${i + 1}`}
              onChange={(e) => put(i, { part: e.target.value as Role })}
            >
              {ROLES.map((r) => (
                <option key={r}>{r}</option>
              ))}
            </select>
            <Button
              kind="word"
              aria-label={`Take out colour ${i + 1}`}
              onClick={() => onChange({ ...palette, slots: palette.slots.filter((_, k) => k !== i) })}
            >
              take out
            </Button>
          </li>
        ))}
        <li>
          <Button
            off={palette.slots.length >= 12}
            onClick={() => onChange({ ...palette, slots: [...palette.slots, { colour: '#c9a0a8', part: 'mass' }] })}
          >
            Add a colour
          </Button>
        </li>
      </ol>
    </section>
  )
}
