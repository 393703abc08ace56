import { designInPicture, PICTURE_BYTES } from '../../storage/index.ts'

/** The text of the design that a picture carries; null where it carries none, and why. */
export const textInPicture = async (file: File): Promise<{ text: string | null; refusal: string }> => {
  const size = `${(file.size / 1e6).toFixed(0)} MB`
  if (file.size > PICTURE_BYTES)
    return { text: null, refusal: `expected a picture of at most ${PICTURE_BYTES / 1e6} MB, got ${size}` }
  const text = await designInPicture(new Uint8Array(await file.arrayBuffer()))
  return text.ok ? { text: text.value, refusal: '' } : { text: null, refusal: text.message }
}
