import { useDeferredValue, useMemo } from 'react'
import { useEvent, useStudio } from '../../state/index.ts'
import { designsOf, type WorkedEvent, workOut } from '../../work-plan/index.ts'

export { type EventDesign, plantName, type WorkedEvent } from '../../work-plan/index.ts'

/** The event worked out, live. The design that is open in the tool is taken as it is there. */
export const useWorkedEvent = (): WorkedEvent => {
  const now = useEvent((s) => s.event)
  const before = useDeferredValue(now)
  // A press is for the event that is seen: another one is not waited for.
  const event = before.id === now.id ? before : now
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

/** The event worked out as it is by now, for what leaves the tool: what is seen of it may follow a moment later. */
export const workedNow = (seen: WorkedEvent): WorkedEvent => {
  const { event, designs } = useEvent.getState()
  if (seen.event === event) return seen
  const { designId, document, prices } = useStudio.getState()
  return workOut(
    event,
    designsOf(event, (id) => (id === designId ? document : designs[id])),
    prices,
  )
}
