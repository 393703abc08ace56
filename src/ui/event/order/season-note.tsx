import { seasonIn, seasonWords } from '../../../catalogue/index.ts'
import { whenOf } from '../../../event/index.ts'
import { useEvent } from '../../../state/index.ts'

/** Says of a plant that it is out of season on the event's date, or not usual then; else nothing. Where from: below the order. */
export const SeasonNote = ({ plant }: { plant: string }) => {
  const when = whenOf(useEvent((s) => s.event))
  if (!when || !['out', 'unusual'].includes(seasonIn(plant, when))) return null
  const words = seasonWords(plant, when)
  return <span className="order-note">{words.charAt(0).toUpperCase() + words.slice(1)}.</span>
}
