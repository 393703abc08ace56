import { READING_IDS } from '../../readings/index.ts'
import { change, useStudio } from '../../state/index.ts'
import { UprightGauge } from '../parts/index.ts'
import { Score } from './meter.tsx'
import { OpenReading } from './open-reading.tsx'
import { OwnBandsWords } from './own-bands-words.tsx'
import { ValueWords } from './reading-row.tsx'
import { AllTheWayRound } from './round.tsx'
import { gaugeOf, NAMES, scoreWords } from './words.ts'
import './readings.css'

/** On a phone: an index of small standing gauges, and the open reading below it. */
export const PhoneReadings = () => {
  const readings = useStudio((s) => s.readings)
  const open = useStudio((s) => s.openReading) ?? READING_IDS[0]
  const reading = readings.find((r) => r.id === open)
  return (
    <div className="phone-readings">
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
        {reading && reading.score === null && <p className="reason">Says nothing here: {reading.notApplicable}</p>}
        {reading && reading.score !== null && <OpenReading key={open} reading={reading} brief />}
      </div>
      <AllTheWayRound of={open} />
    </div>
  )
}
