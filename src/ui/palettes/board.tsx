import type { Arrangement } from '../../arrangement/index.ts'
import type { NamedPalette } from '../../state/index.ts'
import type { Purchase } from '../../stem-list/index.ts'
import { PaletteColumn } from './palette-column.tsx'
import { rowsFor } from './rows.ts'

interface Column {
  key: string
  palette: NamedPalette
  document: Arrangement
  state?: string
  onPut?: () => void
  onEdit?: () => void
}

interface Props {
  /** The design as it is on the sheet, and what it costs. */
  document: Arrangement
  before: Purchase
  columns: readonly Column[]
  wordOf: (hex: string) => string
}

/** Palettes as columns whose rows line up; what a row is stands once at the left, on a phone in each palette. */
export const Board = ({ document, before, columns, wordOf }: Props) => {
  const rows = rowsFor(document.setting.light, document.setting.copies)
  const style = {
    gridTemplateColumns: `var(--heads) repeat(${columns.length}, minmax(var(--narrowest), var(--widest)))`,
    gridTemplateRows: `repeat(${rows.length}, auto)`,
    '--rows': rows.length,
  }
  return (
    <div className="board" style={style} data-columns={columns.length}>
      <div className="board-rows" aria-hidden="true">
        {rows.map((row) => (
          <div key={row.id} className={`board-cell at-${row.id}`}>
            <span>{row.words}</span>
            {row.more?.map((words) => (
              <small key={words}>{words}</small>
            ))}
          </div>
        ))}
      </div>
      {columns.map(({ key, ...column }) => (
        <PaletteColumn key={key} {...column} before={before} rows={rows} wordOf={wordOf} lane={`palette ${key}`} />
      ))}
    </div>
  )
}
