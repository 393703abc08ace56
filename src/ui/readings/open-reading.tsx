import type { Because, Held, ReadingResult } from '../../readings/index.ts'
import { useStudio } from '../../state/index.ts'
import { Gauge } from '../parts/index.ts'
import { Advice } from './advice.tsx'
import { OwnBand } from './own-band.tsx'
import { heldWords, scoreWords, sentence, unjudged, wantedWords } from './words.ts'

/** A measured value with its gauge, its band, its rule and where the rule is from. */
const Measured = ({ held }: { held: Held }) => {
  const units = useStudio((s) => s.units)
  const wanted = wantedWords(held, units)
  return (
    <li className="measured">
      <div className="row-line">
        <span>{held.name}</span>
        <span>{heldWords(held, units)}</span>
      </div>
      {held.band && <Gauge value={held.value} scale={held.scale} band={held.band} />}
      <p className="reason">
        {wanted ? `${sentence(wanted)} ` : ''}
        {sentence(held.rule)} <cite>{sentence(held.source)}</cite>
      </p>
      <OwnBand held={held} />
    </li>
  )
}

interface Props {
  reading: ReadingResult
  /** Keeps the rule for when it is asked why. */
  brief?: boolean
  why: boolean
  onWhy: () => void
}

/** What is measured where nothing can be judged. */
export const Unjudged = ({ because }: { because: Because }) => (
  <ul className="unjudged">
    {unjudged(because).map((held) => (
      <Measured key={held.key} held={held} />
    ))}
  </ul>
)

/** What an open reading shows below its gauge: the rule, one piece of advice, and on asking everything it rests on. */
export const OpenReading = ({ reading, brief = false, why, onWhy }: Props) => {
  const units = useStudio((s) => s.units)
  const { because } = reading
  if (!because) return null
  const rule = (
    <p className="reason">
      {sentence(because.main.rule)} <cite>{sentence(because.main.source)}</cite>
    </p>
  )
  return (
    <>
      <div className="wanted-line">
        <p className="wanted">{wantedWords(because.main, units)}</p>
        <OwnBand held={because.main} />
      </div>
      {brief ? null : rule}
      <Advice of={reading.id} advice={reading.advice} why={why} onWhy={onWhy} />
      {why && (
        <div className="why">
          {brief ? rule : null}
          <ul>
            {because.others.map((held) => (
              <Measured key={held.key} held={held} />
            ))}
          </ul>
          <p className="reason">
            <b>{scoreWords(reading)}.</b> {because.how}
          </p>
          <p className="reason">
            <b>How far to trust it.</b> {because.trust}
          </p>
        </div>
      )}
    </>
  )
}
