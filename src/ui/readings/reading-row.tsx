import { lazy, Suspense, useState } from 'react'
import type { ReadingId, ReadingResult } from '../../readings/index.ts'
import { change, useStudio } from '../../state/index.ts'
import { Gauge } from '../parts/index.ts'
import { Score } from './meter.tsx'
import { figureOf, gaugeOf, isScale, NAMES, ownOf, quietness, unjudgedWords, wordOf } from './words.ts'

// What is opened by a press comes when it is pressed: the first load has a limit.
const OpenReading = lazy(async () => ({ default: (await import('./open-reading.tsx')).OpenReading }))

const Unjudged = lazy(async () => ({ default: (await import('./open-reading.tsx')).Unjudged }))

const mark = (id: ReadingId | null): void => change({ markedReading: id })

/** Value with unit and word, as on a dimension. */
export const ValueWords = ({ reading }: { reading: ReadingResult | undefined }) => {
  const units = useStudio((s) => s.units)
  const held = reading?.because?.main
  if (!reading || !held || reading.score === null) return null
  const { figure, unit } = figureOf(held, held.value, units)
  const word = isScale(reading.id) ? quietness(reading.score) : wordOf(held)
  return (
    <span className="row-value">
      <b>{figure}</b>
      {unit ? ` ${unit}` : ''}
      {word && word !== 'inside' ? `, ${word}` : ''}
      {word === 'inside' && <span className="unseen">, inside what is wanted</span>}
    </span>
  )
}

/** What the advice that is pointed at would do to the readings, as it was measured when it was tried; null for none. */
const useForeseen = () => {
  const phantom = useStudio((s) => s.phantom)
  const readings = useStudio((s) => s.readings)
  if (!phantom) return null
  for (const { id, advice } of readings)
    for (const { edit, after } of advice) if (edit === phantom && after) return { of: id, ...after }
  return null
}

/** Why a reading is not judged, and what is measured all the same. */
export const Says = ({ reading }: { reading: ReadingResult }) => {
  const units = useStudio((s) => s.units)
  const { because, notApplicable } = reading
  return because ? (
    <>
      <p className="reason">Not judged: {notApplicable}</p>
      <p className="wanted">{unjudgedWords(because, units)}</p>
    </>
  ) : (
    <p className="reason">Says nothing here: {notApplicable}</p>
  )
}

interface Props {
  id: ReadingId
  /** Undefined in the first moments: the row keeps its place. */
  reading: ReadingResult | undefined
}

/** One reading: name, value, gauge, score; opens to its reasons and its advice. */
export const ReadingRow = ({ id, reading }: Props) => {
  const open = useStudio((s) => s.openReading === id)
  const [why, setWhy] = useState(false)
  const foreseen = useForeseen()
  const because = reading?.because
  const applies = reading !== undefined && reading.score !== null
  return (
    <li
      className={`reading-row${open ? ' open' : ''}`}
      onPointerEnter={() => mark(id)}
      onPointerLeave={() => mark(null)}
      onFocus={() => mark(id)}
      onBlur={() => mark(null)}
    >
      <button
        type="button"
        className="row-line row-head"
        aria-expanded={open}
        onClick={() => {
          setWhy(false)
          change({ openReading: open ? null : id })
        }}
      >
        <span className="row-name">{NAMES[id]}</span>
        <ValueWords reading={reading} />
      </button>
      {reading && !applies ? (
        <Says reading={reading} />
      ) : (
        <div className="row-gauge">
          <Gauge
            {...gaugeOf(reading)}
            predicted={foreseen?.of !== id ? null : isScale(id) ? (foreseen.scores[id] ?? null) : foreseen.value}
            width={204}
            {...(isScale(id) ? { ends: ['quiet', 'vivid'] as const } : {})}
          />
          {reading && <Score reading={reading} name={NAMES[id]} foreseen={foreseen?.scores[id]} />}
        </div>
      )}
      {!open && because && ownOf(because) && <p className="wanted">{ownOf(because)}</p>}
      <Suspense fallback={null}>
        {open && because && !applies ? <Unjudged because={because} /> : null}
        {open && reading && applies ? <OpenReading reading={reading} why={why} onWhy={() => setWhy(!why)} /> : null}
      </Suspense>
    </li>
  )
}
