import { lazy, Suspense, useState } from 'react'
import { createPortal } from 'react-dom'
import { FORMS, type Form, MECHANICS, type Mechanics } from '../../arrangement/index.ts'
import { MECHANICS_ROWS, VESSELS } from '../../catalogue/index.ts'
import { goToStart, openSheet, perform, redo, undo, useHistory, useStudio } from '../../state/index.ts'
import { toUnit } from '../../units/index.ts'
import { FileActs } from '../files/index.ts'
import { Button, formatNumber, NumberField, SelectField, TextField } from '../parts/index.ts'
import { RoomCells } from '../room/index.ts'
import { SHOW_KEYS } from './app-keys.tsx'
import { FirstAngle } from './first-angle.tsx'
import { SHEETS } from './phone-foot.tsx'
import { SaveWords } from './save-words.tsx'
import './title-block.css'

const VesselDialog = lazy(async () => ({ default: (await import('../vessel/index.ts')).VesselDialog }))

const FORM_OPTIONS = FORMS.map((value) => ({ value, words: value }))
const HELD_OPTIONS = MECHANICS.map((value) => ({
  value,
  words: MECHANICS_ROWS.find((row) => row.id === value)?.name.toLowerCase() ?? value,
}))

const VesselCell = () => {
  const vessel = useStudio((s) => s.document.vessel)
  const units = useStudio((s) => s.units)
  const [open, setOpen] = useState(false)
  const digits = { mm: 0, cm: 1, in: 2 }[units]
  const sizes = vessel.plan === 'round' ? [vessel.width, vessel.height] : [vessel.width, vessel.depth, vessel.height]
  const measure = sizes.map((mm) => formatNumber(toUnit(mm, units), digits)).join(' × ')
  const known = VESSELS.find(
    (v) =>
      v.plan === vessel.plan &&
      v.material === vessel.material &&
      v.width === vessel.width &&
      v.height === vessel.height,
  )
  return (
    <div className="cell vessel">
      <button type="button" className="cell-words" onClick={() => setOpen(true)}>
        <span className="label">vessel</span>
        <span className="value">
          {known?.name.toLowerCase() ?? `${vessel.plan} ${vessel.material}`}{' '}
          <span className="measure">{`${vessel.plan === 'round' ? '⌀ ' : ''}${measure} ${units}`}</span>
        </span>
      </button>
      {!open
        ? null
        : // Outside the block, whose fields look otherwise.
          createPortal(
            <Suspense fallback={null}>
              <VesselDialog onClose={() => setOpen(false)} />
            </Suspense>,
            document.body,
          )}
    </div>
  )
}

/** What the design is for: vessel, what holds the stems, tables, date. */
const Facts = () => {
  const { copies, date } = useStudio((s) => s.document.setting)
  const mechanics = useStudio((s) => s.document.vessel.mechanics)
  // The time of day, if there is one, stays with the new day.
  const setDay = (day: string): void =>
    perform({ do: 'set-setting', set: { date: day === '' ? null : `${day}${date?.slice(10) ?? ''}` } })
  return (
    <div className="facts">
      <VesselCell />
      <div className="cell held">
        <SelectField<Mechanics>
          label="held by"
          value={mechanics}
          options={HELD_OPTIONS}
          onChange={(to) => perform({ do: 'set-vessel', set: { mechanics: to } })}
        />
      </div>
      <div className="cell">
        <NumberField
          label="tables"
          value={copies}
          min={1}
          max={10_000}
          onChange={(to) => perform({ do: 'set-setting', set: { copies: to } })}
        />
      </div>
      <div className="cell">
        <TextField label="date" type="date" value={date?.slice(0, 10) ?? ''} onCommit={setDay} />
      </div>
      <div className="cell sign">
        <FirstAngle />
      </div>
    </div>
  )
}

/** Where it will stand. */
const Room = () => (
  <div className="facts">
    <RoomCells />
  </div>
)

const Way = () => {
  const now = useStudio((s) => s.sheet)
  const { undo: last, redo: next } = useHistory()
  return (
    <div className="way">
      <nav aria-label="Sheets">
        {SHEETS.map(({ sheet, words }, i) => (
          <button
            key={sheet}
            type="button"
            aria-current={sheet === now ? 'page' : undefined}
            onClick={() => openSheet(sheet)}
          >
            {i + 1} {words}
          </button>
        ))}
      </nav>
      {/* The event has a history of its own, and its own buttons for it. */}
      <span className="way-undo" hidden={now === 'event'}>
        <Button off={!last} onClick={undo} title={last ? `Undo: ${last}` : undefined}>
          Undo{last ? `: ${last}` : ''}
        </Button>
        <Button off={!next} onClick={redo} title={next ? `Redo: ${next}` : undefined}>
          Redo
        </Button>
      </span>
    </div>
  )
}

interface TitleBlockProps {
  /** Title, form and the way round alone, for the sheets beside the drawing. */
  brief?: boolean
  /** Without the way round, where it stands elsewhere. */
  bare?: boolean
}

/** The title block, at the lower right as ISO 7200 has it: what the sheet shows, and the way round the tool. */
export const TitleBlock = ({ brief = false, bare = false }: TitleBlockProps) => {
  const title = useStudio((s) => s.document.title)
  const designId = useStudio((s) => s.designId)
  const form = useStudio((s) => s.document.form)
  const own = useStudio((s) => Object.keys(s.document.bands ?? {}).length)
  return (
    // Of its own for each design: what is half typed for one is not put into the next.
    <section key={designId} className={`title-block${brief ? ' brief' : ''}`} aria-label="Title block">
      <div className="name">
        <TextField
          className="title"
          label="Title of the design"
          hideLabel
          value={title}
          onCommit={(to) => perform({ do: 'set-title', title: to })}
        />
        <div className="cell form">
          <SelectField<Form>
            label={own === 0 ? 'form' : `form, ${own} own ${own === 1 ? 'band' : 'bands'}`}
            value={form}
            options={FORM_OPTIONS}
            onChange={(to) => perform({ do: 'set-form', form: to })}
          />
        </div>
      </div>
      {brief ? null : (
        <>
          <Facts />
          <Room />
        </>
      )}
      {bare ? null : <Way />}
      <div className="last-line">
        <SaveWords />
        <span className="last-acts">
          <Button kind="word" onClick={() => void goToStart()}>
            Start
          </Button>
          {brief ? null : <FileActs />}
          <Button kind="word" onClick={() => dispatchEvent(new Event(SHOW_KEYS))}>
            Keys
          </Button>
        </span>
      </div>
    </section>
  )
}
