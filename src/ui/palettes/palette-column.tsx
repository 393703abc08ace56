import { type ReactNode, useDeferredValue, useMemo } from 'react'
import type { Arrangement } from '../../arrangement/index.ts'
import { resolveArrangement } from '../../geometry/index.ts'
import { type NamedPalette, useStudio } from '../../state/index.ts'
import { type Purchase, purchase } from '../../stem-list/index.ts'
import { SmallView } from '../small-view.tsx'
import { type Area, areasOf } from './areas.ts'
import { ColourWords } from './colour-words.tsx'
import { CostCell } from './cost.tsx'
import { paintGround } from './ground.ts'
import { HarmonyRule } from './harmony-rule.tsx'
import { InTheseColours } from './in-these-colours.tsx'
import { notToBeHad, wornColours } from './matches.ts'
import type { Row } from './rows.ts'
import { Strip } from './strips.tsx'
import { useSeen } from './use-seen.ts'
import { BY_LIGHT } from './words.ts'

interface Props {
  palette: NamedPalette
  /** The design in this palette. */
  document: Arrangement
  /** What the design costs as it is on the sheet. */
  before: Purchase
  rows: readonly Row[]
  wordOf: (hex: string) => string
  lane: string
  state?: string
  onPut?: () => void
  onEdit?: () => void
}

/** A little from above, as a guest sees it who comes to the table: the cloth lies under it. Ours. */
const GUEST = { turn: 0, pitch: 6 }

const colourOf = (palette: NamedPalette, area: Area, wordOf: (hex: string) => string): string =>
  palette.slots[area.slot]?.name ?? (wordOf(area.hex) || area.hex)

/** The design in one palette: a column of the board, with a cell for every row. */
export const PaletteColumn = (props: Props) => {
  const { palette, document, before, rows, wordOf, lane, state, onPut, onEdit } = props
  const prices = useStudio((s) => s.prices)
  const shown = useDeferredValue(document)
  const seen = useSeen(shown)
  const { light } = document.setting
  const areas = useMemo(() => (seen ? areasOf(seen.colours, palette.slots) : []), [seen, palette.slots])
  const resolved = useMemo(() => resolveArrangement(shown), [shown])
  const worn = useMemo(() => wornColours(resolved), [resolved])
  const cost = useMemo(() => purchase(resolved, shown.setting.copies, prices), [resolved, shown, prices])
  const late = seen?.document !== document

  const cells: Record<Row['id'], ReactNode> = {
    name: (
      <>
        <h2>{palette.name || 'Without a name'}</h2>
        <p className="about">{palette.about}</p>
      </>
    ),
    view: (
      <SmallView
        document={document}
        width={360}
        height={306}
        lane={lane}
        angle={GUEST}
        light={light}
        ground={paintGround}
        label={`The design in ${palette.name}, from the front, ${BY_LIGHT[light]}`}
      />
    ),
    day: null,
    light: null,
    deutan: null,
    harmony: <HarmonyRule reading={seen?.harmony} inLight={BY_LIGHT[light]} />,
    cost: (
      <CostCell cost={cost} before={before} missing={notToBeHad(worn)} state={state} onPut={onPut} onEdit={onEdit} />
    ),
    words: <ColourWords slots={palette.slots} areas={areas} light={light} wordOf={wordOf} />,
    plants: <InTheseColours slots={palette.slots} worn={worn} wordOf={wordOf} />,
  }
  for (const way of ['day', 'light', 'deutan'] as const)
    cells[way] = (
      <Strip
        areas={areas}
        way={way}
        light={light}
        label={rows.find((r) => r.id === way)?.words ?? ''}
        nameOf={(area) => colourOf(palette, area, wordOf)}
      />
    )

  return (
    <section className="palette-column" aria-label={palette.name} data-late={late || undefined}>
      {rows.map((row) => (
        <div key={row.id} className={`board-cell at-${row.id}`}>
          {row.id === 'name' ? null : <span className="cell-label">{[row.words, ...(row.more ?? [])].join(', ')}</span>}
          {cells[row.id]}
        </div>
      ))}
    </section>
  )
}
