import { useStudio } from '../../../state/index.ts'
import type { OrderLine } from '../../../stem-list/index.ts'
import type { EventDesign } from '../../../work-plan/index.ts'
import { sidesLeftWords, usesWords } from '../order/uses.ts'
import { count } from '../words.ts'

/** What is left of a line once all is cut, and where it would go; nothing where nothing is left. */
export const LeftOfLine = ({ line, designs }: { line: OrderLine; designs: readonly EventDesign[] }) => {
  const units = useStudio((s) => s.units)
  const { leftover, sidesLeft, given } = line
  if (leftover === 0 && sidesLeft === 0) return null
  const on = sidesLeft > 0 ? Math.ceil(sidesLeft / given.sides) : 0
  const where = on === 1 ? 'the last stem' : `the last ${on} stems`
  const left = [
    leftover > 0 ? count(leftover, 'whole stem', 'whole stems') : '',
    sidesLeft > 0 ? `${sidesLeftWords(line, units)} on ${where} cut apart` : '',
  ].filter((words) => words !== '')
  const uses = usesWords(line, designs, units)
  return (
    <p className="cut-left">
      Left over: {left.join(' and ')}
      {uses.length > 0 ? `, enough for ${uses.join(', or ')}` : ''}.
    </p>
  )
}
