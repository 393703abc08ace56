import { halfOf, halfOfZone } from '../../event/index.ts'
import { changeEvent, useEvent } from '../../state/index.ts'
import { SelectField } from '../parts/index.ts'

/** Whose seasons hold, where the place is not on the half of the earth that the zone says. */
export const SeasonsField = () => {
  const event = useEvent((s) => s.event)
  return (
    <SelectField
      label="seasons of"
      value={halfOf(event)}
      options={[
        { value: 'north', words: 'the north' },
        { value: 'south', words: 'the south' },
      ]}
      onChange={(half) =>
        changeEvent({ seasons: half === halfOfZone(event.zone) ? null : half }, `seasons of the ${half}`)
      }
    />
  )
}
