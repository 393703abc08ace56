import { useEffect, useState } from 'react'
import {
  addPart,
  backToDrawing,
  changePart,
  openKept,
  refreshKept,
  removePart,
  useEvent,
  useKeptDesigns,
  useStudio,
} from '../../state/index.ts'
import type { EventDesign, WorkedEvent } from '../../work-plan/index.ts'
import { Button, NumberField, TextField } from '../parts/index.ts'
import { SmallView } from '../small-view.tsx'
import { KeptEvents } from './designs/kept-events.tsx'
import { budgetWords, count, money } from './words.ts'
import './order.css'

const VIEW = { turn: 0, pitch: 8 }

const openInDrawing = (id: string): void => {
  if (useStudio.getState().designId === id) backToDrawing()
  else void openKept(id)
}

interface RowProps {
  design: EventDesign
  minor: number
  currency: string
}

const DesignRow = ({ design: { design, title, document }, minor, currency }: RowProps) => {
  const part = useEvent((s) => s.event.parts.find((p) => p.design === design))
  if (!part) return null
  return (
    <tr>
      <td className="design-view">
        <SmallView document={document} width={120} height={96} lane={`event ${design}`} label="" angle={VIEW} />
      </td>
      <th scope="row">
        {title}
        <span className="order-use">{count(document.stems.length, 'stem', 'stems')} in one</span>
      </th>
      <td data-head="how many">
        <NumberField
          label="how many"
          spoken={title}
          hideLabel
          value={part.copies}
          min={1}
          max={10_000}
          onChange={(copies) => changePart(design, { copies: Math.round(copies) }, `${Math.round(copies)} of ${title}`)}
        />
      </td>
      <td data-head="where" className="design-place">
        <TextField
          label={`Where they stand, ${title}`}
          hideLabel
          value={part.place}
          onCommit={(place) => changePart(design, { place }, `${title}: ${place || 'no place'}`)}
        />
      </td>
      <td data-head="all">{money(minor, currency)}</td>
      <td data-head="one">{money(minor / part.copies, currency)}</td>
      <td className="design-acts">
        <Button onClick={() => openInDrawing(design)} aria-label={`Draw ${title}`}>
          Draw it
        </Button>
        <Button
          onClick={() => removePart(design, `${title} taken out of the event`)}
          aria-label={`Take ${title} out of the event`}
        >
          Take out
        </Button>
      </td>
    </tr>
  )
}

/** Puts a design of this browser into the event. */
const AddDesign = () => {
  const kept = useKeptDesigns()
  const parts = useEvent((s) => s.event.parts)
  const [chosen, setChosen] = useState('')
  useEffect(() => void refreshKept(), [])
  const free = kept.filter((d) => d.readable && !parts.some((p) => p.design === d.id))
  const now = free.find((d) => d.id === chosen) ?? free[0]
  if (!now)
    return (
      <p className="dim">
        Every design kept in this browser stands in the event. Begin another, or open one, on the start page; it can be
        put in here.
      </p>
    )
  return (
    <div className="design-add">
      <label className="field">
        <span className="design-add-label">kept in this browser</span>
        <select value={now.id} onChange={(e) => setChosen(e.target.value)}>
          {free.map((d) => (
            <option key={d.id} value={d.id}>
              {d.title || 'Untitled'}, {count(d.stems, 'stem', 'stems')}
            </option>
          ))}
        </select>
      </label>
      <Button kind="main" onClick={() => void addPart(now.id)}>
        Put it in
      </Button>
    </div>
  )
}

/** Parts whose design this browser no longer has: they are counted nowhere, and say so. */
const Missing = () => {
  const missing = useEvent((s) => s.missing)
  const all = useEvent((s) => s.event.parts)
  const parts = all.filter((p) => missing.includes(p.design))
  if (parts.length === 0) return null
  return (
    <ul className="design-missing" aria-label="Designs that are missing">
      {parts.map((p) => (
        <li key={p.design}>
          <b>!</b> {p.title ? `${p.title}, ` : ''}
          {count(p.copies, 'piece', 'pieces')}
          {p.place ? ` for ${p.place}` : ''}: this browser no longer has the design, or can't read it. It is in no sum.{' '}
          <Button kind="word" onClick={() => removePart(p.design, 'a missing design taken out of the event')}>
            Take it out
          </Button>
        </li>
      ))}
    </ul>
  )
}

/** The designs of the event, how many of each and where they stand. */
export const DesignsPanel = ({ worked: { event, designs, order } }: { worked: WorkedEvent }) => {
  const budget = budgetWords(event, order)
  return (
    <div className="order">
      {designs.length > 0 ? (
        // Of its own for each event: what is half typed for one is not put into the next.
        <table key={event.id} className="event-table order-table design-table">
          <caption className="unseen">Designs of the event</caption>
          <thead>
            <tr>
              <th colSpan={2} scope="colgroup">
                design
              </th>
              <th scope="col">how many</th>
              <th scope="col" className="design-place">
                where
              </th>
              <th scope="col">all of it</th>
              <th scope="col">one</th>
              <th />
            </tr>
          </thead>
          <tbody>
            {designs.map((d) => (
              <DesignRow key={d.design} design={d} minor={order.minorOf[d.design] ?? 0} currency={order.currency} />
            ))}
          </tbody>
          <tfoot>
            <tr>
              <th colSpan={2} scope="row">
                All
              </th>
              <td data-head="how many">{designs.reduce((n, d) => n + d.copies, 0)}</td>
              <td className="order-blank" />
              <td data-head="all">{money(order.minor, order.currency)}</td>
              <td className="order-blank" />
              <td className="order-blank" />
            </tr>
            {event.tables > 0 ? (
              <tr className="design-sum">
                <th colSpan={5} scope="row">
                  For each of {count(event.tables, 'table', 'tables')}
                </th>
                <td>{money(order.minor / event.tables, order.currency)}</td>
                <td className="order-blank" />
              </tr>
            ) : null}
            {budget === null ? null : (
              <tr className={`design-sum${budget.over ? ' order-over' : ''}`}>
                <th colSpan={4} scope="row">
                  {budget.words}
                </th>
                <td>{budget.amount}</td>
                <td className="order-blank" />
                <td className="order-blank" />
              </tr>
            )}
          </tfoot>
        </table>
      ) : (
        <p className="dim">No design stands in the event yet.</p>
      )}
      <Missing />
      <AddDesign />
      <KeptEvents />
    </div>
  )
}
