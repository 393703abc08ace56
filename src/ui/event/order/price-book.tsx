import { useState } from 'react'
import { LIMITS } from '../../../arrangement/index.ts'
import { changePrices, useStudio } from '../../../state/index.ts'
import { csvOfBytes, type PriceBookRead, readPriceBook, writePriceBook } from '../../../stem-list/index.ts'
import { Button, Dialog, FileButton } from '../../parts/index.ts'
import { count } from '../words.ts'
import { CSV_KINDS } from './csv-kind.tsx'
import { saveCsv } from './order-acts.tsx'

/** A price book that was read waits here: nothing changes before the person agrees. */
const Reading = ({ name, read, onClose }: { name: string; read: PriceBookRead; onClose: () => void }) => {
  const before = useStudio((s) => s.prices.currency)
  const some = read.ok && read.rows > 0
  return (
    <Dialog
      title={`Prices from ${name}`}
      width={680}
      onClose={onClose}
      actions={
        <>
          {some ? (
            <Button
              kind="main"
              onClick={() => {
                changePrices(read.prices, `${count(read.rows, 'plant has', 'plants have')} prices from ${name}`)
                onClose()
              }}
            >
              Take them
            </Button>
          ) : null}
          <Button onClick={onClose}>Leave it</Button>
        </>
      }
    >
      <p>
        {some
          ? `${count(read.rows, 'plant gets', 'plants get')} prices of your own, in ${read.prices.currency}; plants that are not in the file keep theirs.${read.prices.currency === before ? '' : ` Your prices in ${before} go: nothing is converted.`}`
          : 'There is no price of your own in it that could be taken. Your prices are as they were.'}
      </p>
      {read.ok && read.changed.length > 0 ? (
        <p>
          {count(read.changed.length, 'row is', 'rows are')} marked <i>example</i> and not what the example says: taken
          as your own ({read.changed.length === 1 ? 'line' : 'lines'} {read.changed.join(', ')}).
        </p>
      ) : null}
      {read.problems.length > 0 ? (
        <>
          <p>
            {count(read.problems.length, 'thing is', 'things are')} wrong in it{some ? ' and would be left out' : ''}:
          </p>
          <ul className="problems" aria-label="What is wrong">
            {read.problems.map((p) => (
              <li key={p}>{p}</li>
            ))}
          </ul>
        </>
      ) : null}
    </Dialog>
  )
}

/** The price book as a file, out and in. */
export const PriceBookActs = () => {
  const prices = useStudio((s) => s.prices)
  const kind = useStudio((s) => s.csv)
  const [waiting, setWaiting] = useState<{ name: string; read: PriceBookRead } | null>(null)
  const open = async (file: File): Promise<void> => {
    if (file.size > LIMITS.file_bytes) {
      const problems = [`the file: expected at most 2 MB, got ${(file.size / 1e6).toFixed(1)} MB`]
      return setWaiting({ name: file.name, read: { ok: false, problems } })
    }
    const csv = csvOfBytes(new Uint8Array(await file.arrayBuffer()))
    // Beside the prices as they are by now.
    setWaiting({ name: file.name, read: readPriceBook(csv, useStudio.getState().prices) })
  }
  return (
    <span className="order-acts">
      <Button onClick={() => saveCsv(writePriceBook(prices, kind), 'price book')}>Save the price book</Button>
      <FileButton accept=".csv,text/csv,text/plain" label="Open a price book" onFile={(file) => void open(file)}>
        Open a price book
      </FileButton>
      <span className="dim">Saved with {CSV_KINDS[kind]}, as chosen above; either is read.</span>
      {waiting ? <Reading {...waiting} onClose={() => setWaiting(null)} /> : null}
    </span>
  )
}
