import { fewestOf, type OrderLine } from '../../../stem-list/index.ts'
import { formatLength, type Units } from '../../../units/index.ts'
import { count } from '../words.ts'

/** What one stem of a line gives, and why there are no fewer of them; '' where each gives one piece and there is nothing to say. */
export const givesWords = ({ given, stems, least, places }: OrderLine, units: Units): string => {
  const { main_mm, sides, side_mm, along = 1 } = given
  if (along > 1) {
    const proven = least < stems ? `. Not proven to be the fewest: at least ${least} are needed` : ''
    return `; a stem gives up to ${along} pieces, ${formatLength(main_mm, units)} in all: one has its tip, the others end in a cut${proven}`
  }
  if (sides === 0) return ''
  const gives = `; a stem gives ${formatLength(main_mm, units)} along its main axis and ${count(sides, 'side stem', 'side stems')} of at most ${formatLength(side_mm, units)}`
  const whole = places.reduce((n, p) => n + (p.piece === 'whole' ? p.count : 0), 0)
  if (whole === 0) return gives
  const asSides = places.map((p) => ({ ...p, piece: 'lateral' as const }))
  const apart = fewestOf(asSides, given).stems
  const fewer = apart < stems ? `; drawn as side stems, all would come from ${apart}` : ''
  const take =
    whole === 1
      ? 'is drawn with all the heads of a stem and takes one'
      : 'are drawn with all the heads of a stem and take one each'
  return `${gives}. ${whole} ${take}${fewer}`
}
