import type { Light } from '../../arrangement/index.ts'
import { SelectField } from '../parts/index.ts'
import { agreed, type Choices, COMPOSITION_OPTIONS, kindsFor, SIZE_OPTIONS } from './choices.ts'
import { lightWords } from './light-words.ts'

interface Props {
  choices: Choices
  /** The light that the design's room has. */
  room: Light
  onChange: (choices: Choices) => void
}

/** Size, composition, light, kind of file, and whether the cost stands there. */
export const PictureChoices = ({ choices, room, onChange }: Props) => {
  const set = (part: Partial<Choices>): void => onChange(agreed({ ...choices, ...part }))
  const lights = [
    { value: 'daylight' as const, words: 'daylight' },
    ...(room === 'daylight' ? [] : [{ value: 'room' as const, words: `the room’s: ${lightWords(room)}` }]),
  ]
  return (
    <div className="picture-choices">
      <SelectField label="size" value={choices.size} options={SIZE_OPTIONS} onChange={(size) => set({ size })} />
      {choices.size === 'phone' ? null : (
        <SelectField
          label="shown"
          value={choices.composition}
          options={COMPOSITION_OPTIONS}
          onChange={(composition) => set({ composition })}
        />
      )}
      {lights.length > 1 ? (
        <SelectField label="colours in" value={choices.light} options={lights} onChange={(light) => set({ light })} />
      ) : null}
      <SelectField
        label="file"
        value={choices.kind}
        options={kindsFor(choices.size)}
        onChange={(kind) => set({ kind })}
      />
      <label className="picture-choice">
        <input
          type="checkbox"
          checked={choices.withCost}
          onChange={(event) => set({ withCost: event.target.checked })}
        />{' '}
        with the cost
      </label>
    </div>
  )
}
