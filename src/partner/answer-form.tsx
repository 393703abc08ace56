import { useEffect, useId, useRef, useState } from 'react'
import { LIMITS } from '../arrangement/index.ts'
import { type Answer, answerFragment, answerText, MOST_NAME } from '../storage/index.ts'

interface Props {
  /** What is known of the answer without this form: design, title and choice. */
  answer: Pick<Answer, 'design' | 'title' | 'chosen'>
  /** Where the tool is, for a link to the answer; '' where that is not known. */
  home: string
}

/** Puts words on the clipboard, or selects them where the browser gives no leave. */
const copy = async (
  text: string,
  field: HTMLTextAreaElement | null,
  say: (message: string) => void,
  what: string,
): Promise<void> => {
  try {
    await navigator.clipboard.writeText(text)
    say(`${what} is copied. Send it back in any message.`)
  } catch {
    // Without leave to the clipboard (a file, an old browser) a selection can still be copied.
    field?.select()
    say(
      document.execCommand('copy')
        ? `${what} is copied. Send it back in any message.`
        : 'It could not be copied: mark the text and copy it by hand.',
    )
  }
}

/** The note, and the answer to send back: as a text and as a link. */
export const AnswerForm = ({ answer, home }: Props) => {
  const id = useId()
  const [note, setNote] = useState('')
  const [from, setFrom] = useState('')
  const [said, say] = useState('')
  const [made, setMade] = useState({ text: '', link: '', problem: '' })
  const textField = useRef<HTMLTextAreaElement>(null)
  const linkField = useRef<HTMLTextAreaElement>(null)
  const something = answer.chosen !== null || note.trim() !== ''
  const { design, title, chosen } = answer
  useEffect(() => {
    let live = true
    const whole: Answer = { design, title, chosen, from: from.trim(), note: note.trim() }
    Promise.all([answerText(whole), answerFragment(whole)]).then(([text, fragment]) => {
      if (!live) return
      const problem = text.ok ? '' : text.message
      setMade({ text: text.ok ? text.value : '', link: fragment.ok && home ? home + fragment.value : '', problem })
      say('')
    })
    return () => {
      live = false
    }
  }, [design, title, chosen, from, note, home])
  const left = LIMITS.text - [...note].length
  const share = typeof navigator.share === 'function'
  return (
    <>
      <section className="note" aria-labelledby={`${id}h`}>
        <h2 id={`${id}h`}>Write back</h2>
        <label htmlFor={`${id}n`}>A note, if you like</label>
        <textarea
          id={`${id}n`}
          rows={3}
          value={note}
          aria-describedby={`${id}l`}
          onChange={(event) => setNote([...event.target.value].slice(0, LIMITS.text).join(''))}
        />
        <p id={`${id}l`} className="dim">
          {left === LIMITS.text ? `Up to ${LIMITS.text} characters.` : `${left} of ${LIMITS.text} characters left.`}
        </p>
        <label htmlFor={`${id}f`}>Your name, if you like</label>
        <input
          id={`${id}f`}
          value={from}
          maxLength={MOST_NAME}
          autoComplete="given-name"
          onChange={(event) => setFrom(event.target.value)}
        />
      </section>
      <section className="reply" aria-labelledby="answer">
        <h2 id="answer" tabIndex={-1}>
          Your answer
        </h2>
        {something && made.text ? (
          <>
            <p className="dim">
              Send this back in a message of your own: the text{made.link ? ', or the link' : ''}. Nothing goes by
              itself.
            </p>
            <label htmlFor={`${id}t`} className="unseen">
              The answer as a text
            </label>
            <textarea id={`${id}t`} ref={textField} readOnly rows={7} value={made.text} />
            <div className="acts">
              {share ? (
                <button
                  type="button"
                  className="main"
                  onClick={() => navigator.share({ text: made.text }).catch(() => say('It was not sent.'))}
                >
                  Send it …
                </button>
              ) : null}
              <button
                type="button"
                className={share ? '' : 'main'}
                onClick={() => copy(made.text, textField.current, say, 'The text')}
              >
                Copy the text
              </button>
              {made.link ? (
                <button type="button" onClick={() => copy(made.link, linkField.current, say, 'The link')}>
                  Copy as a link
                </button>
              ) : null}
            </div>
            <p role="status" className="said">
              {said}
            </p>
            {made.link ? (
              <textarea
                ref={linkField}
                className="unseen"
                aria-hidden="true"
                tabIndex={-1}
                readOnly
                value={made.link}
              />
            ) : null}
          </>
        ) : (
          <p className="dim">
            {made.problem ||
              'Say which one you like, or write a note: the answer to copy and send back stands here then.'}
          </p>
        )}
      </section>
    </>
  )
}
