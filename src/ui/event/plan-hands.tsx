import { useId } from 'react'
import { type EventPlan, HAND_MINUTES, type HandMinutes, isClock, type Work } from '../../event/index.ts'
import { changeEvent } from '../../state/index.ts'
import { NumberField, SelectField } from '../parts/index.ts'

interface MinuteField {
  key: keyof HandMinutes
  label: string
  step: number
  digits: number
  /** How well the minutes to begin with are known. */
  known: string
}

const FIELDS: readonly MinuteField[] = [
  {
    key: 'stem',
    label: 'each stem placed',
    step: 0.25,
    digits: 2,
    known: 'ours, so that a low centrepiece takes the 15 to 30 min that practitioners report (common practice)',
  },
  { key: 'piece', label: 'each piece', step: 1, digits: 1, known: 'ours, as above' },
  {
    key: 'conditioning',
    label: 'each stem conditioned',
    step: 0.05,
    digits: 2,
    known: '20 to 40 stems in 10 min (from memory)',
  },
  {
    key: 'vessel',
    label: 'each vessel prepared',
    step: 0.5,
    digits: 1,
    known: 'wire 2–3, foam 2–4, tape grid 3–5 min (from memory)',
  },
  { key: 'packing', label: 'each piece packed', step: 0.5, digits: 1, known: '3 to 5 min (from memory)' },
  { key: 'setting', label: 'each piece set out', step: 0.5, digits: 1, known: 'ours' },
]

const changeWork = (work: Work, change: Partial<Work>, words: string): void =>
  changeEvent({ work: { ...work, ...change } }, words)

const ClockField = ({ label, value, onChange }: { label: string; value: string; onChange: (to: string) => void }) => {
  const id = useId()
  return (
    <div className="field plan-clock">
      <label htmlFor={id}>{label}</label>
      <input id={id} type="time" value={value} onChange={(e) => isClock(e.target.value) && onChange(e.target.value)} />
    </div>
  )
}

const People = ({ work }: { work: Work }) => (
  <div className="plan-fields">
    <NumberField
      label="people"
      value={work.people}
      min={1}
      max={100}
      onChange={(people) => changeWork(work, { people }, `${people} ${people === 1 ? 'person' : 'people'}`)}
    />
    <ClockField label="from" value={work.from} onChange={(from) => changeWork(work, { from }, `work from ${from}`)} />
    <ClockField label="to" value={work.to} onChange={(to) => changeWork(work, { to }, `work to ${to}`)} />
    <NumberField
      label="on the road"
      unit="min"
      value={work.drive}
      min={0}
      max={1440}
      step={5}
      onChange={(drive) => changeWork(work, { drive }, `${drive} minutes on the road`)}
    />
  </div>
)

/** The person's own minutes. */
const Minutes = ({ work }: { work: Work }) => (
  <>
    <h3>Your minutes for</h3>
    <div className="plan-fields">
      {FIELDS.map(({ key, label, step, digits }) => (
        <NumberField
          key={key}
          label={label}
          value={work.minutes[key]}
          min={0}
          max={1440}
          step={step}
          digits={digits}
          spoken="minutes of one pair of hands"
          onChange={(to) => changeWork(work, { minutes: { ...work.minutes, [key]: to } }, `${to} minutes for ${label}`)}
        />
      ))}
    </div>
    <p className="quiet">Make one piece of each design, time it, and put what it took in here.</p>
    <details>
      <summary>How these are known</summary>
      <ul>
        {FIELDS.map(({ key, label, known }) => (
          <li key={key}>
            {label}: {work.minutes[key] === HAND_MINUTES[key] ? known : 'yours'}
          </li>
        ))}
        <li>No pause is counted, and no second load on the road.</li>
      </ul>
    </details>
  </>
)

/** What a cooler is taken to be when there is one: 3 °C is inside 34–38 °F, at which most are run (FloraLife); the room is ours. */
const USUAL_COOLER = { celsius: 3, stems: 400 }

const CoolerFields = ({ cooler }: Pick<EventPlan, 'cooler'>) => (
  <div className="plan-fields">
    <SelectField
      label="cooler"
      value={cooler ? 'yes' : 'no'}
      options={[
        { value: 'no', words: 'none' },
        { value: 'yes', words: 'there is one' },
      ]}
      onChange={(to) =>
        changeEvent({ cooler: to === 'yes' ? USUAL_COOLER : null }, to === 'yes' ? 'a cooler' : 'no cooler')
      }
    />
    {cooler && (
      <>
        <NumberField
          label="runs at"
          unit="°C"
          value={cooler.celsius}
          min={-5}
          max={25}
          step={0.5}
          digits={1}
          onChange={(celsius) => changeEvent({ cooler: { ...cooler, celsius } }, `cooler at ${celsius} °C`)}
        />
        <NumberField
          label="stems in it"
          value={cooler.stems}
          min={0}
          max={100_000}
          step={50}
          onChange={(stems) => changeEvent({ cooler: { ...cooler, stems } }, `cooler for ${stems} stems`)}
        />
      </>
    )}
  </div>
)

/** Who works when, how fast, and where flowers wait. */
export const PlanHands = ({ event: { work, cooler } }: { event: EventPlan }) => (
  <section aria-labelledby="plan-by-whom">
    <h2 id="plan-by-whom" tabIndex={-1}>
      Hands and cooler
    </h2>
    <People work={work} />
    <CoolerFields cooler={cooler} />
    <Minutes work={work} />
  </section>
)
