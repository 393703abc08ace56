import { useEffect, useState } from 'react'
import type { Advice as AdviceData } from '../../readings/index.ts'
import { change, perform } from '../../state/index.ts'
import { Button } from '../parts/index.ts'

interface Props {
  advice: readonly AdviceData[]
  why: boolean
  onWhy: () => void
}

const point = (advice: AdviceData | null): void => change({ lit: advice?.stems ?? [], phantom: advice?.edit ?? null })

/** One piece of advice at a time. Pointing at it lights its stems and draws where they would go. */
export const Advice = ({ advice, why, onWhy }: Props) => {
  const [at, setAt] = useState(0)
  useEffect(() => () => point(null), [])
  const now = advice.length > 0 ? advice[at % advice.length] : undefined
  const others = advice.length - 1
  const whyButton = (
    <Button aria-expanded={why} onClick={onWhy}>
      Why
    </Button>
  )
  if (!now) return <div className="advice-acts">{whyButton}</div>
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: pointing shows what its buttons do; focus shows the same
    <div
      onPointerEnter={() => point(now)}
      onPointerLeave={() => point(null)}
      onFocus={() => point(now)}
      onBlur={() => point(null)}
    >
      <p className="advice" aria-live="polite">
        {now.text}
      </p>
      <div className="advice-acts">
        {now.edit && (
          <Button
            kind="main"
            onClick={() => {
              if (now.edit) perform(now.edit)
              point(null)
            }}
          >
            Do it
          </Button>
        )}
        {others > 0 && (
          <Button
            onClick={() => {
              const next = (at + 1) % advice.length
              setAt(next)
              point(advice[next] ?? null)
            }}
          >
            Next advice, {others} more
          </Button>
        )}
        {whyButton}
      </div>
    </div>
  )
}
