import { consequence } from '../../../arrangement/index.ts'
import { agreeToOpenEvent, dropOpeningEvent, useEvent } from '../../../state/index.ts'
import { Button, Dialog } from '../../parts/index.ts'
import { count } from '../words.ts'

/** An event's file with something wrong in it: says what, and opens nothing until the person agrees. */
export const EventOpening = () => {
  const opening = useEvent((s) => s.opening)
  if (!opening) return null
  const { name, problems, good } = opening
  return (
    <Dialog
      title={`${name} is not right`}
      width={760}
      onClose={dropOpeningEvent}
      actions={
        <>
          {good ? (
            <Button kind="main" onClick={() => void agreeToOpenEvent()}>
              Open what is good
            </Button>
          ) : null}
          <Button onClick={dropOpeningEvent}>Leave it</Button>
        </>
      }
    >
      <p>
        {good
          ? `${count(problems.length, 'thing is', 'things are')} wrong in it. What is good can be opened in place of this event, with ${count(good.parts.length, 'design', 'designs')}; what is listed here would be left out or get its usual value. The file itself stays as it is.`
          : 'Nothing of it can be opened. Your event is as it was.'}
      </p>
      <ul className="problems" aria-label="What is wrong">
        {problems.map((p) => (
          <li key={p.path + p.message}>
            <code>{p.path || 'the file'}</code> {p.message}
            {good && consequence(p) ? <i>: {consequence(p)}</i> : null}
          </li>
        ))}
      </ul>
    </Dialog>
  )
}
