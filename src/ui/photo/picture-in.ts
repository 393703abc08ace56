/** Is a picture being dragged here? Before it is let go only the kind is known. */
export const hasPicture = (data: DataTransfer): boolean =>
  [...data.items].some((item) => item.kind === 'file' && item.type.startsWith('image/'))

/** The first picture of what was dropped or pasted, else the first file; null where there is none. */
export const pictureIn = (data: DataTransfer | null): File | null => {
  const files = [...(data?.files ?? [])]
  return files.find((f) => f.type.startsWith('image/')) ?? files[0] ?? null
}
