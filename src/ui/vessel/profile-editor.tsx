import type { ProfilePoint, Vessel } from '../../arrangement/index.ts'
import { Button, NumberField } from '../parts/index.ts'
import { VesselDrawing } from './vessel-drawing.tsx'

const CYLINDER: ProfilePoint[] = [
  [0, 1],
  [1, 1],
]

/** The outline from the table to the rim as rows of numbers: height and half-width, in parts of the whole. */
export const ProfileEditor = ({
  vessel,
  open = false,
  onChange,
}: {
  vessel: Vessel
  /** Is it open from the start? */
  open?: boolean
  onChange: (profile: ProfilePoint[] | null) => void
}) => {
  const profile = vessel.profile ?? CYLINDER
  const put = (i: number, part: Partial<{ h: number; w: number }>) =>
    onChange(profile.map((p, k) => (k === i ? [part.h ?? p[0], part.w ?? p[1]] : p)))
  const between = (i: number, way: -1 | 1) => Math.round((profile[i + way]?.[0] ?? (way < 0 ? 0 : 1)) * 100) - way
  const addAfter = (i: number) => {
    const [a, b] = [profile[i], profile[i + 1]]
    if (!a || !b) return
    const mid: ProfilePoint = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2]
    onChange([...profile.slice(0, i + 1), mid, ...profile.slice(i + 1)])
  }
  return (
    <details className="profile" open={open}>
      <summary>Its outline, point by point</summary>
      <div className="profile-grid">
        <VesselDrawing vessel={vessel} size={180} span={Math.max(vessel.height, vessel.width) * 1.15} />
        <ol>
          {profile.map((p, i) => (
            <li key={i}>
              <NumberField
                label="height"
                unit="%"
                spoken={`point ${i + 1}: height in % of the whole`}
                value={Math.round(p[0] * 100)}
                min={i === 0 ? 0 : between(i, -1)}
                max={i === profile.length - 1 ? 100 : between(i, 1)}
                onChange={(v) => put(i, { h: v / 100 })}
              />
              <NumberField
                label="width"
                unit="%"
                spoken={`point ${i + 1}: width in % of the mouth's`}
                value={Math.round(p[1] * 100)}
                min={5}
                max={400}
                onChange={(v) => put(i, { w: v / 100 })}
              />
              <Button
                kind="word"
                off={i === profile.length - 1}
                onClick={() => addAfter(i)}
                aria-label={`Put a point above point ${i + 1}`}
              >
                + point
              </Button>
              <Button
                kind="word"
                off={profile.length <= 2 || i === 0 || i === profile.length - 1}
                onClick={() => onChange(profile.filter((_, k) => k !== i))}
                aria-label={`Take out point ${i + 1}`}
              >
                take out
              </Button>
            </li>
          ))}
        </ol>
      </div>
      <Button onClick={() => onChange(null)}>Straight sides</Button>
    </details>
  )
}
