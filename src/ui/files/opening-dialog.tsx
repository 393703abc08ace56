import { useEffect, useRef } from 'react'
import { consequence } from '../../arrangement/index.ts'
import { agreeToOpen, change, useStudio } from '../../state/index.ts'
import { Button } from '../parts/index.ts'

/** A file with something wrong: says what, offers to open what is good, and changes nothing until the person agrees. */
export const OpeningDialog = () => {
  const opening = useStudio((s) => s.opening)
  const dialog = useRef<HTMLDialogElement>(null)
  useEffect(() => {
    if (opening && !dialog.current?.open) dialog.current?.showModal()
    if (!opening && dialog.current?.open) dialog.current.close()
  }, [opening])
  const stems = opening?.good?.stems.length ?? 0
  return (
    <dialog
      ref={dialog}
      className="vessel-dialog"
      onClose={() => change({ opening: null })}
      aria-label="A file with something wrong"
    >
      {opening ? (
        <>
          <h2>{opening.name} is not right</h2>
          <p>
            {opening.good
              ? `${opening.problems.length} ${opening.problems.length === 1 ? 'thing is' : 'things are'} wrong in it. What is good can be opened as a new design with ${stems} ${stems === 1 ? 'stem' : 'stems'}; what is listed here would be left out or get its usual value. The file itself stays as it is.`
              : 'Nothing of it can be opened. Your work is as it was.'}
          </p>
          <ul className="problems" aria-label="What is wrong">
            {opening.problems.map((p) => (
              <li key={p.path + p.message}>
                <code>{p.path || 'the file'}</code> {p.message}
                {opening.good && consequence(p) ? <i>: {consequence(p)}</i> : null}
              </li>
            ))}
          </ul>
          <div className="field-line">
            {opening.good ? (
              <Button kind="main" onClick={() => agreeToOpen()}>
                Open what is good
              </Button>
            ) : null}
            <Button onClick={() => change({ opening: null })}>Leave it</Button>
          </div>
        </>
      ) : null}
    </dialog>
  )
}
