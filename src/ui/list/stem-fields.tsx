import { type Edit, newStemIds, type Stem } from '../../arrangement/index.ts'
import { findPlant } from '../../catalogue/index.ts'
import type { ResolvedStem } from '../../geometry/index.ts'
import { perform, select, useStudio } from '../../state/index.ts'
import { formatLength, fromUnit, toUnit } from '../../units/index.ts'
import { ColourChoice } from './colour-choice.tsx'
import type { ListView } from './derived.ts'
import { NumberBox } from './number-box.tsx'
import { PlantChoice } from './plant-choice.tsx'

/** The value all of them share, or their mean where they differ. */
const shared = (stems: ResolvedStem[], of: (s: ResolvedStem) => number): number =>
  stems.reduce((sum, s) => sum + of(s), 0) / Math.max(1, stems.length)

type Axis = 0 | 1 | 2

/** Fields for what is selected: each drag of the views has its number here. Several stems move together. */
export const StemFields = ({ view }: { view: ListView }) => {
  const selection = useStudio((s) => s.selection)
  const units = useStudio((s) => s.units)
  const turn = useStudio((s) => s.turn)
  const document = useStudio((s) => s.document)
  const stems = view.resolved.stems.filter((s) => selection.includes(s.id))
  const first = stems[0]
  if (!first) return <p className="quiet-line">Select a stem in a view or in the list to see its numbers here.</p>
  const ids = stems.map((s) => s.id)
  const one = stems.length === 1
  const step = units === 'in' ? 0.25 : units === 'cm' ? 0.5 : 5
  const digits = units === 'in' ? 2 : units === 'cm' ? 1 : 0
  const limit = toUnit(5000, units)
  const round = (mm: number) => Number(toUnit(mm, units).toFixed(digits))

  const tip = (axis: Axis) => round(shared(stems, (s) => s.stem.tip[axis]))
  const shiftTo = (axis: Axis) => (value: number) => {
    const by: [number, number, number] = [0, 0, 0]
    by[axis] = fromUnit(value, units) - shared(stems, (s) => s.stem.tip[axis])
    perform({ do: 'shift-stems', ids, by })
  }
  const mouth = (axis: 0 | 1) => round(shared(stems, (s) => s.stem.mouth[axis]))
  const crossTo = (axis: 0 | 1) => (value: number) => {
    const by = fromUnit(value, units) - shared(stems, (s) => s.stem.mouth[axis])
    const edits: Edit[] = stems.map((s) => {
      const at: [number, number] = [...s.stem.mouth]
      at[axis] += by
      return { do: 'set-stems', ids: [s.id], set: { mouth: at } }
    })
    perform({ do: 'many', label: 'crossing moved', edits })
  }
  const set = (part: Extract<Edit, { do: 'set-stems' }>['set']) => perform({ do: 'set-stems', ids, set: part })
  const length = shared(stems, (s) => s.curve.above_mm)
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
        <NumberBox
          label={`across, ${units}`}
          value={tip(0)}
          onChange={shiftTo(0)}
          least={-limit}
          most={limit}
          step={step}
          digits={digits}
        />
        <NumberBox
          label={`away, ${units}`}
          value={tip(1)}
          onChange={shiftTo(1)}
          least={-limit}
          most={limit}
          step={step}
          digits={digits}
        />
        <NumberBox
          label={`up, ${units}`}
          value={tip(2)}
          onChange={shiftTo(2)}
          least={-limit}
          most={limit}
          step={step}
          digits={digits}
        />
        <NumberBox
          label={`length, ${units}`}
          name={`length above the rim, ${units}`}
          value={round(length)}
          least={round(10)}
          most={limit}
          step={step}
          digits={digits}
          onChange={(v) =>
            perform({ do: 'lengthen-stems', ids, factor: Math.max(0.05, fromUnit(v, units) / Math.max(1, length)) })
          }
        />
        <NumberBox
          label={`enters, across`}
          name={`enters the mouth across, ${units}`}
          value={mouth(0)}
          onChange={crossTo(0)}
          step={step}
          digits={digits}
        />
        <NumberBox
          label={`enters, away`}
          name={`enters the mouth away, ${units}`}
          value={mouth(1)}
          onChange={crossTo(1)}
          step={step}
          digits={digits}
        />
        <NumberBox
          label="bow, %"
          value={Math.round(shared(stems, (s) => s.stem.bend) * 100)}
          onChange={(v) => set({ bend: v / 100 })}
          least={-100}
          most={100}
          step={2}
        />
        <NumberBox
          label="open, %"
          value={Math.round(shared(stems, (s) => s.openness) * 100)}
          onChange={(v) => set({ openness: v / 100 })}
          least={0}
          most={100}
          step={5}
        />
        <NumberBox
          label={`head, ${units}`}
          value={round(shared(stems, (s) => s.head_mm))}
          onChange={(v) => set({ head: fromUnit(v, units) })}
          least={round(3)}
          most={round(600)}
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
        <button type="button" className="act" onClick={copyThem}>
          Double it
        </button>
        <button type="button" className="act" onClick={() => perform({ do: 'mirror-stems', ids, turn })}>
          Mirror
        </button>
        <button type="button" className="act" onClick={() => perform({ do: 'remove-stems', ids })}>
          Take out
        </button>
        <button type="button" className="act" onClick={() => select([])}>
          Let go
        </button>
      </div>
    </div>
  )
}
