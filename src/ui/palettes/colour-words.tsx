import type { Light } from '../../arrangement/index.ts'
import { underLight } from '../../colour/index.ts'
import type { NamedSlot } from '../../state/index.ts'
import type { Area } from './areas.ts'
import { BY_LIGHT, percent } from './words.ts'

interface Props {
  slots: readonly NamedSlot[]
  areas: readonly Area[]
  light: Light
  wordOf: (hex: string) => string
}

/** Less of it than this is not worth a line; ours. */
const LEAST_LEAF = 0.03

/** Two halves: by daylight, and in the light of the room. */
const Halves = ({ hex, light }: { hex: string; light: Light }) => (
  <span className="halves" aria-hidden="true">
    <span style={{ background: hex }} />
    <span style={{ background: underLight(hex, light) }} />
  </span>
)

interface LineProps {
  hex: string
  name: string | undefined
  part: string
  light: Light
  wordOf: (hex: string) => string
}

const Line = ({ hex, name, part, light, wordOf }: LineProps) => {
  const [byDay, inLight] = [wordOf(hex), wordOf(underLight(hex, light))]
  const day = name && name !== byDay ? byDay : ''
  const lit = light !== 'daylight' && inLight !== byDay ? `${BY_LIGHT[light]} ${inLight}` : ''
  return (
    <li>
      <Halves hex={hex} light={light} />
      <span className="colour-name">{name ?? byDay}</span> <span className="dim part">{part}</span>
      {day || lit ? <span className="dim words">{[day, lit].filter(Boolean).join('; ')}</span> : null}
    </li>
  )
}

/** Every colour in words by daylight and in the light of the room, the part that it plays and how much of it is seen. */
export const ColourWords = ({ slots, areas, light, wordOf }: Props) => {
  const shareOf = (i: number): number => areas.filter((a) => a.slot === i).reduce((sum, a) => sum + a.share, 0)
  const others = areas.filter((a) => a.slot < 0 && a.share >= LEAST_LEAF)
  return (
    <ul className="colour-words">
      {slots.map((s, i) => {
        const share = shareOf(i)
        const seen = areas.length === 0 ? '' : share > 0 ? `, ${percent(share)}` : ', not in it'
        return <Line key={i} hex={s.colour} name={s.name} part={`${s.part}${seen}`} light={light} wordOf={wordOf} />
      })}
      {others.map((a) => (
        <Line
          key={a.hex}
          hex={a.hex}
          name={undefined}
          part={`${a.leaf ? 'leaves of the flowers' : 'of its own'}, ${percent(a.share)}`}
          light={light}
          wordOf={wordOf}
        />
      ))}
    </ul>
  )
}
