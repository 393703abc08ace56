import { useMemo, useState } from 'react'
import {
  dressed,
  keepPalette,
  type NamedPalette,
  paletteOf,
  perform,
  useHousePalettes,
  useOwnPalettes,
  useStudio,
} from '../../state/index.ts'
import { Button } from '../parts/index.ts'
import { PaletteColumn } from './palette-column.tsx'
import { PaletteEditor } from './palette-editor.tsx'
import './palettes.css'

const MOST = 6

/** The same arrangement in several palettes side by side, in one light. */
export const PalettesSheet = () => {
  const document = useStudio((s) => s.document)
  const own = useOwnPalettes()
  const house = useHousePalettes()
  const all = useMemo(() => [...own, ...house], [own, house])
  const now: NamedPalette = useMemo(() => {
    const known = all.find((p) => p.name === document.palette.name)
    return {
      name: document.palette.name || 'Unnamed',
      about: known?.about ?? 'on the sheet',
      slots: document.palette.slots.map((s, i) => ({
        ...s,
        ...(known?.slots[i]?.name ? { name: known.slots[i].name } : {}),
      })),
    }
  }, [document.palette, all])
  const [picked, setPicked] = useState<string[] | null>(null)
  // Until one picks: the first three that are not on the sheet.
  const others = all.map((p) => p.name).filter((name) => name !== document.palette.name)
  const chosen = picked ?? others.slice(0, 3)
  const setChosen = (from: (names: string[]) => string[]): void => setPicked(from(chosen))
  const [editing, setEditing] = useState<NamedPalette | null>(null)
  const columns = chosen.flatMap((name) => all.find((p) => p.name === name && p.name !== now.name) ?? [])

  const toggle = (name: string) =>
    setChosen((names) => (names.includes(name) ? names.filter((n) => n !== name) : [...names, name].slice(-(MOST - 1))))

  return (
    <div className="palettes-sheet">
      <header className="head-line">
        <h1>Palettes</h1>
        <p className="dim">
          the same arrangement {columns.length === 0 ? 'once' : `${columns.length + 1} times`}, seen from the front.
          Choose up to {MOST - 1} to hold beside it.
        </p>
        <Button onClick={() => setEditing({ ...now, name: `${now.name}, changed`, own: true })}>
          Make one of your own
        </Button>
      </header>
      <fieldset className="palette-names">
        <legend className="unseen">Palettes beside the one on the sheet</legend>
        {all.map((p) => (
          <label key={p.name} className={p.name === now.name ? 'on-sheet' : ''}>
            <input
              type="checkbox"
              checked={p.name === now.name || chosen.includes(p.name)}
              disabled={p.name === now.name}
              onChange={() => toggle(p.name)}
            />
            <span className="mini" aria-hidden="true">
              {p.slots.map((s, i) => (
                <span key={i} style={{ background: s.colour }} />
              ))}
            </span>
            {p.name}
            {p.own ? ' (yours)' : ''}
          </label>
        ))}
      </fieldset>
      {editing ? (
        <PaletteEditor
          palette={editing}
          taken={all.map((p) => p.name)}
          onChange={setEditing}
          onCancel={() => setEditing(null)}
          onKeep={async (palette) => {
            await keepPalette(palette)
            setChosen((names) => [palette.name, ...names.filter((n) => n !== palette.name)].slice(0, MOST - 1))
            setEditing(null)
          }}
        />
      ) : null}
      <div
        className="palette-columns"
        style={{ gridTemplateColumns: `repeat(${columns.length + 1 + (editing ? 1 : 0)}, minmax(220px, 320px))` }}
      >
        {editing ? (
          <PaletteColumn palette={editing} document={dressed(document, editing)} before={document} state="being made" />
        ) : null}
        <PaletteColumn palette={now} document={document} before={document} state="on the sheet now" />
        {columns.map((p) => (
          <PaletteColumn
            key={p.name}
            palette={p}
            document={dressed(document, p)}
            before={document}
            onPut={() => perform({ do: 'set-palette', palette: paletteOf(p) })}
            onEdit={() => setEditing({ ...p, name: p.own ? p.name : `${p.name}, changed`, own: true })}
          />
        ))}
      </div>
      <p className="dim trust">
        <b>How far to trust it.</b> The number is a published two-colour model (Ou and Luo 2006), averaged over the
        colours by the area that is seen; people’s own ratings agree with it only in part. It says quiet or vivid, not
        good or bad. Screens differ: judge the last choice by a real stem in the light of the room.
      </p>
    </div>
  )
}
