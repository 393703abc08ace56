export interface PngRequest {
  ticket: number
  bitmap: ImageBitmap
}
export interface PngReply {
  ticket: number
  /** Null where this browser gives a worker no canvas. */
  blob: Blob | null
}

const encode = async (bitmap: ImageBitmap): Promise<Blob | null> => {
  try {
    const canvas = new OffscreenCanvas(bitmap.width, bitmap.height)
    canvas.getContext('bitmaprenderer')?.transferFromImageBitmap(bitmap)
    return await canvas.convertToBlob({ type: 'image/png' })
  } catch {
    return null
  }
}

/** Takes one request of the page. */
export const onRequest = async ({ data: { ticket, bitmap } }: MessageEvent<PngRequest>): Promise<void> => {
  self.postMessage({ ticket, blob: await encode(bitmap) } satisfies PngReply)
}
