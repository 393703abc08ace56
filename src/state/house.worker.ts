/**
 * The one worker file. Painting and reading share most of what they load (catalogue, geometry, colour); in one file it is
 * fetched once. What comes before the part is there waits.
 */
const waiting: MessageEvent[] = []
self.onmessage = (event: MessageEvent) => waiting.push(event)

const partFor = (name: string): Promise<{ onRequest: (event: MessageEvent) => unknown }> => {
  if (name === 'painter') return import('./painter.worker.ts')
  if (name === 'advice') return import('./advice.worker.ts')
  if (name === 'png') return import('./png.worker.ts')
  if (name === 'outline') return import('./outline.worker.ts')
  return name === 'photo' ? import('./photo.worker.ts') : import('./readings.worker.ts')
}

const start = async (): Promise<void> => {
  const { onRequest } = await partFor(self.name)
  self.onmessage = onRequest
  for (const event of waiting) onRequest(event)
}
void start()
