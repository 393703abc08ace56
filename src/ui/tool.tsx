import { StrictMode } from 'react'
import { createRoot } from 'react-dom/client'
import { readSample, SAMPLES, say, startKeeping, startReading } from '../state/index.ts'
import { App } from './app.tsx'
import { keepFocus } from './keep-focus.ts'
import { painter } from './painter.ts'

/** Starts the tool itself. */
export const startTool = (root: HTMLElement): void => {
  // The first picture waits for these: they come while the page itself is being put together.
  painter()
  for (const name of SAMPLES) readSample(name).catch(() => undefined)

  startReading()
  startKeeping().catch((why: unknown) => say(`What this browser keeps could not be read: ${String(why)}`))
  keepFocus()
  createRoot(root).render(
    <StrictMode>
      <App />
    </StrictMode>,
  )
}
