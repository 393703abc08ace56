import { useEffect, useRef, useState } from 'react'
import type { Advice as AdviceData, ReadingId } from '../../readings/index.ts'
import { change, perform, useStudio } from '../../state/index.ts'
import { Button } from '../parts/index.ts'
import { foreseenWords } from './words.ts'

interface Props {
  /** The reading that gives it. */
  of: ReadingId
  advice: readonly AdviceData[]
  why: boolean
  onWhy: () => void
}

const point = (advice: AdviceData | null): void => change({ lit: advice?.stems ?? [], phantom: advice?.edit ?? null })

/** One piece of advice at a time. Pointing at it lights its stems and draws where they would go. */
export const Advice = ({ of, advice, why, onWhy }: Props) => {
  const readings = useStudio((s) => s.readings)
  const [at, setAt] = useState(0)
  const whyButton = useRef<HTMLSpanElement>(null)
  useEffect(() => () => point(null), [])
  const now = advice.length > 0 ? advice[at % advice.length] : undefined
  const others = advice.length - 1
  const doIt = (): void => {
    // What is done may leave nothing to do: the keyboard then still stands on something.
    whyButton.current?.querySelector('button')?.focus()
    if (now?.edit) perform(now.edit)
    point(null)
  }
  const next = (): void => {
    setAt((at + 1) % advice.length)
    point(advice[(at + 1) % advice.length] ?? null)
  }
  const pointNow = (): void => point(now ?? null)
  const leave = (): void => point(null)
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: pointing shows what its buttons do; focus shows the same
    <div onPointerEnter={pointNow} onPointerLeave={leave} onFocus={pointNow} onBlur={leave}>
      {now && (
        <div aria-live="polite">
          <p className="advice">{now.text}</p>
          {now.after && <p className="reason">{foreseenWords(now, of, readings)}</p>}
        </div>
      )}
      <div className="advice-acts">
        {now?.edit && (
          <Button kind="main" onClick={doIt}>
            Do it
          </Button>
        )}
        {others > 0 && <Button onClick={next}>Next advice, {others} more</Button>}
        <span ref={whyButton}>
          <Button aria-expanded={why} onClick={onWhy}>
            Why
          </Button>
        </span>
      </div>
    </div>
  )
}
