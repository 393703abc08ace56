import { useId, useState } from 'react'
import { say } from '../../state/index.ts'
import { download } from '../files/index.ts'
import { painter } from '../painter.ts'
import { Button } from '../parts/index.ts'
import { SharePanel } from '../share/index.ts'
import { type Choices, FIRST_CHOICES } from './choices.ts'
import { aboutFile, exportPicture, pictureName, savedWords } from './export.ts'
import { PictureChoices } from './picture-choices.tsx'
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

const downloadPicture = async ({ document, laid, faces, words }: PictureView, { kind }: Choices): Promise<void> => {
  say('Drawing the picture …')
  try {
    const made = await exportPicture(kind, { document, laid, painter: painter() }, faces, {
      title: document.title,
      words,
    })
    if (!made) return
    const name = pictureName(document.title, kind)
    download(made.blob, name)
    say(savedWords(name, kind, laid.sheet, made))
  } catch (error) {
    say(`The picture could not be made: ${error instanceof Error ? error.message : 'no reason was given'}.`)
  }
}

/** The ordinary picture as dots, to be made an editable one of. */
const pngOf = async ({ document, laid, faces, words }: PictureView): Promise<Blob | null> => {
  const said = { title: document.title, words }
  return (await exportPicture('png', { document, laid, painter: painter() }, faces, said))?.blob ?? null
}

/** What was chosen last stays for as long as the page is open. */
let kept = FIRST_CHOICES

/** One picture for the partner: what it looks like, the same in words, and the way to take it along. */
export const PictureSheet = () => {
  const [choices, setChoices] = useState(kept)
  const [busy, setBusy] = useState(false)
  const [field, setField] = useState<HTMLTextAreaElement | null>(null)
  const words = useId()
  const picture = usePicture(choices)
  return (
    <div className="picture-sheet">
      {picture ? (
        <PicturePreview document={picture.document} laid={picture.laid} faces={picture.faces} describedBy={words} />
      ) : (
        <p className="picture-preview" aria-busy="true">
          Drawing …
        </p>
      )}
      <section className="picture-side" aria-label="What to do with it">
        <h1>The picture</h1>
        <p className="advice">
          One sheet to print or to send: it can be understood by someone who has never seen this page.
        </p>
        <PictureChoices
          choices={choices}
          room={picture?.document.setting.light ?? 'daylight'}
          onChange={(next) => {
            kept = next
            setChoices(next)
          }}
        />
        <Button
          kind="main"
          off={!picture || busy}
          onClick={async () => {
            if (!picture) return
            setBusy(true)
            await downloadPicture(picture, choices)
            setBusy(false)
          }}
        >
          {busy ? 'Drawing …' : 'Download the picture'}
        </Button>
        {picture ? <p className="quiet">{aboutFile(choices.kind, picture.laid.sheet)}</p> : null}
        <label htmlFor={words} className="picture-words">
          The same in words, to send along for those who can’t see it
        </label>
        <textarea id={words} ref={setField} readOnly rows={9} value={picture?.words ?? ''} />
        <Button off={!picture} onClick={() => copyWords(picture?.words ?? '', field)}>
          Copy
        </Button>
        <SharePanel png={async () => (picture ? pngOf(picture) : null)} />
      </section>
    </div>
  )
}
