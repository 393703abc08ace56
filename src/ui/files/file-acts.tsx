import { LIMITS } from '../../arrangement/index.ts'
import { askFor, openText, say, textOfDesign, useStudio } from '../../state/index.ts'
import { fileName } from '../../storage/index.ts'
import { Button, FileButton } from '../parts/index.ts'
import { download } from './download.ts'

/** The first byte of every PNG, and of no text (PNG specification, 3rd edition, 5.2). */
const PNG_BEGINS = 0x89

/** The text of a design's file, or of the design that a picture carries; null where there is none, and why. */
const textIn = async (file: File): Promise<{ text: string | null; refusal: string }> => {
  if (new Uint8Array(await file.slice(0, 1).arrayBuffer())[0] === PNG_BEGINS)
    return (await import('./read-picture.ts')).textInPicture(file)
  if (file.size > LIMITS.file_bytes)
    return { text: null, refusal: `the file: expected at most 2 MB, got ${(file.size / 1e6).toFixed(1)} MB` }
  return { text: await file.text(), refusal: '' }
}

/**
 * Reads a file the person chose or dropped; what is wrong is said, and nothing changes before they agree. Where another
 * design is asked for while it is read, that one is shown.
 */
export const readFile = async (file: File): Promise<void> => {
  const wanted = askFor()
  const { text, refusal } = await textIn(file).catch(() => ({ text: null, refusal: 'the file: could not be read' }))
  if (wanted()) openText(file.name, text, refusal)
}

/** Open a file; save the open design as one, where one is open. */
export const FileActs = () => {
  const some = useStudio((s) => s.designId !== '' && s.sheet !== 'start')
  return (
    <>
      <FileButton
        accept=".json,application/json,.png,image/png"
        label="Open a design file"
        onFile={(file) => void readFile(file)}
      >
        Open a file
      </FileButton>
      {some ? (
        <Button
          onClick={() => {
            const { text, title } = textOfDesign()
            const name = fileName(title)
            download(new Blob([text], { type: 'application/json' }), name)
            say(`Saved as ${name}.`)
          }}
        >
          Save a file
        </Button>
      ) : null}
    </>
  )
}
