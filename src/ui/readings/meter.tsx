import type { ReadingResult } from '../../readings/index.ts'
import { isScale, scoreFigure, scoreWords } from './words.ts'

interface ScoreProps {
  reading: ReadingResult
  name: string
  /** What the advice that is pointed at would make of it; undefined where it does not say. */
  foreseen?: number | undefined
}

/** The score as a meter that is read as words; beside what it would be, where that is another whole number. */
export const Score = ({ reading, name, foreseen }: ScoreProps) => {
  if (reading.score === null) return null
  const then =
    foreseen !== undefined && scoreFigure(foreseen) !== scoreFigure(reading.score)
      ? `then ${scoreFigure(foreseen)}`
      : ''
  return (
    // biome-ignore lint/a11y/useSemanticElements: a meter element cannot show its words
    <span
      className={then ? 'score foreseen' : 'score'}
      role="meter"
      aria-label={`${name}, score`}
      aria-valuemin={0}
      aria-valuemax={100}
      aria-valuenow={Math.round(reading.score)}
      aria-valuetext={`${scoreWords(reading)}${then ? `, ${then}` : ''}`}
    >
      {then || (isScale(reading.id) ? 'not judged' : `${scoreFigure(reading.score)} of 100`)}
    </span>
  )
}
