import { useDeferredValue, useMemo } from 'react'
import { useEvent, useStudio } from '../../state/index.ts'
import { designsOf, type WorkedEvent, workOut } from '../../work-plan/index.ts'

export { type EventDesign, plantName, type WorkedEvent } from '../../work-plan/index.ts'

/** The event worked out, live. The design that is open in the tool is taken as it is there. */
export const useWorkedEvent = (): WorkedEvent => {
  const event = useDeferredValue(useEvent((s) => s.event))
  const kept = useEvent((s) => s.designs)
  const openId = useStudio((s) => s.designId)
  const open = useStudio((s) => s.document)
  const prices = useStudio((s) => s.prices)
  const designs = useMemo(
    () => designsOf(event, (id) => (id === openId ? open : kept[id])),
    [event, kept, openId, open],
  )
  return useMemo(() => workOut(event, designs, prices), [event, designs, prices])
}
