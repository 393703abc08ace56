import { useRef } from 'react'
import { LIMITS } from '../../arrangement/index.ts'
import { openText, say, textOfDesign, useStudio } from '../../state/index.ts'
import { designInPicture, fileName, isPng, PICTURE_BYTES } from '../../storage/index.ts'
import { Button } from '../parts/index.ts'
import { download } from './download.ts'

/** Opens the design that a picture carries; says so where it carries none. */
const readPicture = async (file: File): Promise<void> => {
  if (file.size > PICTURE_BYTES)
    return openText(
      file.name,
      null,
      `expected a picture of at most ${PICTURE_BYTES / 1e6} MB, got ${(file.size / 1e6).toFixed(0)} MB`,
    )
  const text = await designInPicture(new Uint8Array(await file.arrayBuffer()))
  if (text.ok) openText(file.name, text.value)
  else openText(file.name, null, text.message)
}

/** Reads a file the person chose or dropped; what is wrong is said, and nothing changes before they agree. */
export const readFile = async (file: File): Promise<void> => {
  if (isPng(new Uint8Array(await file.slice(0, 8).arrayBuffer()))) return readPicture(file)
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
  const input = useRef<HTMLInputElement>(null)
  return (
    <>
      <input
        ref={input}
        type="file"
        accept=".json,application/json,.png,image/png"
        className="unseen"
        tabIndex={-1}
        aria-label="Open a design file"
        onChange={(e) => {
          const file = e.target.files?.[0]
          e.target.value = ''
          if (file) void readFile(file)
        }}
      />
      <Button onClick={() => input.current?.click()}>Open a file</Button>
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
