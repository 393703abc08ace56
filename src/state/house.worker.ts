/**
 * The one worker file. Painting and reading share most of what they load (catalogue, geometry, colour); in one file it is
 * fetched once. What comes before the part is there waits.
 */
const waiting: MessageEvent[] = []
self.onmessage = (event: MessageEvent) => waiting.push(event)

const start = async (): Promise<void> => {
  const { onRequest } =
    self.name === 'painter' ? await import('./painter.worker.ts') : await import('./readings.worker.ts')
  self.onmessage = onRequest
  for (const event of waiting) onRequest(event)
}
void start()
