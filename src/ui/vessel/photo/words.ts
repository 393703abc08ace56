import type { ProfilePoint } from '../../../arrangement/index.ts'
import type { Marks, Outline } from '../../../geometry/index.ts'
import type { HandleAt } from './handle.tsx'

export const MARKS: readonly { key: keyof Marks; kind: HandleAt['kind']; name: string }[] = [
  { key: 'left', kind: 'rim', name: 'rim, left' },
  { key: 'right', kind: 'rim', name: 'rim, right' },
  { key: 'foot', kind: 'base', name: 'base, middle' },
]

/** What a handle of the side is called: its place from the base up, its height. */
export const sideName = (i: number, handles: readonly ProfilePoint[]): string =>
  i === 0 ? 'side at the base' : `side ${i + 1}, at ${Math.round(handles[i]![0] * 100)} % of the height`

/** Both sides differ by more than this, of the mouth’s width: worth a look. Ours. */
const MUCH = 0.04
/** An edge is wanted at this share of the heights. Ours. */
const CLEAR = 0.9

const percent = (x: number, digits = 0): string => (x * 100).toFixed(digits)

/** What the trace found, and how far to trust it. */
export const traceWords = (outline: Outline, { by, at }: { by: number; at: number }): string => {
  const sides =
    by < 0.005
      ? 'Both sides are alike.'
      : `Left and right differ by ${percent(by, 1)} % of the mouth’s width at most, at ${percent(at)} % of the height; their mean is taken.`
  const much = by > MUCH ? ' That is much: is the axis in the middle, and is the vessel alike on both sides?' : ''
  const faint =
    outline.clear < CLEAR
      ? ` On ${percent(1 - outline.clear)} % of the way no edge stands off from the wall: look there, and set the handles by hand.`
      : ''
  return `Traced. ${sides}${much}${faint}`
}
