import { consequence } from '../../arrangement/index.ts'
import { agreeToOpen, change, useStudio } from '../../state/index.ts'
import { Button, Dialog } from '../parts/index.ts'

const leave = (): void => change({ opening: null })

/** A file with something wrong: says what, offers to open what is good, and changes nothing until the person agrees. */
export const OpeningDialog = () => {
  const opening = useStudio((s) => s.opening)
  if (!opening) return null
  const { name, problems, good } = opening
  const stems = good?.stems.length ?? 0
  return (
    <Dialog
      title={`${name} is not right`}
      width={760}
      onClose={leave}
      actions={
        <>
          {good ? (
            <Button kind="main" onClick={agreeToOpen}>
              Open what is good
            </Button>
          ) : null}
          <Button onClick={leave}>Leave it</Button>
        </>
      }
    >
      <p>
        {good
          ? `${problems.length} ${problems.length === 1 ? 'thing is' : 'things are'} wrong in it. What is good can be opened as a new design with ${stems} ${stems === 1 ? 'stem' : 'stems'}; what is listed here would be left out or get its usual value. The file itself stays as it is.`
          : 'Nothing of it can be opened. Your work is as it was.'}
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
