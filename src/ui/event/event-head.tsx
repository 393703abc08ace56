import { useId, useState } from 'react'
import { changeEvent, redoEvent, undoEvent, useEvent, useEventHistory, useStudio } from '../../state/index.ts'
import { minorDigits, toMain } from '../../stem-list/index.ts'
import { Button, NumberField, TextField } from '../parts/index.ts'
import { SeasonsField } from './seasons-field.tsx'

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
    changeEvent({ date: value.slice(0, 16) }, value ? `begins ${value.replace('T', ', ')}` : 'no date')
  }
  return (
    <div className="field event-when">
      <label htmlFor={id}>begins</label>
      <input
        id={id}
        type="datetime-local"
        max="9999-12-31T23:59"
        value={typed ?? date}
        onChange={(e) => take(e.target.value)}
        onBlur={() => setTyped(null)}
      />
    </div>
  )
}

/** What the event is: title, when, for how long, how many tables, what may be spent. */
export const EventHead = () => {
  const event = useEvent((s) => s.event)
  const currency = useStudio((s) => s.prices.currency)
  const { undo, redo } = useEventHistory()
  const per = 10 ** minorDigits(currency)
  return (
    <header className="event-head">
      <TextField
        className="event-title"
        label="Title of the event"
        value={event.title}
        onCommit={(title) => changeEvent({ title }, `the event is called ${title || 'nothing'}`)}
      />
      <WhenField />
      <ZoneField />
      <SeasonsField />
      <NumberField
        label="lasts"
        unit="h"
        value={event.hours}
        min={0}
        max={240}
        digits={1}
        onChange={(hours) => changeEvent({ hours }, `lasts ${hours} hours`)}
      />
      <NumberField
        label="tables"
        value={event.tables}
        min={0}
        max={10_000}
        onChange={(tables) => changeEvent({ tables }, `${tables} tables`)}
      />
      <NumberField
        label="budget for stems"
        unit={currency}
        value={toMain(event.budget ?? 0, currency)}
        min={0}
        max={10_000_000}
        step={50}
        digits={minorDigits(currency)}
        onChange={(main) => {
          const budget = Math.round(main * per)
          changeEvent({ budget: budget === 0 ? null : budget }, budget === 0 ? 'no budget' : `budget ${main}`)
        }}
      />
      <span className="event-undo">
        <Button off={!undo} onClick={undoEvent} title={undo ? `Undo: ${undo}` : undefined}>
          Undo
        </Button>
        <Button off={!redo} onClick={redoEvent} title={redo ? `Redo: ${redo}` : undefined}>
          Redo
        </Button>
      </span>
    </header>
  )
}
