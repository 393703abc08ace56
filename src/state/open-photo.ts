/** Larger files are refused before they are decoded, bytes: a phone's photo has 3 to 12 MB. Ours. */
const LARGEST_PHOTO = 40 * 1024 * 1024

/** `message` says in a sentence what is wrong and what would do. */
export interface PhotoRefused {
  ok: false
  message: string
}
/** `bitmap` is for the caller to close. */
export type PhotoOpened = { ok: true; name: string; bitmap: ImageBitmap } | PhotoRefused

export const refusedPhoto = (message: string): PhotoRefused => ({ ok: false, message })

/**
 * Decodes a photo in the page, the way up that the camera was held.
 * @returns what is wrong in words for what is no picture, too large, empty or broken; it never throws
 */
export const openPhoto = async (file: File): Promise<PhotoOpened> => {
  const name = file.name || 'What was pasted'
  if (file.type !== '' && !file.type.startsWith('image/'))
    return refusedPhoto(`${name} is no picture. A photo is wanted, as JPEG, PNG or WebP.`)
  if (file.size > LARGEST_PHOTO)
    return refusedPhoto(
      `${name} has ${Math.round(file.size / 1024 / 1024)} MB; more than ${LARGEST_PHOTO / 1024 / 1024} MB is too large. A smaller copy of it does as well.`,
    )
  if (file.size === 0) return refusedPhoto(`${name} is empty.`)
  try {
    return { ok: true, name, bitmap: await createImageBitmap(file) }
  } catch {
    return refusedPhoto(
      `${name} can’t be read: it is broken, of more pixels than this browser can hold, or of a kind that it does not know. A smaller JPEG, PNG or WebP would do.`,
    )
  }
}
