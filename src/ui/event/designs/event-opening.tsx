import { agreeToOpenEvent, dropOpeningEvent, useEvent } from '../../../state/index.ts'
import { WrongFile } from '../../files/wrong-file.tsx'
import { count } from '../words.ts'

/** An event's file with something wrong in it waits for the person's word. */
export const EventOpening = () => {
  const opening = useEvent((s) => s.opening)
  if (!opening) return null
  const { name, problems, good } = opening
  return (
    <WrongFile
      name={name}
      problems={problems}
      good={good && `in place of this event, with ${count(good.parts.length, 'design', 'designs')}`}
      nothing="Your event is as it was."
      onOpen={() => void agreeToOpenEvent()}
      onLeave={dropOpeningEvent}
    />
  )
}
