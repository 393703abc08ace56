import { LIMITS } from '../../arrangement/index.ts'
import { openText, say, textOfDesign, useStudio } from '../../state/index.ts'
import { fileName } from '../../storage/index.ts'
import { Button, FileButton } from '../parts/index.ts'
import { download } from './download.ts'

/** The first byte of every PNG, and of no text (PNG specification, 3rd edition, 5.2). */
const PNG_BEGINS = 0x89

/** Reads a file the person chose or dropped; what is wrong is said, and nothing changes before they agree. */
export const readFile = async (file: File): Promise<void> => {
  if (new Uint8Array(await file.slice(0, 1).arrayBuffer())[0] === PNG_BEGINS)
    return (await import('./read-picture.ts')).readPicture(file)
  if (file.size > LIMITS.file_bytes)
    return openText(file.name, null, `the file: expected at most 2 MB, got ${(file.size / 1e6).toFixed(1)} MB`)
  try {
    openText(file.name, await file.text())
  } catch {
    openText(file.name, null, 'the file: could not be read')
  }
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
