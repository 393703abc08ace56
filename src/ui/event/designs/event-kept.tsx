import { goOnWithCopy, showNewer, useEvent } from '../../../state/index.ts'
import { Button } from '../../parts/index.ts'
import { saveEvent } from './event-files.tsx'

const Elsewhere = () => (
  <>
    Another tab has gone on with this event. Nothing was overwritten; what is changed here is not kept.{' '}
    <Button kind="word" onClick={() => void showNewer()}>
      Show the newer one
    </Button>{' '}
    <Button kind="word" onClick={() => void goOnWithCopy()}>
      Go on with this one as a copy
    </Button>
  </>
)

/** Says when the event is not kept, with ways on; silent else. */
export const EventKept = () => {
  const save = useEvent((s) => s.save)
  const bad = save.state === 'elsewhere' || save.state === 'failed'
  return (
    <div role="alert" className={bad ? 'event-kept' : undefined}>
      {bad ? (
        <>
          <b>!</b> {save.state === 'elsewhere' ? <Elsewhere /> : `The event is not kept: ${save.why}`}{' '}
          <Button kind="word" onClick={saveEvent}>
            Save it as a file
          </Button>
        </>
      ) : null}
    </div>
  )
}
