import { type ComponentType, useEffect, useState } from 'react'
import { fetchDesigns, redoEvent, startEvent, undoEvent, useEvent } from '../../state/index.ts'
import { ownSteps } from '../shell/undo-keys.ts'
import { CuttingPanel } from './cutting-panel.tsx'
import { EventKept } from './designs/event-kept.tsx'
import { DesignsPanel } from './designs-panel.tsx'
import { EventHead } from './event-head.tsx'
import { OrderPanel } from './order-panel.tsx'
import { PlanPanel } from './plan-panel.tsx'
import { SheetsPanel } from './sheets/sheets-panel.tsx'
import { SwapPanel } from './swap-panel.tsx'
import { useWorkedEvent, type WorkedEvent } from './use-worked-event.ts'
import './event.css'

/** What the event comes to, a panel each. */
const PANELS: readonly { words: string; Panel: ComponentType<{ worked: WorkedEvent }> }[] = [
  { words: 'Designs', Panel: DesignsPanel },
  { words: 'Order', Panel: OrderPanel },
  { words: 'Cutting', Panel: CuttingPanel },
  { words: 'Swap', Panel: SwapPanel },
  { words: 'Plan of work', Panel: PlanPanel },
  { words: 'Sheets to print', Panel: SheetsPanel },
]

const Worked = () => {
  const worked = useWorkedEvent()
  const [at, setAt] = useState(0)
  const { Panel, words } = PANELS[at]!
  return (
    <>
      <nav className="event-panels" aria-label="Of the event">
        {PANELS.map((panel, i) => (
          <button key={panel.words} type="button" aria-current={i === at ? 'page' : undefined} onClick={() => setAt(i)}>
            {panel.words}
          </button>
        ))}
      </nav>
      <section className="event-panel" aria-label={words}>
        {/* What is half typed for one event is not put into the next; on the first panel the list of events stays as it is. */}
        <Panel key={at === 0 ? '' : worked.event.id} worked={worked} />
      </section>
    </>
  )
}

/** All the tables of one event: its designs and their numbers, one order, one plan of work. */
export const EventSheet = () => {
  const ready = useEvent((s) => s.ready)
  useEffect(() => {
    // What was changed in a design that is no longer open is seen only by looking again.
    void (useEvent.getState().ready ? fetchDesigns() : startEvent())
    return ownSteps({ undo: undoEvent, redo: redoEvent })
  }, [])
  return (
    <div className="event-sheet">
      <h1 className="unseen">The event</h1>
      {ready ? (
        <>
          <EventHead />
          <EventKept />
          <Worked />
        </>
      ) : (
        <p className="coming">One moment.</p>
      )}
    </div>
  )
}
