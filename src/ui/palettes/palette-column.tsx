import { useDeferredValue, useEffect, useMemo, useState } from 'react'
import type { Arrangement } from '../../arrangement/index.ts'
import { loadColourNames } from '../../colour/index.ts'
import { resolveArrangement } from '../../geometry/index.ts'
import type { ReadingResult } from '../../readings/index.ts'
import { type NamedPalette, readApart, useStudio } from '../../state/index.ts'
import { formatMoney, purchase } from '../../stem-list/index.ts'
import { Button } from '../parts/index.ts'
import { SmallView } from '../small-view.tsx'

interface Props {
  palette: NamedPalette
  /** The design in this palette. */
  document: Arrangement
  /** The design as it is on the sheet, for what changes. */
  before: Arrangement
  state?: string
  onPut?: () => void
  onEdit?: () => void
}

/** Colour words from the published list, fetched when first needed. */
export const useColourNames = (hexes: string[]): string[] => {
  const key = hexes.join()
  const [names, setNames] = useState<string[]>([])
  useEffect(() => {
    let live = true
    loadColourNames().then(({ colourName }) => {
      if (live) setNames(key.split(',').map((h) => (h ? colourName(h) : '')))
    })
    return () => {
      live = false
    }
  }, [key])
  return names
}

/** The harmony reading of a document that is not on the sheet; the last one stays until the new one is there. */
const useHarmony = (document: Arrangement): ReadingResult | undefined => {
  const [reading, setReading] = useState<ReadingResult>()
  useEffect(() => {
    let live = true
    readApart(document).then((all) => {
      if (live) setReading(all.find((r) => r.id === 'palette-harmony'))
    })
    return () => {
      live = false
    }
  }, [document])
  return reading
}

export const PaletteColumn = ({ palette, document, before, state, onPut, onEdit }: Props) => {
  const prices = useStudio((s) => s.prices)
  const shown = useDeferredValue(document)
  const reading = useHarmony(shown)
  const names = useColourNames(palette.slots.map((s) => s.colour))
  const cost = useMemo(() => purchase(resolveArrangement(shown), shown.setting.copies, prices), [shown, prices])
  const costBefore = useMemo(
    () => purchase(resolveArrangement(before), before.setting.copies, prices),
    [before, prices],
  )
  const main = reading?.because?.main
  // Quiet at the left, as in the readings: the published value is high for quiet pairs.
  const at = main ? 1 - Math.max(0, Math.min(1, (main.value - main.scale[0]) / (main.scale[1] - main.scale[0]))) : 0
  const more = cost.total - costBefore.total
  return (
    <section className="palette-column" aria-label={palette.name}>
      <h2>{palette.name}</h2>
      <p className="about">{palette.about}</p>
      <SmallView
        document={document}
        width={298}
        height={206}
        lane={`palette ${palette.name}`}
        light={document.setting.light}
        label={`The design in ${palette.name}, from the front`}
      />
      <div className="strip" aria-hidden="true">
        {palette.slots.map((s, i) => (
          <span key={i} style={{ background: s.colour, flexGrow: 1 }} />
        ))}
      </div>
      <ul className="slot-words">
        {palette.slots.map((s, i) => (
          <li key={i}>
            <span className="dot" style={{ background: s.colour }} aria-hidden="true" />
            {s.name ?? names[i] ?? s.colour} <span className="dim">{s.part}</span>
          </li>
        ))}
      </ul>
      <div className="harmony">
        <b>Flowers together</b>
        {main ? (
          <>
            <svg
              viewBox="0 0 240 22"
              width="100%"
              height="22"
              role="img"
              aria-label={`${main.name} ${main.value.toFixed(2)}`}
            >
              <line x1="0.5" x2="239.5" y1="14.5" y2="14.5" stroke="var(--line)" />
              {[0, 0.25, 0.5, 0.75, 1].map((t) => (
                <line key={t} x1={0.5 + t * 239} x2={0.5 + t * 239} y1="12" y2="18" stroke="var(--line)" />
              ))}
              <path d={`M${at * 239 + 0.5} 13l-4-8h8z`} fill="var(--ink)" />
            </svg>
            <div className="harmony-words">
              <span>quiet</span>
              <b>{main.value.toFixed(2)}</b>
              <span>vivid</span>
            </div>
          </>
        ) : (
          <p className="dim">{reading?.notApplicable || 'Nothing to weigh yet.'}</p>
        )}
      </div>
      <p>
        <b>{formatMoney(cost.total, cost.currency)}</b>{' '}
        <span className="dim">
          {more === 0 ? 'no change' : `${more > 0 ? '+' : '−'} ${formatMoney(Math.abs(more), cost.currency)}`},{' '}
          {cost.copies} in all
        </span>
      </p>
      {state ? <p className="state-words">{state}</p> : null}
      {onPut || onEdit ? (
        <div className="field-line">
          {onPut ? (
            <Button kind="main" onClick={onPut}>
              Put on the sheet
            </Button>
          ) : null}
          {onEdit ? <Button onClick={onEdit}>Change a copy</Button> : null}
        </div>
      ) : null}
    </section>
  )
}
