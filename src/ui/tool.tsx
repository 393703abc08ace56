import { StrictMode } from 'react'
import { createRoot } from 'react-dom/client'
import { readSample, SAMPLES, say, startKeeping, startReading } from '../state/index.ts'
import { App } from './app.tsx'
import { keepFocus } from './keep-focus.ts'
import { painter } from './painter.ts'
// After the parts of the page: where two rules are as strong as each other, this one holds.
import './theme/base.css'

/** A link to an answer is opened beside the design, one to a design in a page of its own (storage's answer.ts and link.ts). */
const followLink = (): void => {
  if (location.hash.startsWith('#answer='))
    void import('./share/index.ts').then(({ openAnswerLink }) => openAnswerLink())
  else if (location.hash.startsWith('#show=')) location.reload()
}

/** Starts the tool itself. */
export const startTool = (root: HTMLElement): void => {
  // The first picture waits for these: they come while the page itself is being put together.
  painter()
  for (const name of SAMPLES) readSample(name).catch(() => undefined)

  startReading()
  startKeeping().catch((why: unknown) => say(`What this browser keeps could not be read: ${String(why)}`))
  keepFocus()
  followLink()
  addEventListener('hashchange', followLink)
  createRoot(root).render(
    <StrictMode>
      <App />
    </StrictMode>,
  )
}
