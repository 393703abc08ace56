import { type Plant, RECUT_mm } from '../../../catalogue/index.ts'
import { useEvent, useStudio } from '../../../state/index.ts'
import { type OrderLine, stemAsItComes } from '../../../stem-list/index.ts'
import { formatLength } from '../../../units/index.ts'
import { count } from '../words.ts'

/** Pieces that no stem is long enough for; nothing where there are none. */
export const TooLong = ({ line, plant }: { line: OrderLine; plant: Plant }) => {
  const units = useStudio((s) => s.units)
  const own = useEvent((s) => s.event.stems[plant.id])
  if (line.tooLong === 0) return null
  const whose = own?.stem_mm === undefined ? 'a usual stem' : 'the stem that came'
  return (
    <span className="order-note">
      <b>!</b> {count(line.tooLong, 'piece is', 'pieces are')} longer than {whose} gives:{' '}
      {formatLength(line.given.main_mm, units)}, for {formatLength(stemAsItComes(plant, own).stem_mm, units)} is recut
      by {formatLength(RECUT_mm, units)} on arrival. Ask for longer stems, or lower these in the drawing.
    </span>
  )
}
