import { useId, useRef, useState } from 'react'
import { Button } from '../parts/index.ts'
import { openAnswer } from './open-answer.ts'

/** Where an answer is put in: its text, its link, or the message that holds it. */
export const OpenAnswer = () => {
  const id = useId()
  const [pasted, setPasted] = useState('')
  const [problem, setProblem] = useState('')
  const newest = useRef('')
  newest.current = pasted
  return (
    <>
      <h3>An answer came back</h3>
      <label htmlFor={id}>Paste it here: its text, its link, or the message around it</label>
      <textarea
        id={id}
        rows={3}
        value={pasted}
        aria-describedby={`${id}p`}
        aria-invalid={problem !== '' || undefined}
        onChange={(event) => {
          setPasted(event.target.value)
          setProblem('')
        }}
      />
      <p id={`${id}p`} role="alert" className={problem ? 'share-problem' : ''}>
        {problem}
      </p>
      <Button
        off={pasted.trim() === ''}
        onClick={async () => {
          const wrong = await openAnswer(pasted)
          // What has been pasted meanwhile stays, and the problem is none of it.
          if (newest.current !== pasted) return
          setProblem(wrong)
          if (!wrong) setPasted('')
        }}
      >
        Open an answer
      </Button>
    </>
  )
}
