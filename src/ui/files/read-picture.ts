import { openText } from '../../state/index.ts'
import { designInPicture, PICTURE_BYTES } from '../../storage/index.ts'

/** Opens the design that a picture carries; says so where it carries none. */
export const readPicture = async (file: File): Promise<void> => {
  const size = `${(file.size / 1e6).toFixed(0)} MB`
  if (file.size > PICTURE_BYTES)
    return openText(file.name, null, `expected a picture of at most ${PICTURE_BYTES / 1e6} MB, got ${size}`)
  const text = await designInPicture(new Uint8Array(await file.arrayBuffer()))
  if (text.ok) openText(file.name, text.value)
  else openText(file.name, null, text.message)
}
