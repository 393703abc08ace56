import { useState } from 'react'
import { change, useStudio } from '../../state/index.ts'
import { Button } from '../parts/index.ts'
import { AddStem } from './add-stem.tsx'
import { Cautions } from './cautions.tsx'
import { useListView } from './derived.ts'
import { PaletteStrip } from './palette-strip.tsx'
import { Prices } from './prices.tsx'
import { StemFields } from './stem-fields.tsx'
import { StemTable } from './stem-table.tsx'
import './list.css'

/** The right-hand column: what to buy, in which colours, and the numbers of what is selected. */
export const StemColumn = () => {
  const view = useListView()
  const placing = useStudio((s) => s.placing)
  const [adding, setAdding] = useState(false)
  const [pricing, setPricing] = useState(false)
  const pieces = view.resolved.stems.length
  const open = adding || placing !== null
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
      {open ? <AddStem onDone={() => setAdding(false)} /> : null}
      {pricing ? <Prices view={view} onDone={() => setPricing(false)} /> : null}
      {pieces > 0 ? (
        <StemTable view={view} />
      ) : (
        <p className="quiet-line">
          Nothing in the vessel yet. Add a stem to begin; the list then counts, cuts and prices by itself.
        </p>
      )}
      <StemFields view={view} />
      <PaletteStrip view={view} />
      <Cautions view={view} />
    </div>
  )
}
