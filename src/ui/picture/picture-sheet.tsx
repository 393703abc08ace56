import { useId, useState } from 'react'
import { say } from '../../state/index.ts'
import { download } from '../files/index.ts'
import { painter } from '../painter.ts'
import { Button } from '../parts/index.ts'
import { exportPicture, pictureName } from './export.ts'
import { PicturePreview } from './picture-preview.tsx'
import { type PictureView, usePicture } from './use-picture.ts'
import './picture.css'

const copyWords = async (words: string, field: HTMLTextAreaElement | null): Promise<void> => {
  try {
    await navigator.clipboard.writeText(words)
    say('The words are copied.')
  } catch {
    // Without leave to the clipboard the person can still copy by hand.
    field?.select()
    say('The words are selected: copy them with the keyboard.')
  }
}

const downloadPicture = async (picture: PictureView): Promise<void> => {
  say('Drawing the picture …')
  try {
    const { document, items, faces } = picture
    const made = await exportPicture({ document, items, faces, painter: painter() })
    if (!made) return
    const name = pictureName(document.title)
    download(made.blob, name)
    const size = `${made.width} by ${made.height} dots`
    say(
      made.reduced
        ? `Saved as ${name}, ${size}: this browser can draw it no larger.`
        : `Saved as ${name}, ${size}: a sheet of A4.`,
    )
  } catch (error) {
    say(`The picture could not be made: ${error instanceof Error ? error.message : 'no reason was given'}.`)
  }
}

/** One picture for the partner: what it looks like, the same in words, and the way to take it along. */
export const PictureSheet = () => {
  const [withCost, setWithCost] = useState(false)
  const [busy, setBusy] = useState(false)
  const [field, setField] = useState<HTMLTextAreaElement | null>(null)
  const words = useId()
  const picture = usePicture(withCost)
  return (
    <div className="picture-sheet">
      {picture ? (
        <PicturePreview document={picture.document} items={picture.items} faces={picture.faces} describedBy={words} />
      ) : (
        <p className="picture-preview" aria-busy="true">
          Drawing …
        </p>
      )}
      <section className="picture-side" aria-label="What to do with it">
        <h1>The picture</h1>
        <p className="advice">
          One sheet to print or to send: it can be understood by someone who has never seen this page. Colours are those
          of daylight.
        </p>
        <label className="picture-choice">
          <input type="checkbox" checked={withCost} onChange={(event) => setWithCost(event.target.checked)} /> with the
          cost
        </label>
        <Button
          kind="main"
          off={!picture || busy}
          onClick={async () => {
            if (!picture) return
            setBusy(true)
            await downloadPicture(picture)
            setBusy(false)
          }}
        >
          {busy ? 'Drawing …' : 'Download the picture'}
        </Button>
        <p className="quiet">A PNG of A4 size, 2480 by 3508 dots.</p>
        <label htmlFor={words} className="picture-words">
          The same in words, to send along for those who can’t see it
        </label>
        <textarea id={words} ref={setField} readOnly rows={9} value={picture?.words ?? ''} />
        <Button off={!picture} onClick={() => copyWords(picture?.words ?? '', field)}>
          Copy
        </Button>
      </section>
    </div>
  )
}
