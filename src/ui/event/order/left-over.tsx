import { useStudio } from '../../../state/index.ts'
import type { OrderLine } from '../../../stem-list/index.ts'
import type { EventDesign } from '../../../work-plan/index.ts'
import { sidesLeftWords, usesWords } from './uses.ts'

/** Stems that are bought and neither needed nor spare, side stems that no piece takes, and where they would go. */
export const LeftOver = ({ line, designs }: { line: OrderLine; designs: readonly EventDesign[] }) => {
  const units = useStudio((s) => s.units)
  const sides = sidesLeftWords(line, units)
  const uses = usesWords(line, designs, units)
  return (
    <>
      {line.leftover}
      {sides ? (
        <span className="order-use">
          and {sides}
          {uses.length > 0 ? ';' : ''}
        </span>
      ) : null}
      {uses.map((said, i) => (
        <span key={said} className="order-use">
          {i > 0 ? 'or ' : ''}
          {said}
        </span>
      ))}
    </>
  )
}
