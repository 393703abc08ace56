import type { ReadingResult } from '../../readings/index.ts'
import { isScale, scoreFigure, scoreWords } from './words.ts'

/** The score as a meter that is read as words. */
export const Score = ({ reading, name }: { reading: ReadingResult; name: string }) => {
  if (reading.score === null) return null
  return (
    // biome-ignore lint/a11y/useSemanticElements: a meter element cannot show its words
    <span
      className="score"
      role="meter"
      aria-label={`${name}, score`}
      aria-valuemin={0}
      aria-valuemax={100}
      aria-valuenow={Math.round(reading.score)}
      aria-valuetext={scoreWords(reading)}
    >
      {isScale(reading.id) ? 'not judged' : `${scoreFigure(reading.score)} of 100`}
    </span>
  )
}
