import { lazy, Suspense } from 'react'
import { useStudio } from '../state/index.ts'
import { readFile } from './files/index.ts'
import { useWaiting } from './share/waiting.ts'
import { AppKeys } from './shell/app-keys.tsx'
import { DrawingSheet } from './shell/drawing-sheet.tsx'
import { LastResort } from './shell/last-resort.tsx'
import { LiveRegions } from './shell/live-regions.tsx'
import { SheetFrame } from './shell/sheet-frame.tsx'
import './shell/shell.css'

// Asked for at once: it is what one sees first.
const start = import('./start/index.ts')
const StartPage = lazy(async () => ({ default: (await start).StartPage }))
const PalettesSheet = lazy(async () => ({ default: (await import('./palettes/index.ts')).PalettesSheet }))
const PictureSheet = lazy(async () => ({ default: (await import('./picture/index.ts')).PictureSheet }))

const EventSheet = lazy(async () => ({ default: (await import('./event/index.ts')).EventSheet }))

const OpeningDialog = lazy(async () => ({ default: (await import('./files/opening-dialog.tsx')).OpeningDialog }))

const AnswerDialog = lazy(async () => ({ default: (await import('./share/index.ts')).AnswerDialog }))

/** A file that waits for the person's word, or an answer that came in; each dialog comes with the first one. */
const Waiting = () => {
  const opening = useStudio((s) => s.opening !== null)
  const answer = useWaiting() !== null
  return (
    <Suspense fallback={null}>
      {answer ? <AnswerDialog /> : null}
      {opening ? <OpeningDialog /> : null}
    </Suspense>
  )
}

const SHEETS = { start: StartPage, palettes: PalettesSheet, picture: PictureSheet, event: EventSheet }

const OpenSheet = () => {
  const sheet = useStudio((s) => s.sheet)
  if (sheet === 'drawing') return <DrawingSheet />
  const Sheet = SHEETS[sheet]
  return (
    <SheetFrame bare={sheet === 'start'}>
      <Suspense fallback={<p className="coming">One moment.</p>}>
        <Sheet />
      </Suspense>
    </SheetFrame>
  )
}

/** The page. A design file dropped anywhere on it is opened. */
export const App = () => (
  <LastResort>
    <LiveRegions />
    <AppKeys />
    {/* biome-ignore lint/a11y/noStaticElementInteractions: the same is done by "Open a file" */}
    <div
      className="page"
      onDragOver={(event) => event.dataTransfer.types.includes('Files') && event.preventDefault()}
      onDrop={(event) => {
        const file = event.dataTransfer.files[0]
        if (!file) return
        event.preventDefault()
        void readFile(file)
      }}
    >
      <OpenSheet />
    </div>
    <Waiting />
  </LastResort>
)
