import type { OrderLine } from '../../../stem-list/index.ts'
import type { EventDesign } from '../work-out.ts'

/** So many uses are written out; the others are counted. Ours. */
const MOST = 2

/** Stems that are bought and neither needed nor spare, and where they would go. */
export const LeftOver = ({ line, designs }: { line: OrderLine; designs: readonly EventDesign[] }) => {
  const uses = line.uses.flatMap((use) => {
    const design = designs.find((d) => d.design === use.design)
    return design ? [{ ...use, title: design.title, all: use.copies === design.copies, of: design.copies }] : []
  })
  return (
    <>
      {line.leftover}
      {uses.slice(0, MOST).map((use, i) => (
        <span key={use.design} className="order-use">
          {i > 0 ? 'or ' : ''}
          {use.each} more in {use.all ? 'each' : `${use.copies} of ${use.of}`}: {use.title}
        </span>
      ))}
      {uses.length > MOST ? <span className="order-use">or in {uses.length - MOST} others</span> : null}
    </>
  )
}
