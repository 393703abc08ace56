import { useEvent } from '../../../state/index.ts'
import { Button } from '../../parts/index.ts'
import { saveEvent } from './event-files.tsx'

/** Says when the event is not kept, with a way to save it; silent else. */
export const EventKept = () => {
  const save = useEvent((s) => s.save)
  const words =
    save.state === 'elsewhere'
      ? 'The event was changed in another tab, which keeps it. What is changed here is not kept; load this page anew to go on with the other.'
      : save.state === 'failed'
        ? `The event is not kept: ${save.why}`
        : ''
  return (
    <div role="alert" className={words ? 'event-kept' : undefined}>
      {words ? (
        <>
          <b>!</b> {words}{' '}
          <Button kind="word" onClick={saveEvent}>
            Save it as a file
          </Button>
        </>
      ) : null}
    </div>
  )
}
