import { useMemo } from 'react'
import { type Arrangement, applyEdit, type Palette } from '../../arrangement/index.ts'
import { openKept, perform, useKeptDesigns, useStudio } from '../../state/index.ts'
import { type Answer, answerFits } from '../../storage/index.ts'
import { Button, Dialog } from '../parts/index.ts'
import { SmallView } from '../small-view.tsx'
import { setWaiting, useWaiting } from './waiting.ts'
import './share.css'

const close = (): void => setWaiting(null)
const nameOf = (palette: Palette): string => palette.name.trim() || 'these colours'

const Views = ({ document, chosen }: { document: Arrangement; chosen: Palette }) => {
  const dressed = useMemo(() => applyEdit(document, { do: 'set-palette', palette: chosen }), [document, chosen])
  const light = document.setting.light
  const size = { width: 300, height: 230, light, angle: { turn: 0, pitch: 12 } }
  return (
    <div className="answer-views">
      <figure>
        <SmallView document={document} lane="answer now" label="The design as it is on the sheet" {...size} />
        <figcaption>{dressed === document ? 'on the sheet, in just this palette' : 'on the sheet now'}</figcaption>
      </figure>
      {dressed === document ? null : (
        <figure>
          <SmallView document={dressed} lane="answer chosen" label={`The design in ${nameOf(chosen)}`} {...size} />
          <figcaption>in {nameOf(chosen)}</figcaption>
        </figure>
      )}
    </div>
  )
}

/** Which design it belongs to, and the way there. */
const Belongs = ({ answer, document, open }: { answer: Answer; document: Arrangement; open: boolean }) => {
  const kept = useKeptDesigns().filter((d) => d.readable && d.title === answer.title)
  const fits = answerFits(answer, document)
  if (open && fits === 'same') return null
  if (open && fits === 'changed')
    return (
      <p>
        <b>The design has changed since.</b> The answer is about “{answer.title}” as it was then: stems or vessel are
        others now.
      </p>
    )
  return (
    <>
      <p>
        {open ? (
          <>
            <b>This answer belongs to another design</b> than the one on the sheet: to “{answer.title}”.
          </>
        ) : (
          <>It is about “{answer.title}”.</>
        )}{' '}
        {kept.length === 0 ? 'No design of that name is kept in this browser.' : ''}
      </p>
      {kept.map((d) => (
        <p key={d.id}>
          <Button onClick={() => openKept(d.id)}>
            Open “{d.title}”, kept {new Date(d.savedAt).toLocaleString([], { dateStyle: 'medium', timeStyle: 'short' })}
          </Button>
        </p>
      ))}
    </>
  )
}

const Shown = ({ answer }: { answer: Answer }) => {
  const document = useStudio((s) => s.document)
  const open = useStudio((s) => s.designId !== '')
  const fits = answerFits(answer, document)
  const { chosen, from, note } = answer
  const here = open && fits !== 'other'
  const there = useMemo(
    () => chosen !== null && applyEdit(document, { do: 'set-palette', palette: chosen }) === document,
    [document, chosen],
  )
  return (
    <Dialog
      title={from ? `An answer from ${from}` : 'An answer'}
      width={700}
      onClose={close}
      actions={
        <>
          {here && chosen && !there ? (
            <Button
              kind="main"
              onClick={() => {
                perform({ do: 'set-palette', palette: chosen })
                close()
              }}
            >
              Put this palette on the sheet
            </Button>
          ) : null}
          <Button onClick={close}>Close</Button>
        </>
      }
    >
      <p className="answer-choice">
        {chosen ? (
          <>
            {from || 'Your partner'} likes <b>{nameOf(chosen)}</b> for “{answer.title}”.
          </>
        ) : (
          <>No palette was chosen.</>
        )}
      </p>
      {chosen ? (
        <div className="strip" aria-hidden="true">
          {chosen.slots.map((s, i) => (
            <span key={i} style={{ background: s.colour }} />
          ))}
        </div>
      ) : null}
      {note ? <blockquote>{note}</blockquote> : null}
      <Belongs answer={answer} document={document} open={open} />
      {here && chosen ? <Views document={document} chosen={chosen} /> : null}
    </Dialog>
  )
}

/** What the partner answered, beside the design; or why it can't be read. */
export const AnswerDialog = () => {
  const waiting = useWaiting()
  if (!waiting) return null
  if ('answer' in waiting) return <Shown answer={waiting.answer} />
  return (
    <Dialog title="This answer can’t be read" onClose={close}>
      <p>{waiting.problem} Ask for it again, or for its text: the last line of it is the answer.</p>
    </Dialog>
  )
}
