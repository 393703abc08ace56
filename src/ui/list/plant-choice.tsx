import { PLANTS } from '../../catalogue/index.ts'

interface Props {
  label: string
  /** Plant id; '' where several differ. */
  value: string
  onChoose: (plant: string) => void
}

const CLASSES = ['form', 'mass', 'line', 'filler', 'foliage'] as const

/** All plants, grouped by their form class. */
export const PlantChoice = ({ label, value, onChoose }: Props) => (
  <label className="choice">
    {label}
    <select value={value} onChange={(e) => onChoose(e.target.value)}>
      {value === '' ? <option value="">several</option> : null}
      {CLASSES.map((c) => (
        <optgroup key={c} label={c}>
          {PLANTS.filter((p) => p.formClass === c).map((p) => (
            <option key={p.id} value={p.id}>
              {p.name}
            </option>
          ))}
        </optgroup>
      ))}
    </select>
  </label>
)
