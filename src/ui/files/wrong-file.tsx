import { consequence, type Problem } from '../../arrangement/index.ts'
import { Button, Dialog } from '../parts/index.ts'

interface Props {
  name: string
  problems: readonly Problem[]
  /** What can be opened of it, and in place of what, in words; null where nothing can. */
  good: string | null
  /** What stays as it was. */
  nothing: string
  onOpen: () => void
  onLeave: () => void
}

/** A file with something wrong in it: says what, offers to open what is good, and opens nothing until the person agrees. */
export const WrongFile = ({ name, problems, good, nothing, onOpen, onLeave }: Props) => (
  <Dialog
    title={`${name} is not right`}
    width={760}
    onClose={onLeave}
    actions={
      <>
        {good === null ? null : (
          <Button kind="main" onClick={onOpen}>
            Open what is good
          </Button>
        )}
        <Button onClick={onLeave}>Leave it</Button>
      </>
    }
  >
    <p>
      {good === null
        ? `Nothing of it can be opened. ${nothing}`
        : `${problems.length} ${problems.length === 1 ? 'thing is' : 'things are'} wrong in it. What is good can be opened ${good}; what is listed here would be left out or get its usual value. The file itself stays as it is.`}
    </p>
    <ul className="problems" aria-label="What is wrong">
      {problems.map((p) => (
        <li key={p.path + p.message}>
          <code>{p.path || 'the file'}</code> {p.message}
          {good !== null && consequence(p) ? <i>: {consequence(p)}</i> : null}
        </li>
      ))}
    </ul>
  </Dialog>
)
