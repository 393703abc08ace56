import { useLayoutEffect, useRef, useState } from 'react'
import { READING_IDS } from '../../readings/index.ts'
import { change, useStudio } from '../../state/index.ts'
import { Button, UprightGauge } from '../parts/index.ts'
import { Score } from './meter.tsx'
import { OpenReading, Unjudged } from './open-reading.tsx'
import { OwnBandsWords } from './own-bands-words.tsx'
import { Says, ValueWords } from './reading-row.tsx'
import { AllTheWayRound } from './round.tsx'
import { gaugeOf, NAMES, scoreWords } from './words.ts'
import './readings.css'

/**
 * On a phone: an index of small standing gauges, and the open reading below it. All that a reading rests on is too much for
 * that place: it is laid over the drawing, with a way back.
 */
export const PhoneReadings = () => {
  const readings = useStudio((s) => s.readings)
  const open = useStudio((s) => s.openReading) ?? READING_IDS[0]
  const reading = readings.find((r) => r.id === open)
  const [why, setWhy] = useState(false)
  const all = useRef<HTMLDivElement>(null)
  const whyButton = (): HTMLButtonElement | null =>
    all.current?.querySelector<HTMLButtonElement>('.advice-acts [aria-expanded]') ?? null
  // The keyboard stands on the word that opened it before the way back goes.
  const back = (): void => {
    whyButton()?.focus()
    setWhy(false)
  }
  const was = useRef(false)
  useLayoutEffect(() => {
    if (was.current && !why) whyButton()?.scrollIntoView({ block: 'nearest' })
    was.current = why
  })
  return (
    <div ref={all} className="phone-readings">
      {why ? (
        <p className="why-back">
          <Button onClick={back}>Back to the drawing</Button>
        </p>
      ) : null}
      <p className="quiet">
        <OwnBandsWords lead="Held against" />
      </p>
      <div className="gauge-index">
        {READING_IDS.map((id, i) => {
          const r = readings.find((x) => x.id === id)
          return (
            <button
              key={id}
              type="button"
              aria-pressed={id === open}
              aria-label={`${i + 1}, ${NAMES[id]}${r ? `: ${scoreWords(r)}` : ''}`}
              onClick={() => change({ openReading: id })}
            >
              <UprightGauge {...gaugeOf(r)} />
              <span>{i + 1}</span>
            </button>
          )
        })}
      </div>
      <div className="phone-open">
        <div className="row-line">
          <h3>{NAMES[open]}</h3>
          <ValueWords reading={reading} />
        </div>
        {reading && <Score reading={reading} name={NAMES[open]} />}
        {reading && reading.score === null && <Says reading={reading} />}
        {reading && reading.score === null && reading.because && (
          <>
            <div className="advice-acts">
              <Button aria-expanded={why} onClick={() => (why ? back() : setWhy(true))}>
                Why
              </Button>
            </div>
            {why && (
              <div className="why">
                <Unjudged because={reading.because} />
              </div>
            )}
          </>
        )}
        {reading && reading.score !== null && (
          <OpenReading key={open} reading={reading} brief why={why} onWhy={() => (why ? back() : setWhy(true))} />
        )}
      </div>
      <AllTheWayRound of={open} />
    </div>
  )
}
