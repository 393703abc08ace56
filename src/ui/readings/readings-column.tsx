import { READING_IDS } from '../../readings/index.ts'
import { useStudio } from '../../state/index.ts'
import { OwnBandsWords } from './own-bands-words.tsx'
import { ReadingRow } from './reading-row.tsx'
import { AllTheWayRound } from './round.tsx'
import { WhereToBegin } from './where-to-begin.tsx'
import './readings.css'

/** The left column: what the arrangement does, held against its form. */
export const ReadingsColumn = () => {
  const form = useStudio((s) => s.document.form)
  const readings = useStudio((s) => s.readings)
  const empty = useStudio((s) => (s.draft ?? s.document).stems.length === 0)
  const open = useStudio((s) => s.openReading)
  return (
    <div className="readings-column">
      <h2>Readings</h2>
      <p className="quiet">
        held against the form <i>{form}</i>
        <OwnBandsWords lead=", with" />
      </p>
      <ul className="reading-rows">
        {READING_IDS.map((id) => (
          <ReadingRow key={id} id={id} reading={readings.find((r) => r.id === id)} />
        ))}
      </ul>
      {empty ? null : <AllTheWayRound of={open ?? 'negative-space'} />}
      {open && !empty ? null : <WhereToBegin />}
    </div>
  )
}
