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
      good={good && `as an event of its own, with ${count(good.parts.length, 'design', 'designs')}`}
      nothing="Your events are as they were."
      onOpen={() => void agreeToOpenEvent()}
      onLeave={dropOpeningEvent}
    />
  )
}
