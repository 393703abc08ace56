import { type Edit, newStemIds, type Stem } from '../../arrangement/index.ts'
import { findPlant } from '../../catalogue/index.ts'
import { type ResolvedStem, resolveArrangement } from '../../geometry/index.ts'
import { perform, select, useStudio } from '../../state/index.ts'
import { formatLength, toUnit } from '../../units/index.ts'
import { Button, NumberField } from '../parts/index.ts'
import { ColourChoice } from './colour-choice.tsx'
import type { ListView } from './derived.ts'
import { PlantChoice } from './plant-choice.tsx'
import { crossEdit, headEdit, LEAST_HEAD, lengthEdit, partEdit, shared, shiftEdit } from './stem-edits.ts'

type Axis = 0 | 1 | 2

/** Fields for what is selected: each drag of the views has its number here. Several stems move together. */
export const StemFields = ({ view }: { view: ListView }) => {
  const selection = useStudio((s) => s.selection)
  const units = useStudio((s) => s.units)
  const turn = useStudio((s) => s.turn)
  const document = useStudio((s) => s.document)
  const stems = view.resolved.stems.filter((s) => selection.includes(s.id))
  const first = stems[0]
  if (!first) return null
  // The numbers may lag a frame behind what is drawn: a step goes from what is there, so that two quick ones are two.
  const now = (): readonly ResolvedStem[] => {
    const { document, selection } = useStudio.getState()
    const resolved = view.resolved.document === document ? view.resolved : resolveArrangement(document)
    return resolved.stems.filter((s) => selection.includes(s.id))
  }
  const ids = stems.map((s) => s.id)
  const one = stems.length === 1
  const step = units === 'in' ? 0.25 : units === 'cm' ? 0.5 : 5
  const digits = units === 'in' ? 2 : units === 'cm' ? 1 : 0
  const limit = toUnit(5000, units)
  const round = (mm: number) => Number(toUnit(mm, units).toFixed(digits))

  const tip = (axis: Axis) => round(shared(stems, (s) => s.stem.tip[axis]))
  const shiftTo = (axis: Axis) => (value: number, by?: number) => perform(shiftEdit(now(), axis, { value, by }, units))
  const mouth = (axis: 0 | 1) => round(shared(stems, (s) => s.stem.mouth[axis]))
  const crossTo = (axis: 0 | 1) => (value: number, by?: number) => perform(crossEdit(now(), axis, { value, by }, units))
  const set = (part: Extract<Edit, { do: 'set-stems' }>['set']) => perform({ do: 'set-stems', ids, set: part })
  const plants = new Set(stems.map((s) => s.plant.id))
  const copyThem = () => {
    const newIds = newStemIds(document, ids.length)
    perform({ do: 'duplicate-stems', ids, newIds, by: [20, 0, 0] })
    select(newIds)
  }

  return (
    <div className="stem-fields">
      <div className="head-line">
        <h3>{one ? `Stem ${first.index + 1} ${first.plant.name.toLowerCase()}` : `${stems.length} stems`}</h3>
        <span className="dim">
          {one ? `cut ${formatLength(first.curve.cut_mm, units)}, ${first.role}` : 'changed together'}
        </span>
      </div>
      <div className="field-grid">
        <NumberField
          label="across"
          unit={units}
          value={tip(0)}
          onChange={shiftTo(0)}
          min={-limit}
          max={limit}
          step={step}
          digits={digits}
        />
        <NumberField
          label="away"
          unit={units}
          value={tip(1)}
          onChange={shiftTo(1)}
          min={-limit}
          max={limit}
          step={step}
          digits={digits}
        />
        <NumberField
          label="up"
          unit={units}
          value={tip(2)}
          onChange={shiftTo(2)}
          min={-limit}
          max={limit}
          step={step}
          digits={digits}
        />
        <NumberField
          label="length"
          unit={units}
          spoken={`length above the rim, ${units}`}
          value={round(shared(stems, (s) => s.curve.above_mm))}
          min={round(10)}
          max={limit}
          step={step}
          digits={digits}
          onChange={(value, by) => perform(lengthEdit(now(), { value, by }, units))}
        />
        <NumberField
          label={`enters, across`}
          spoken={`enters the mouth across, ${units}`}
          value={mouth(0)}
          onChange={crossTo(0)}
          min={-limit}
          max={limit}
          step={step}
          digits={digits}
        />
        <NumberField
          label={`enters, away`}
          spoken={`enters the mouth away, ${units}`}
          value={mouth(1)}
          onChange={crossTo(1)}
          min={-limit}
          max={limit}
          step={step}
          digits={digits}
        />
        <NumberField
          label="bow"
          unit="%"
          value={Math.round(shared(stems, (s) => s.stem.bend) * 100)}
          onChange={(value, by) => perform(partEdit(now(), 'bend', { value, by }))}
          min={-100}
          max={100}
          step={2}
        />
        <NumberField
          label="open"
          unit="%"
          value={Math.round(shared(stems, (s) => s.openness) * 100)}
          onChange={(value, by) => perform(partEdit(now(), 'openness', { value, by }))}
          min={0}
          max={100}
          step={5}
        />
        <NumberField
          label="head"
          unit={units}
          value={round(shared(stems, (s) => s.head_mm))}
          onChange={(value, by) => perform(headEdit(now(), { value, by }, units))}
          min={round(LEAST_HEAD)}
          max={round(600)}
          step={step}
          digits={digits}
        />
      </div>
      <div className="field-line">
        <PlantChoice
          label="plant"
          value={plants.size === 1 ? first.plant.id : ''}
          onChoose={(plant) => set({ plant })}
        />
        <ColourChoice
          label="colour"
          value={first.colour}
          plant={first.plant.id}
          onChoose={(colour) => set({ colour })}
        />
        <label className="choice">
          role
          <select value={first.role} onChange={(e) => set({ role: e.target.value as Stem['role'] })}>
            {['focal', 'line', 'mass', 'form', 'filler', 'greens'].map((r) => (
              <option key={r}>{r}</option>
            ))}
          </select>
        </label>
        {findPlant(first.plant.id)?.manyHeaded ? (
          <label className="choice">
            cut as
            <select value={first.stem.piece} onChange={(e) => set({ piece: e.target.value as Stem['piece'] })}>
              <option value="whole">a whole stem</option>
              <option value="lateral">a lateral</option>
            </select>
          </label>
        ) : null}
      </div>
      <div className="field-line">
        <Button onClick={copyThem}>Double it</Button>
        <Button onClick={() => perform({ do: 'mirror-stems', ids, turn })}>Mirror</Button>
        <Button onClick={() => perform({ do: 'remove-stems', ids })}>Take out</Button>
        <Button onClick={() => select([])}>Let go</Button>
      </div>
    </div>
  )
}
