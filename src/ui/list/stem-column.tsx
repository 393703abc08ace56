import { lazy, Suspense, useState } from 'react'
import { change, useStudio } from '../../state/index.ts'
import { Button } from '../parts/index.ts'
import { useListView } from './derived.ts'
import { PaletteStrip } from './palette-strip.tsx'
import { StemTable } from './stem-table.tsx'
import './list.css'

// What is opened by a press comes when it is pressed: the first load has a limit.
const AddStem = lazy(async () => ({ default: (await import('./add-stem.tsx')).AddStem }))
const Prices = lazy(async () => ({ default: (await import('./prices.tsx')).Prices }))
const Cautions = lazy(async () => ({ default: (await import('./cautions.tsx')).Cautions }))
const StemFields = lazy(async () => ({ default: (await import('./stem-fields.tsx')).StemFields }))

/** The right-hand column: what to buy, in which colours, and the numbers of what is selected. */
export const StemColumn = () => {
  const view = useListView()
  const placing = useStudio((s) => s.placing)
  const [adding, setAdding] = useState(false)
  const [pricing, setPricing] = useState(false)
  const [cautious, setCautious] = useState(false)
  const pieces = view.resolved.stems.length
  const open = adding || placing !== null
  const chosen = useStudio((s) => s.selection.length > 0)
  return (
    <div className="stem-column">
      <div className="head-line">
        <h2>Stems</h2>
        <span className="dim">
          {pieces} {pieces === 1 ? 'piece' : 'pieces'}, {view.all.copies}{' '}
          {view.all.copies === 1 ? 'arrangement' : 'arrangements'}
        </span>
        <span className="head-acts">
          <Button onClick={() => setPricing(!pricing)} aria-expanded={pricing}>
            Prices
          </Button>
          <Button
            kind="main"
            aria-expanded={open}
            onClick={() => {
              if (open) change({ placing: null })
              setAdding(!open)
            }}
          >
            Add a stem
          </Button>
        </span>
      </div>
      <Suspense fallback={null}>{open ? <AddStem onDone={() => setAdding(false)} /> : null}</Suspense>
      <Suspense fallback={null}>{pricing ? <Prices view={view} onDone={() => setPricing(false)} /> : null}</Suspense>
      {pieces > 0 ? (
        <StemTable view={view} />
      ) : (
        <p className="quiet-line">
          Nothing in the vessel yet. Add a stem to begin; the list then counts, cuts and prices by itself.
        </p>
      )}
      {pieces > 0 ? (
        <section className="take-care" aria-label="Take care">
          <Button kind="word" aria-expanded={cautious} onClick={() => setCautious(!cautious)}>
            Take care: pets, skin, food, flame, tools. What is said of these plants
          </Button>
          <Suspense fallback={null}>{cautious ? <Cautions view={view} /> : null}</Suspense>
        </section>
      ) : null}
      {chosen ? (
        <Suspense fallback={null}>
          <StemFields view={view} />
        </Suspense>
      ) : (
        <p className="quiet-line">Select a stem in a view or in the list to see its numbers here.</p>
      )}
      <PaletteStrip view={view} />
    </div>
  )
}
