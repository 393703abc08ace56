import { HAND_MINUTES, type HandMinutes, type Work } from '../../event/index.ts'
import { changeEvent } from '../../state/index.ts'
import { NumberField } from '../parts/index.ts'

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
  { key: 'receiving', label: 'each delivery taken in', step: 5, digits: 1, known: 'ours' },
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
  { key: 'binding', label: 'each piece bound', step: 0.5, digits: 1, known: 'ours' },
  { key: 'watering', label: 'each piece topped up', step: 0.5, digits: 1, known: 'ours' },
  { key: 'packing', label: 'each piece packed', step: 0.5, digits: 1, known: '3 to 5 min (from memory)' },
  { key: 'setting', label: 'each piece set out', step: 0.5, digits: 1, known: 'ours' },
]

/** The person's own minutes. */
export const PlanMinutes = ({ work }: { work: Work }) => (
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
          onChange={(to) =>
            changeEvent({ work: { ...work, minutes: { ...work.minutes, [key]: to } } }, `${to} minutes for ${label}`)
          }
        />
      ))}
    </div>
    <p className="quiet">
      Make one piece of each design and time it: what one took goes into the table below, design by design.
    </p>
    <details>
      <summary>How these are known</summary>
      <ul>
        {FIELDS.map(({ key, label, known }) => (
          <li key={key}>
            {label}: {work.minutes[key] === HAND_MINUTES[key] ? known : 'yours'}
          </li>
        ))}
        <li>Times stand on five minutes. No pause is counted, and no second load on the road.</li>
      </ul>
    </details>
  </>
)
