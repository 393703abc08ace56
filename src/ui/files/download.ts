/** Hands a file to the person, through the browser's own saving. */
export const download = (blob: Blob, name: string): void => {
  const url = URL.createObjectURL(blob)
  const link = document.createElement('a')
  link.href = url
  link.download = name
  link.click()
  // The browser has begun to read it by then; freed so that pictures don't pile up.
  setTimeout(() => URL.revokeObjectURL(url), 60_000)
}
