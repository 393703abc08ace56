import { useMemo, useState } from 'react'
import type { Role, Stem } from '../../arrangement/index.ts'
import { newStemId } from '../../arrangement/index.ts'
import { findPlant, PLANTS, searchPlants } from '../../catalogue/index.ts'
import { change, perform, say, select, useStudio } from '../../state/index.ts'
import { Button } from '../parts/index.ts'
import { freePlace } from '../place.ts'
import { PlantFacts } from './plant-facts.tsx'
import { Plate } from './plate.tsx'

/** The palette's colours that this plant is likely to be bought in come first: those of its role, then the rest. */
const coloursFor = (plantId: string, slots: { colour: string; part: Role }[]) => {
  const plant = findPlant(plantId)
  if (!plant) return []
  const fit = [...slots].sort((a, b) => Number(b.part === plant.role) - Number(a.part === plant.role))
  const seen = new Set<string>()
  return [...fit.map((s) => ({ name: s.part, hex: s.colour })), ...plant.colours].filter((c) => {
    if (seen.has(c.hex)) return false
    seen.add(c.hex)
    return true
  })
}

/** Choose a plant and a colour; then touch a view, or put one in by the button. */
export const AddStem = ({ onDone }: { onDone: () => void }) => {
  const placing = useStudio((s) => s.placing)
  const document = useStudio((s) => s.document)
  const [text, setText] = useState('')
  const found = useMemo(() => (text.trim() ? searchPlants(text) : PLANTS), [text])
  const plant = placing ? findPlant(placing.plant) : undefined
  const colours = placing ? coloursFor(placing.plant, document.palette.slots) : []

  const take = (id: string) => {
    const first = coloursFor(id, document.palette.slots)[0]
    change({ placing: { plant: id, colour: first?.hex ?? '#b8b2a7' } })
    say(`${findPlant(id)?.name ?? id} in hand. Touch a view to place it, or press Put one in.`)
  }
  const putOne = () => {
    if (!placing || !plant) return
    const id = newStemId(document)
    const slot = document.palette.slots.findIndex((s) => s.colour === placing.colour)
    const stem: Stem = {
      id,
      plant: plant.id,
      role: plant.role,
      colour: slot >= 0 ? { slot } : placing.colour,
      openness: 0.8,
      bend: 0,
      piece: plant.manyHeaded && plant.habit === 'spray' ? 'lateral' : 'whole',
      ...freePlace(document, plant),
    }
    perform({ do: 'add-stems', stems: [stem] })
    select([id])
  }
  const classes = ['form', 'mass', 'line', 'filler', 'foliage'] as const

  return (
    <section className="add-stem" aria-label="Add a stem">
      <div className="head-line">
        <label className="choice search">
          find a plant
          <input
            type="search"
            value={text}
            onChange={(e) => setText(e.target.value)}
            placeholder="rose, grey leaf, line …"
          />
        </label>
        <Button
          onClick={() => {
            change({ placing: null })
            onDone()
          }}
        >
          Done adding
        </Button>
      </div>
      <div className="plant-list" role="radiogroup" aria-label="Plants">
        {classes
          .filter((c) => found.some((p) => p.formClass === c))
          .map((c) => (
            <fieldset key={c}>
              <legend className="plant-class">{c}</legend>
              {found
                .filter((p) => p.formClass === c)
                .map((p) => (
                  <label key={p.id} className="plant-option">
                    <input
                      type="radio"
                      name="plant-in-hand"
                      checked={placing?.plant === p.id}
                      onChange={() => take(p.id)}
                      onKeyDown={(e) => {
                        if (e.key !== 'Enter') return
                        e.preventDefault()
                        if (placing?.plant === p.id) putOne()
                        else take(p.id)
                      }}
                    />
                    {p.name} <i>{p.botanical}</i>
                  </label>
                ))}
            </fieldset>
          ))}
        {found.length === 0 ? <p className="quiet-line">No plant by that name. Try a colour or a class.</p> : null}
      </div>
      {placing && plant ? (
        <div className="in-hand">
          <Plate plant={placing.plant} colour={placing.colour} size={84} whole />
          <div>
            <div>
              In hand: <b>{plant.name}</b>, {plant.role}. Touch a view to place one.
            </div>
            <fieldset className="colour-options">
              <legend>colour</legend>
              {colours.map((c) => (
                <button
                  key={c.hex}
                  type="button"
                  className="swatch"
                  aria-pressed={placing.colour === c.hex}
                  aria-label={`${c.name} ${c.hex}`}
                  title={c.name}
                  style={{ background: c.hex }}
                  onClick={() => change({ placing: { plant: placing.plant, colour: c.hex } })}
                />
              ))}
            </fieldset>
            <Button kind="main" onClick={putOne}>
              Put one in
            </Button>
          </div>
        </div>
      ) : null}
      {plant ? <PlantFacts plant={plant} /> : null}
    </section>
  )
}
