import { useEffect, useMemo, useState } from 'react'
import { resolveArrangement } from '../../geometry/index.ts'
import { dressed, keepPalette, type NamedPalette, paletteOf, perform, useStudio } from '../../state/index.ts'
import { purchase } from '../../stem-list/index.ts'
import { Button } from '../parts/index.ts'
import { hasPicture, PhotoTaker, pictureIn } from '../photo/index.ts'
import { Board } from './board.tsx'
import { PaletteDrawer } from './drawer.tsx'
import { LightChoice } from './light-choice.tsx'
import { type EditedPalette, PaletteEditor } from './palette-editor.tsx'
import { MOST_BESIDE, useBoard } from './use-board.ts'
import { useColourWords } from './use-names.ts'
import { freeName, timesWords } from './words.ts'
import './palettes.css'

/** The same arrangement in several palettes side by side, in one light. */
export const PalettesSheet = () => {
  const document = useStudio((s) => s.document)
  const prices = useStudio((s) => s.prices)
  const { all, now, chosen, beside, toggle, putFirst } = useBoard()
  const wordOf = useColourWords()
  const [open, setOpen] = useState(false)
  const [gone, setGone] = useState<NamedPalette | null>(null)
  const [editing, setEditing] = useState<EditedPalette | null>(null)
  /** null: no photo is asked for. */
  const [photo, setPhoto] = useState<{ file: File | null } | null>(null)
  const before = useMemo(
    () => purchase(resolveArrangement(document), document.setting.copies, prices),
    [document, prices],
  )
  const names = all.map((p) => p.name)

  useEffect(() => {
    const onPaste = (event: ClipboardEvent): void => {
      const file = pictureIn(event.clipboardData)
      if (!file) return
      event.preventDefault()
      setPhoto({ file })
    }
    addEventListener('paste', onPaste)
    return () => removeEventListener('paste', onPaste)
  }, [])

  const edit = (p: NamedPalette): void => {
    setPhoto(null)
    setEditing({ ...p, name: p.own ? p.name : freeName(`${p.name}, changed`, names), own: true })
  }
  const leave = (): void => {
    setPhoto(null)
    setEditing(null)
  }

  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: the same is done by "From a photo"
    <div
      className="palettes-sheet"
      onDragOver={(event) => hasPicture(event.dataTransfer) && event.preventDefault()}
      onDrop={(event) => {
        const file = pictureIn(event.dataTransfer)
        if (!file?.type.startsWith('image/')) return
        event.preventDefault()
        event.stopPropagation()
        setPhoto({ file })
      }}
    >
      <header className="board-head">
        <h1>Palettes</h1>
        <LightChoice
          light={document.setting.light}
          words={`the same arrangement ${timesWords(beside.length + 1 + (editing ? 1 : 0))}, in the light of the room`}
        />
        <div className="board-acts">
          <Button aria-expanded={open} onClick={() => setOpen(!open)}>
            Choose palettes
          </Button>
          <Button aria-expanded={photo !== null} onClick={() => (photo ? leave() : setPhoto({ file: null }))}>
            From a photo
          </Button>
          <Button onClick={() => edit({ ...now, own: false })}>Make one of your own</Button>
        </div>
      </header>
      {open ? (
        <PaletteDrawer
          all={all}
          now={now.name}
          chosen={chosen}
          most={MOST_BESIDE}
          onToggle={toggle}
          onRemoved={setGone}
        />
      ) : null}
      {gone ? (
        <p className="field-line gone">
          {gone.name} is thrown away.
          <Button
            kind="word"
            onClick={() => {
              void keepPalette(gone)
              setGone(null)
            }}
          >
            Put it back
          </Button>
        </p>
      ) : null}
      {photo ? (
        <PhotoTaker
          file={photo.file}
          onFile={(file) => setPhoto({ file })}
          slots={document.palette.slots}
          onParts={(slots) =>
            setEditing((was) => ({
              name: was?.about === OF_PHOTO ? was.name : freeName('Of a photo', names),
              about: OF_PHOTO,
              own: true,
              slots,
            }))
          }
          onLeave={leave}
        />
      ) : null}
      {editing ? (
        <PaletteEditor
          palette={editing}
          taken={names}
          wordOf={wordOf}
          onChange={setEditing}
          onCancel={leave}
          onKeep={(palette) => {
            void keepPalette(palette)
            putFirst(palette.name)
            leave()
          }}
        />
      ) : null}
      <Board
        document={document}
        before={before}
        wordOf={wordOf}
        columns={[
          ...(editing
            ? [
                {
                  key: 'being made',
                  palette: editing,
                  document: dressed(document, editing),
                  state: 'being made',
                },
              ]
            : []),
          { key: 'on the sheet', palette: now, document, state: 'on the sheet now' },
          ...beside.map((p) => ({
            key: p.name,
            palette: p,
            document: dressed(document, p),
            onPut: () => perform({ do: 'set-palette', palette: paletteOf(p) }),
            onEdit: () => edit(p),
          })),
        ]}
      />
      <Trust />
    </div>
  )
}

const OF_PHOTO = 'Of a photo of your own.'

const Trust = () => (
  <div className="trust dim">
    <p>
      <b>How far to trust it.</b> The number is a published two-colour model (Ou and Luo 2006), averaged over the
      colours by the area that is seen; people’s own ratings agree with it only in part. It says quiet or vivid, not
      good or bad. Screens differ: judge the last choice by a real stem in the light of the room.
    </p>
    <p>
      The light is an eye’s that is used to it (CAT16 and CIECAM02’s degree of adaptation; it knows no spectra, so real
      blues change more by candles). Red–green blind: without green cones, the commonest kind (Machado and others 2009).
      Words: the nearest of the ISCC–NBS names. A plant’s colour is a word of the trade with a swatch of ours; sorts of
      one word differ by more than ΔE 5. Under ΔE 2 two colours are hardly told apart (Paravina and others 2015), under
      5 they are one across a table, from 15 plainly two (ours).
    </p>
  </div>
)
