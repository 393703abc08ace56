import { StrictMode } from 'react'
import { createRoot } from 'react-dom/client'
import { plantIds } from '../catalogue/index.ts'
import { readShow, SHOW } from '../storage/index.ts'
import { PartnerPage } from './page.tsx'
import { answerAsks } from './painting.ts'
import type { OpenPort } from './use-stage.ts'
import './partner.css'

/** A painter in a worker; in the page itself where no worker can be had, which is slower but the same. */
const opener =
  (startWorker: () => Worker): OpenPort =>
  (broken, onBroken) => {
    if (!broken)
      try {
        const worker = startWorker()
        worker.onerror = onBroken
        return worker
      } catch {
        // Some browsers give no workers to a file.
      }
    const { port1, port2 } = new MessageChannel()
    answerAsks(port2 as unknown as Parameters<typeof answerAsks>[0])
    return port1 as unknown as ReturnType<OpenPort>
  }

const Refused = ({ message, home }: { message: string; home: string }) => (
  <main className="partner refused">
    <h1>This can’t be shown</h1>
    <p>{message}</p>
    <p>Ask the one who sent it for the link again, or for the page as a file: a file can’t be cut on the way.</p>
    {home ? (
      <p>
        <a href={home}>Open the tool itself</a>
      </p>
    ) : null}
  </main>
)

/**
 * Shows what a fragment holds, or says why it can't be shown.
 * @param home address of the tool without a fragment, '' where it is not known
 */
export const showFragmentOn = async (
  root: HTMLElement,
  fragment: string,
  home: string,
  startWorker: () => Worker,
): Promise<void> => {
  const read = await readShow(fragment, { plants: plantIds })
  createRoot(root).render(
    <StrictMode>
      {read.ok ? (
        <PartnerPage {...read.value} home={home} open={opener(startWorker)} />
      ) : (
        <Refused message={fragment === SHOW ? 'There is no design in it.' : read.message} home={home} />
      )}
    </StrictMode>,
  )
}
