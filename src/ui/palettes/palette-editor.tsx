import { ROLES, type Role } from '../../arrangement/index.ts'
import type { NamedPalette, NamedSlot } from '../../state/index.ts'
import { Button } from '../parts/index.ts'
import { percent } from './words.ts'

/** A colour that is being chosen; of a photo it knows how much of it there is. */
export interface EditedSlot extends NamedSlot {
  share?: number
}
export interface EditedPalette extends NamedPalette {
  slots: EditedSlot[]
}

interface Props {
  palette: EditedPalette
  /** Names that are in use. */
  taken: string[]
  wordOf: (hex: string) => string
  onChange: (palette: EditedPalette) => void
  onCancel: () => void
  onKeep: (palette: NamedPalette) => void
}

const MOST_COLOURS = 12

const wrongWith = (name: string, colours: number): string => {
  if (name === '') return 'A palette needs a name.'
  return colours === 0 ? 'A palette needs at least one colour.' : ''
}

/** What is kept: colours, parts and names, not how much of a photo they were. */
const plain = (palette: EditedPalette, name: string): NamedPalette => ({
  name,
  about: palette.about,
  own: true,
  slots: palette.slots.map(({ share: _, ...slot }) => slot),
})

/** Make or change a palette: each colour and the part that it plays. The first column of the board shows it on the design at once. */
export const PaletteEditor = ({ palette, taken, wordOf, onChange, onCancel, onKeep }: Props) => {
  const put = (i: number, slot: EditedSlot) =>
    onChange({ ...palette, slots: palette.slots.map((s, k) => (k === i ? slot : s)) })
  const name = palette.name.trim()
  const wrong = wrongWith(name, palette.slots.length)
  return (
    <section className="palette-editor" aria-label="A palette of your own">
      <div className="field-line">
        <label className="choice search">
          name
          <input value={palette.name} maxLength={80} onChange={(e) => onChange({ ...palette, name: e.target.value })} />
        </label>
        <Button kind="main" off={wrong !== ''} onClick={() => onKeep(plain(palette, name))}>
          {taken.includes(name) ? 'Keep, in place of the one of that name' : 'Keep it'}
        </Button>
        <Button onClick={onCancel}>Leave it</Button>
        {wrong ? <p role="alert">{wrong}</p> : null}
      </div>
      <ol>
        {palette.slots.map((s, i) => (
          <li key={i}>
            <input
              type="color"
              value={s.colour}
              aria-label={`colour ${i + 1}`}
              onChange={(e) => put(i, { colour: e.target.value, part: s.part })}
            />
            <div>
              <span className="edited-word">
                {s.name ?? wordOf(s.colour)}
                {s.share === undefined ? '' : ` ${percent(s.share)}`}
              </span>
              <span className="edited-acts">
                <select
                  value={s.part}
                  aria-label={`part of colour ${i + 1}`}
                  onChange={(e) => put(i, { ...s, part: e.target.value as Role })}
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
              </span>
            </div>
          </li>
        ))}
        <li>
          <Button
            off={palette.slots.length >= MOST_COLOURS}
            onClick={() => onChange({ ...palette, slots: [...palette.slots, { colour: '#c9a0a8', part: 'mass' }] })}
          >
            Add a colour
          </Button>
        </li>
      </ol>
    </section>
  )
}
