import { useEffect, useState } from 'react'
import { type Arrangement, newArrangement } from '../../arrangement/index.ts'
import {
  beginDesign,
  type KeptDesign,
  openKept,
  openSample,
  readSample,
  removeKept,
  SAMPLES,
  useKeptDesigns,
  useStudio,
} from '../../state/index.ts'
import { FileActs } from '../files/index.ts'
import { Button } from '../parts/index.ts'
import { SmallView } from '../small-view.tsx'
import './start.css'

const Sample = ({ file }: { file: string }) => {
  const [document, setDocument] = useState<Arrangement | null>(null)
  useEffect(() => {
    let live = true
    readSample(file).then((d) => {
      if (live) setDocument(d)
    })
    return () => {
      live = false
    }
  }, [file])
  return (
    <li>
      <button type="button" className="sample" disabled={!document} onClick={() => openSample(file)}>
        <span className="sample-view">
          {document ? (
            <SmallView
              document={document}
              width={330}
              height={290}
              lane={`sample ${file}`}
              label=""
              angle={{ turn: 0, pitch: 12 }}
            />
          ) : null}
        </span>
        <span className="sample-title">{document?.title ?? '…'}</span>
        <span className="dim">
          {document
            ? `${document.stems.length} stems, ${document.setting.copies} ${document.setting.copies === 1 ? 'table' : 'tables'}, ${document.palette.name}`
            : ''}
        </span>
      </button>
    </li>
  )
}

const Kept = ({ design }: { design: KeptDesign }) => {
  const [sure, setSure] = useState(false)
  return (
    <li>
      <button type="button" className="kept" onClick={() => openKept(design.id)}>
        <span>{design.title || 'Untitled'}</span>{' '}
        <span className="dim">
          {design.stems} {design.stems === 1 ? 'stem' : 'stems'},{' '}
          {new Date(design.savedAt).toLocaleString([], { dateStyle: 'medium', timeStyle: 'short' })}
        </span>
      </button>
      {sure ? (
        <>
          <Button onClick={() => removeKept(design.id)}>Remove for good</Button>
          <Button onClick={() => setSure(false)}>Keep it</Button>
        </>
      ) : (
        <Button kind="word" onClick={() => setSure(true)} aria-label={`Remove ${design.title || 'Untitled'}`}>
          remove
        </Button>
      )}
    </li>
  )
}

/** Where one begins: an empty vessel, one's own designs, or one of three samples. */
export const StartPage = () => {
  const kept = useKeptDesigns()
  const save = useStudio((s) => s.save)
  return (
    <div className="start-page">
      <header>
        <h1>Pedicel</h1>
        <p>
          Sketch an arrangement in its vessel before buying a stem: see what leads the eye, what it takes, and what it
          costs.
        </p>
        <div className="field-line">
          <Button kind="main" onClick={() => beginDesign(newArrangement())}>
            Begin with an empty vessel
          </Button>
          <FileActs />
        </div>
      </header>
      <section aria-labelledby="samples">
        <h2 id="samples">Three to look into</h2>
        <p className="dim">Opening one makes a copy of your own.</p>
        <ul className="samples">
          {SAMPLES.map((file) => (
            <Sample key={file} file={file} />
          ))}
        </ul>
      </section>
      <section aria-labelledby="kept">
        <h2 id="kept">Yours, kept in this browser</h2>
        {kept.length === 0 ? (
          <p className="dim">
            {save.state === 'loading' ? 'Looking …' : 'None yet. A design is kept by itself from the first change on.'}
          </p>
        ) : (
          <ul className="kept-list">
            {kept.map((d) => (
              <Kept key={d.id} design={d} />
            ))}
          </ul>
        )}
        <p className="dim">
          A browser may clear what it keeps. Save a file of what matters: it opens on any machine. Nothing is sent
          anywhere.
        </p>
      </section>
    </div>
  )
}
