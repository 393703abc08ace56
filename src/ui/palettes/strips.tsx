import type { Light } from '../../arrangement/index.ts'
import { asSeenBy, underLight } from '../../colour/index.ts'
import type { Area } from './areas.ts'
import { percent } from './words.ts'

/** Ways of seeing the strips, in their order; by daylight the second would be the first again. */
export const STRIPS = ['day', 'light', 'deutan'] as const
export type StripWay = (typeof STRIPS)[number]
export const stripsFor = (light: Light): StripWay[] => STRIPS.filter((way) => way !== 'light' || light !== 'daylight')

/** Red–green blindness of the commonest kind, in the light of the room. */
const seenAs = (hex: string, way: StripWay, light: Light): string => {
  if (way === 'day') return hex
  const lit = underLight(hex, light)
  return way === 'light' ? lit : asSeenBy(lit, 'deutan')
}

interface Props {
  areas: readonly Area[]
  way: StripWay
  light: Light
  label: string
  nameOf: (area: Area) => string
}

/** Colours side by side, each as wide as its share of what is seen. */
export const Strip = ({ areas, way, light, label, nameOf }: Props) => (
  <div
    className="area-strip"
    role="img"
    aria-label={`By area seen, ${label}: ${areas.map((a) => `${nameOf(a)} ${percent(a.share)}`).join(', ')}`}
  >
    {areas.map((a, i) => (
      <span
        key={i}
        className={a.leaf && !areas[i - 1]?.leaf ? 'first-leaf' : undefined}
        style={{ background: seenAs(a.hex, way, light), flexGrow: a.share }}
      />
    ))}
  </div>
)
