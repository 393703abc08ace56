import { change, perform, select, useStudio } from '../../state/index.ts'
import type { StemRow } from '../../stem-list/index.ts'
import { formatLength } from '../../units/index.ts'
import { Button } from '../parts/index.ts'
import type { ListView } from './derived.ts'

/** Degrees between the stem's line above the mouth and the vertical. */
const lean = (mouth: [number, number], tip: [number, number, number]): number =>
  Math.round((Math.atan2(Math.hypot(tip[0] - mouth[0], tip[1] - mouth[1]), tip[2]) * 180) / Math.PI)

/** Every stem of a row, to select one or several, to focus one, to take one out. */
export const StemMembers = ({ view, row }: { view: ListView; row: StemRow }) => {
  const selection = useStudio((s) => s.selection)
  const units = useStudio((s) => s.units)
  const members = view.resolved.stems.filter((s) => row.ids.includes(s.id))
  return (
    <ul className="stem-members">
      {members.map((s) => {
        const words = `${s.index + 1}: cut ${formatLength(s.curve.cut_mm, units)}, leans ${lean(s.stem.mouth, s.stem.tip)}°${s.stem.piece === 'lateral' ? ', a lateral' : ''}`
        return (
          <li key={s.id} onPointerEnter={() => change({ lit: [s.id] })} onPointerLeave={() => change({ lit: [] })}>
            <label>
              <input
                type="checkbox"
                checked={selection.includes(s.id)}
                onChange={() => select([s.id], 'toggle')}
                onFocus={() => change({ focused: s.id })}
                onBlur={() => change({ focused: '' })}
                onKeyDown={(e) => {
                  if (e.key === 'Delete') perform({ do: 'remove-stems', ids: [s.id] })
                }}
              />
              {words}
            </label>
            <Button kind="word" onClick={() => select([s.id])}>
              only this
            </Button>
          </li>
        )
      })}
    </ul>
  )
}
