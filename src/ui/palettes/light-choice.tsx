import type { Light } from '../../arrangement/index.ts'
import { perform } from '../../state/index.ts'
import { LIGHT_OPTIONS } from '../room/words.ts'

/** The light of the room, as one choice of the head line; one step each. */
export const LightChoice = ({ light, words }: { light: Light; words: string }) => (
  <fieldset className="light-choice">
    <legend>{words}</legend>
    {LIGHT_OPTIONS.map((o) => (
      <label key={o.value}>
        <input
          type="radio"
          name="board-light"
          checked={light === o.value}
          onChange={() => perform({ do: 'set-setting', set: { light: o.value } })}
        />
        <span>{o.words}</span>
      </label>
    ))}
  </fieldset>
)
