import { useEffect, useRef, useState } from 'react'
import { useStudio } from '../../state/index.ts'

/** At most one message a second, the latest wins: ears can't take more (WCAG 2.2, 4.1.3; the second is ours). */
const PAUSE_MS = 1000

/** Results are said politely; that work is not kept is said at once. Both are there, empty, from the start. */
export const LiveRegions = () => {
  const message = useStudio((s) => s.message)
  const save = useStudio((s) => s.save)
  const [said, setSaid] = useState('')
  const last = useRef(0)
  useEffect(() => {
    const wait = Math.max(0, last.current + PAUSE_MS - performance.now())
    const timer = setTimeout(() => {
      last.current = performance.now()
      setSaid(message)
    }, wait)
    return () => clearTimeout(timer)
  }, [message])
  return (
    <>
      <div className="unseen" role="status" aria-live="polite">
        {said}
      </div>
      <div className="unseen" role="alert" aria-live="assertive">
        {save.state === 'failed' ? `Not kept: ${save.why}. Download a copy.` : ''}
      </div>
    </>
  )
}
