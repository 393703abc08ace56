import { Fragment, useId, useState } from 'react'
import { changeEvent, redoEvent, undoEvent, useEvent, useEventHistory, useStudio } from '../../state/index.ts'
import { minorDigits, sameFigure, toMain } from '../../stem-list/index.ts'
import { Button, NumberField, TextField } from '../parts/index.ts'
import { PHONE, useMedia } from '../shell/use-media.ts'
import { SeasonsField } from './seasons-field.tsx'
import { count, money, whenWords } from './words.ts'

/** Zones that this browser knows. */
const ZONES: readonly string[] = Intl.supportedValuesOf('timeZone')

const ZoneField = () => {
  const zone = useEvent((s) => s.event.zone)
  const id = useId()
  const options = ZONES.includes(zone) ? ZONES : [zone, ...ZONES]
  return (
    <div className="field">
      <label htmlFor={id}>clock of</label>
      <select
        id={id}
        value={zone}
        onChange={(e) => changeEvent({ zone: e.target.value }, `clock of ${e.target.value}`)}
      >
        {options.map((z) => (
          <option key={z} value={z}>
            {z.replaceAll('_', ' ')}
          </option>
        ))}
      </select>
    </div>
  )
}

const WhenField = () => {
  const date = useEvent((s) => s.event.date)
  const [typed, setTyped] = useState<string | null>(null)
  const id = useId()
  const take = (value: string): void => {
    // While a year is typed the browser gives it as 0002, 0020 …; those are no steps.
    if (value !== '' && !/^[12]\d{3}-/.test(value)) return setTyped(value)
    setTyped(null)
    changeEvent({ date: value.slice(0, 16) }, value ? `begins ${whenWords(value.slice(0, 16))}` : 'no date')
  }
  return (
    <div className="field event-when">
      <span className="event-when-head">
        <label htmlFor={id}>begins</label> <span id={`${id}-words`}>{whenWords(date)}</span>
      </span>
      <input
        id={id}
        aria-describedby={`${id}-words`}
        type="datetime-local"
        max="9999-12-31T23:59"
        value={typed ?? date}
        onChange={(e) => take(e.target.value)}
        onBlur={() => setTyped(null)}
      />
    </div>
  )
}

/** What may be spent. It stays in the currency in which it was set: prices in another one are no reason to take it for theirs. */
const BudgetField = () => {
  const event = useEvent((s) => s.event)
  const prices = useStudio((s) => s.prices.currency)
  const currency = event.budget === null ? prices : event.currency || prices
  const set = (budget: number | null, to: string): void =>
    changeEvent(
      { budget, currency: budget === null ? '' : to },
      budget === null ? 'no budget' : `budget ${money(budget, to)}`,
    )
  return (
    <div className="event-budget">
      <NumberField
        label="budget for stems"
        unit={currency}
        value={toMain(event.budget ?? 0, currency)}
        min={0}
        max={10_000_000}
        step={50}
        digits={minorDigits(currency)}
        onChange={(main) => set(main === 0 ? null : Math.round(main * 10 ** minorDigits(currency)), currency)}
      />
      {event.budget === null || currency === prices ? null : (
        <Button kind="word" onClick={() => set(sameFigure(event.budget ?? 0, currency, prices), prices)}>
          {money(sameFigure(event.budget, currency, prices), prices)} instead
        </Button>
      )}
    </div>
  )
}

const Fields = () => {
  const { id, title, hours, tables } = useEvent((s) => s.event)
  // Of their own for each event: what is half typed for one is not put into the next.
  return (
    <Fragment key={id}>
      <TextField
        className="event-title"
        label="Title of the event"
        value={title}
        onCommit={(to) => changeEvent({ title: to }, `the event is called ${to || 'nothing'}`)}
      />
      <WhenField />
      <ZoneField />
      <SeasonsField />
      <NumberField
        label="lasts"
        unit="h"
        value={hours}
        min={0}
        max={240}
        digits={1}
        onChange={(to) => changeEvent({ hours: to }, `lasts ${to} hours`)}
      />
      <NumberField
        label="tables"
        value={tables}
        min={0}
        max={10_000}
        onChange={(to) => changeEvent({ tables: to }, `${to} tables`)}
      />
      <BudgetField />
    </Fragment>
  )
}

const Steps = () => {
  const { undo, redo } = useEventHistory()
  return (
    <span className="event-undo">
      <Button off={!undo} onClick={undoEvent} title={undo ? `Undo: ${undo}` : undefined}>
        Undo
      </Button>
      <Button off={!redo} onClick={redoEvent} title={redo ? `Redo: ${redo}` : undefined}>
        Redo
      </Button>
    </span>
  )
}

/** What the fields say, in one line: pressed, they open. */
const Folded = () => {
  const { title, date, tables, budget, currency } = useEvent((s) => s.event)
  const prices = useStudio((s) => s.prices.currency)
  const [open, setOpen] = useState(false)
  const id = useId()
  const words = [
    whenWords(date) || 'no date yet',
    ...(tables > 0 ? [count(tables, 'table', 'tables')] : []),
    ...(budget === null ? [] : [`budget ${money(budget, currency || prices)}`]),
  ]
  return (
    <>
      <button
        type="button"
        className="event-fold"
        aria-expanded={open}
        aria-controls={id}
        onClick={() => setOpen(!open)}
      >
        <span className="event-fold-title">{title || 'The event'}</span>
        {words.map((w, i) => (
          <span key={w}>
            {i === 0 ? ' ' : ' · '}
            <span className="event-fold-words">{w}</span>
          </span>
        ))}{' '}
        <span className="event-fold-act">{open ? 'fold' : 'change'}</span>
      </button>
      <Steps />
      <div id={id} className="event-fields" hidden={!open}>
        {open ? <Fields /> : null}
      </div>
    </>
  )
}

/** What the event is: title, when, for how long, how many tables, what may be spent. On a phone a few words that open. */
export const EventHead = () => {
  const phone = useMedia(PHONE)
  return (
    <header className="event-head">
      {phone ? (
        <Folded />
      ) : (
        <>
          <Fields />
          <Steps />
        </>
      )}
    </header>
  )
}
