import { useState } from 'react'
import { newStemId } from '../../arrangement/index.ts'
import { findPlant } from '../../catalogue/index.ts'
import { resolveArrangement } from '../../geometry/index.ts'
import { change, perform, select, useStudio } from '../../state/index.ts'
import { changeCount, formatMoney, type PurchaseLine, type StemRow, stemList, yieldOf } from '../../stem-list/index.ts'
import { formatLength } from '../../units/index.ts'
import { NumberField } from '../parts/index.ts'
import type { ListView } from './derived.ts'
import { Plate } from './plate.tsx'
import { StemMembers } from './stem-members.tsx'

const rowKey = (row: StemRow): string => `${row.plant} ${row.colour} ${row.role}`

const lineOf = (lines: PurchaseLine[], row: StemRow): PurchaseLine | undefined =>
  lines.find((l) => l.plant === row.plant && l.colour === row.colour)

/** A bunch is bought once for a plant and colour, also where two rows (two roles) share it: the first row shows it. */
const carriesLine = (rows: StemRow[], row: StemRow): boolean =>
  rows.find((r) => r.plant === row.plant && r.colour === row.colour) === row

/** Needed and, on top of them, spare. */
const stemsWords = ({ stems, spareStems }: PurchaseLine): string =>
  spareStems > 0 ? `${stems} + ${spareStems}` : `${stems}`

const bunchWords = ({ bunches, bunchSize }: PurchaseLine): string => {
  if (bunches === null) return 'by the stem'
  return bunchSize === null ? `${bunches}, two sizes` : `${bunches} × ${bunchSize}`
}

/**
 * So many pieces of a row in the drawing. The list may lag a frame behind what is drawn: a step goes from what is there, so
 * that two quick ones are two.
 */
const setPieces = (view: ListView, row: StemRow, count: number, by?: number): void => {
  const { document } = useStudio.getState()
  const resolved = view.resolved.document === document ? view.resolved : resolveArrangement(document)
  const now = stemList(resolved).find((r) => rowKey(r) === rowKey(row))
  if (!now) return
  perform(changeCount(document, resolved, now, by === undefined ? count : Math.max(0, now.pieces + by), newStemId))
}

interface RowProps {
  view: ListView
  row: StemRow
  open: boolean
  onOpen: () => void
}

const Row = ({ view, row, open, onOpen }: RowProps) => {
  const selection = useStudio((s) => s.selection)
  const units = useStudio((s) => s.units)
  const plant = findPlant(row.plant)
  const name = plant?.name ?? row.plant
  const selected = row.ids.filter((id) => selection.includes(id)).length
  const line = carriesLine(view.rows, row) ? lineOf(view.all.lines, row) : undefined
  const [least, most] = row.cut_mm.map((mm) => formatLength(mm, units).replace(` ${units}`, ''))
  const light = (ids: string[]) => change({ lit: ids })
  return (
    <>
      <tr
        className={selected > 0 ? 'row-selected' : ''}
        onPointerEnter={() => light(row.ids)}
        onPointerLeave={() => light([])}
      >
        <td className="cell-plate">
          <button
            type="button"
            className="plate-button"
            aria-expanded={open}
            onClick={onOpen}
            aria-label={`${open ? 'Close' : 'Open'} the ${row.pieces} of ${name}`}
            title={`Each of the ${row.pieces}`}
          >
            <Plate plant={row.plant} colour={row.colour} />
          </button>
        </td>
        <th scope="row">
          <button
            type="button"
            className="row-name"
            aria-pressed={selected === row.ids.length}
            onClick={(e) => select(row.ids, e.shiftKey || e.ctrlKey || e.metaKey ? 'toggle' : 'only')}
            onFocus={() => light(row.ids)}
            onBlur={() => light([])}
          >
            {name} <i>{plant?.botanical}</i>
            {selected > 0 && selected < row.ids.length ? <small> {selected} selected</small> : null}
          </button>
          {row.tooLong && plant ? (
            <small className="row-long">
              <b>!</b> {row.tooLong} too long: a usual stem gives {formatLength(yieldOf(plant).main_mm, units)}
            </small>
          ) : null}
        </th>
        <td className="cell-role">{row.role}</td>
        <td className="cell-count">
          <NumberField
            label="in it"
            spoken={`${name}, ${row.role}: pieces in one arrangement`}
            hideLabel
            value={row.pieces}
            min={0}
            max={200}
            onChange={(count, by) => setPieces(view, row, count, by)}
          />
        </td>
        <td>{line ? stemsWords(line) : '″'}</td>
        <td>{least === most ? least : `${least}–${most}`}</td>
        <td>{line ? bunchWords(line) : '″'}</td>
        <td>{line ? formatMoney(line.cost, view.all.currency) : '″'}</td>
      </tr>
      {open ? (
        <tr className="row-members">
          <td />
          <td colSpan={7} className="members">
            <StemMembers view={view} row={row} />
          </td>
        </tr>
      ) : null}
    </>
  )
}

/** The live stem list: a row per plant, colour and role. It is also how the drawing is read without seeing it. */
export const StemTable = ({ view }: { view: ListView }) => {
  const units = useStudio((s) => s.units)
  const [open, setOpen] = useState('')
  const pieces = view.rows.reduce((n, r) => n + r.pieces, 0)
  const stems = view.all.lines.reduce((n, l) => n + l.stems + l.spareStems, 0)
  const bunches = view.all.lines.reduce((n, l) => n + (l.bunches ?? 0), 0)
  return (
    <table className="stem-table">
      <caption className="unseen">
        Stems: {pieces} pieces in one arrangement, {view.all.copies} arrangements
      </caption>
      <thead>
        <tr>
          <th colSpan={2}>plant</th>
          <th className="cell-role">role</th>
          <th>in it</th>
          <th>
            stems
            <br />+ spare
          </th>
          <th>
            cut length
            <br />
            {units}
          </th>
          <th>bunches</th>
          <th>cost</th>
        </tr>
      </thead>
      <tbody>
        {view.rows.map((row) => (
          <Row
            key={rowKey(row)}
            view={view}
            row={row}
            open={open === rowKey(row)}
            onOpen={() => setOpen(open === rowKey(row) ? '' : rowKey(row))}
          />
        ))}
      </tbody>
      <tfoot>
        <tr>
          <th colSpan={2} scope="row">
            One of {view.all.copies}:{' '}
            {formatMoney(view.all.copies > 0 ? view.all.total / view.all.copies : 0, view.all.currency)}
          </th>
          <td className="cell-role" />
          <td className="cell-count">{pieces}</td>
          <td>{stems}</td>
          <td />
          <td>{bunches}</td>
          <td>{formatMoney(view.all.total, view.all.currency)}</td>
        </tr>
      </tfoot>
    </table>
  )
}
