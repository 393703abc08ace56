import { READING_IDS, type ReadingResult } from '../../readings/index.ts'
import { change, useStudio } from '../../state/index.ts'
import { Button } from '../parts/index.ts'
import { isScale, NAMES, scoreFigure } from './words.ts'

/** From here on a score counts as near to what is wanted; the same step as in the words beside it. Ours. */
const NEAR = 90

/** The judged reading that is farthest from what the form wants; null where none is, or all are full. */
const farthest = (readings: readonly ReadingResult[]): (ReadingResult & { score: number }) | null => {
  const judged = readings.flatMap((r) => (r.score !== null && !isScale(r.id) ? [{ ...r, score: r.score }] : []))
  const worst = judged.sort((a, b) => a.score - b.score)[0]
  return worst && worst.score < 99.5 ? worst : null
}

/** While no reading is open: which one to look at first, and what it advises; how to begin where there is nothing to read. */
export const WhereToBegin = () => {
  const readings = useStudio((s) => s.readings)
  const empty = useStudio((s) => (s.draft ?? s.document).stems.length === 0)
  const placing = useStudio((s) => s.placing !== null)
  if (empty)
    return (
      <section className="begin" aria-label="Where to begin">
        <p className="advice">Readings come with the first stems{placing ? ': touch a view to place one' : ''}.</p>
        <p className="reason">
          A usual order (common practice): what leads first, low and near the middle; then the lines that give height
          and width; then what fills between them; greens over the rim last.
        </p>
      </section>
    )
  if (readings.length < READING_IDS.length) return null
  const first = farthest(readings)
  return (
    <section className="begin" aria-label="Where to begin">
      {first ? (
        <>
          <p className="advice">
            {first.score >= NEAR ? 'All is near what the form wants; least so ' : 'Look first at '}
            <i>{NAMES[first.id]}</i>, {scoreFigure(first.score)} of 100.
          </p>
          {first.advice[0] ? <p className="reason">{first.advice[0].text}</p> : null}
          <p className="advice-acts">
            <Button onClick={() => change({ openReading: first.id })}>Open it</Button>
          </p>
        </>
      ) : (
        <p className="advice">Everything that is judged is as the form wants it. Open a reading to see why.</p>
      )}
    </section>
  )
}
