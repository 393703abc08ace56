import type { FormClass, Half } from '../../../catalogue/index.ts'

interface Props {
  formClass: FormClass | undefined
  half: Half
  /** The event has a date, so that each plant is told for its month. */
  dated: boolean
}

/** By what the offers are ordered, and whose months the season is told by. */
export const SwapWords = ({ formClass, half, dated }: Props) => (
  <p className="dim">
    Other plants of the class <i>{formClass}</i>, then those that share another class with it; nearest first: a step in
    colour (ΔE00 10) counts as much as a quarter in size, and as much as being out of season for certain (ours). Seasons
    are those of the {half}
    {half === 'south' ? ': the sources tell of the north, so half a year later (ours)' : ''}; what is flown in from the
    other half may be had besides.{dated ? '' : ' Set the event’s day above, and they are told for its month.'} A swap
    is a step of its design; one that is not open is opened first.
  </p>
)
