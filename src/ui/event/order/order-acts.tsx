import { useState } from 'react'
import { say, useStudio } from '../../../state/index.ts'
import { type OrderLine, orderCsv, orderMessage } from '../../../stem-list/index.ts'
import { fileName } from '../../../storage/index.ts'
import type { WorkedEvent } from '../../../work-plan/index.ts'
import { download } from '../../files/index.ts'
import { Button, Dialog } from '../../parts/index.ts'
import { workedNow } from '../use-worked-event.ts'
import { byPlant, useLineColour, whenWords } from '../words.ts'
import { CsvKindField } from './csv-kind.tsx'
import { deliveryIn } from './delivery-of.ts'

/** Saves a text as a CSV file, named after the event. */
export const saveCsv = (text: string, title: string): void => {
  const name = fileName(title, '.csv')
  download(new Blob([text], { type: 'text/csv' }), name)
  say(`Saved as ${name}.`)
}

const Message = ({ text, onClose }: { text: string; onClose: () => void }) => {
  const [said, setSaid] = useState('')
  const copy = async (): Promise<void> => {
    try {
      await navigator.clipboard.writeText(text)
      setSaid('Copied.')
    } catch {
      setSaid('This browser did not let it be copied: select the text and copy it yourself.')
    }
  }
  return (
    <Dialog
      title="The order as a message"
      width={640}
      onClose={onClose}
      actions={
        <>
          <span role="status">{said}</span>
          <Button kind="main" onClick={() => void copy()}>
            Copy
          </Button>
          <Button onClick={onClose}>Close</Button>
        </>
      }
    >
      <textarea className="order-message" aria-label="Message" readOnly rows={18} value={text} />
    </Dialog>
  )
}

/** The order as it leaves the tool: a message for the seller, a table for a spreadsheet. */
export const OrderActs = ({ worked }: { worked: WorkedEvent }) => {
  const [open, setOpen] = useState(false)
  const [withCost, setWithCost] = useState(true)
  const kind = useStudio((s) => s.csv)
  const units = useStudio((s) => s.units)
  const lineColour = useLineColour()
  const written = (of: WorkedEvent) => ({
    event: of.event,
    order: { ...of.order, lines: byPlant(of.order.lines) },
    words: { colourOf: (line: OrderLine): string => lineColour(line), deliveryOf: deliveryIn(of), units },
  })
  const save = (): void => {
    const { event, order, words } = written(workedNow(worked))
    saveCsv(orderCsv(order, { ...words, withCost, kind }), `${event.title || 'event'} order`)
  }
  const { event, order, words } = written(worked)
  return (
    <span className="order-acts">
      <Button onClick={() => setOpen(true)}>As a message</Button>
      <Button onClick={save}>Save as CSV</Button>
      <label className="order-check">
        <input type="checkbox" checked={withCost} onChange={(e) => setWithCost(e.target.checked)} />
        with cost
      </label>
      <CsvKindField />
      {open ? (
        <Message
          text={orderMessage(order, event.title, whenWords(event.date.slice(0, 10)), words)}
          onClose={() => setOpen(false)}
        />
      ) : null}
    </span>
  )
}
