import { useEffect, useRef, useState } from 'react'
import type { Slot } from '../../arrangement/index.ts'
import { type PhotoGround, photoColours } from '../../colour/index.ts'
import { type PhotoPart, type PhotoRead, partsOfPhoto, readPhoto, say } from '../../state/index.ts'
import { percent } from '../palettes/words.ts'
import { Button, FileButton, SelectField } from '../parts/index.ts'
import { pictureIn } from './picture-in.ts'
import './photo.css'

interface Props {
  /** A photo that was dropped or pasted elsewhere on the sheet. */
  file: File | null
  onFile: (file: File) => void
  /** The palette of the design: a photo without leaves keeps its greens. */
  slots: readonly Slot[]
  onParts: (parts: PhotoPart[]) => void
  onLeave: () => void
}

const COUNTS = ['4', '5', '6', '7', '8'] as const
type Count = (typeof COUNTS)[number]
/** As many as most of our palettes have. */
const USUAL: Count = '6'

/** The photo, small, as it was looked at. */
const Small = ({ image }: { image: ImageData }) => {
  const canvas = useRef<HTMLCanvasElement>(null)
  useEffect(() => {
    canvas.current?.getContext('2d')?.putImageData(image, 0, 0)
  }, [image])
  return (
    <canvas
      ref={canvas}
      className="photo-small"
      width={image.width}
      height={image.height}
      role="img"
      aria-label="The photo, small"
    />
  )
}

const groundWords = ({ kind, share, edgeShare }: PhotoGround): string =>
  `${kind}, ${percent(share)} of the photo and ${percent(edgeShare)} of its edge`

/** Takes a photo by drop, paste or choice, and proposes a palette of its colours. The photo stays in the page. */
export const PhotoTaker = ({ file, onFile, slots, onParts, onLeave }: Props) => {
  const [read, setRead] = useState<PhotoRead | null>(null)
  const [busy, setBusy] = useState(false)
  const [count, setCount] = useState<Count>(USUAL)
  const [withGround, setWithGround] = useState(false)
  const greens = useRef(slots)
  const tell = useRef(onParts)
  tell.current = onParts

  useEffect(() => {
    if (!file) return
    let live = true
    setBusy(true)
    setWithGround(false)
    readPhoto(file).then((result) => {
      if (!live) return
      setBusy(false)
      setRead(result)
      say(result.ok ? 'The colours of the photo are found.' : result.message)
    })
    return () => {
      live = false
    }
  }, [file])

  const clusters = read?.ok ? read.clusters : null
  useEffect(() => {
    if (clusters) tell.current(partsOfPhoto(photoColours(clusters, Number(count), withGround).colours, greens.current))
  }, [clusters, count, withGround])

  const found = clusters ? photoColours(clusters, Number(count), withGround) : null
  return (
    <section className="photo-taker" aria-label="A palette from a photo">
      {/* biome-ignore lint/a11y/noStaticElementInteractions: the same is done by choosing a file */}
      <div
        className="photo-drop"
        onDragOver={(event) => event.preventDefault()}
        onDrop={(event) => {
          event.preventDefault()
          event.stopPropagation()
          const dropped = pictureIn(event.dataTransfer)
          if (dropped) onFile(dropped)
        }}
      >
        {read?.ok ? <Small image={read.small} /> : null}
        <div>
          <p className="photo-label">Drop a photo here, paste one, or choose a file.</p>
          <p className="field-line">
            <FileButton accept="image/*" label="Choose a photo" onFile={onFile}>
              {read?.ok ? 'Choose another' : 'Choose a file'}
            </FileButton>
            <Button kind="word" onClick={onLeave}>
              Leave the photo
            </Button>
          </p>
          <p className="dim">It is looked at in this page alone: it is not stored, and goes nowhere.</p>
          {busy ? <p role="status">Looking at the photo.</p> : null}
          {read && !read.ok && !busy ? <p role="alert">{read.message}</p> : null}
        </div>
        {found ? (
          <div className="photo-found">
            <div className="field-line">
              <SelectField<Count>
                label="colours, at most"
                value={count}
                options={COUNTS.map((value) => ({ value, words: value }))}
                onChange={setCount}
              />
              <p className="dim">
                {found.colours.length} found: shades that look like one across a table are counted together.
              </p>
            </div>
            {found.ground.length > 0 ? (
              <label className="photo-ground">
                <input type="checkbox" checked={withGround} onChange={(event) => setWithGround(event.target.checked)} />
                <span className="dot" style={{ background: found.ground[0]!.hex }} aria-hidden="true" />
                {withGround ? 'Taken in as well' : 'Left out as the background'}:{' '}
                {found.ground.map(groundWords).join('; ')}
              </label>
            ) : null}
          </div>
        ) : null}
      </div>
    </section>
  )
}
