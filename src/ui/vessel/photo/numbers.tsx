import { LIMITS } from '../../../arrangement/index.ts'
import {
  addHandle,
  dropHandle,
  type Frame,
  LEAST_GAP,
  LEAST_HALF,
  moveHandle,
  type Photo,
} from '../../../geometry/index.ts'
import { formatLength, type Units } from '../../../units/index.ts'
import { Button, NumberField } from '../../parts/index.ts'
import type { OutlineState } from './use-outline.ts'
import { MARKS, sideName } from './words.ts'

const tenth = (x: number): number => Math.round(x * 10) / 10

/** The marks as numbers: pixels of the photo from its upper left corner. */
export const MarkNumbers = ({ photo, state: { marks, setMarks } }: { photo: Photo; state: OutlineState }) => (
  <ul className="mark-numbers">
    {MARKS.map(({ key, name }) => {
      const [x, y] = marks[key]
      return (
        <li key={key}>
          <span className="bench-name">{name}</span>
          <NumberField
            label="across"
            unit="px"
            spoken={name}
            value={tenth(x)}
            min={0}
            max={photo.width}
            digits={1}
            onChange={(to) => setMarks({ ...marks, [key]: [to, y] })}
          />
          <NumberField
            label="down"
            unit="px"
            spoken={name}
            value={tenth(y)}
            min={0}
            max={photo.height}
            digits={1}
            onChange={(to) => setMarks({ ...marks, [key]: [x, to] })}
          />
        </li>
      )
    })}
  </ul>
)

interface SideProps {
  state: OutlineState
  frame: Frame
  /** Width of the mouth, mm. */
  mouth: number
  units: Units
}

/** The handles of the side as numbers, from the rim down as one sees them. */
export const SideNumbers = ({ state: { handles, setHandles }, mouth, units }: SideProps) => (
  <ol className="side-numbers" reversed>
    {handles
      .map(([h, w], i) => {
        const [rim, base] = [i === handles.length - 1, i === 0]
        const name = rim ? 'rim' : sideName(i, handles)
        const [below, above] = [handles[i - 1]?.[0] ?? 0, handles[i + 1]?.[0] ?? 1]
        return (
          <li key={i}>
            {rim || base ? (
              <span className="bench-name">{rim ? 'rim' : 'base'}</span>
            ) : (
              <NumberField
                label="height"
                unit="%"
                spoken={name}
                value={tenth(h * 100)}
                min={tenth((below + LEAST_GAP) * 100)}
                max={tenth((above - LEAST_GAP) * 100)}
                digits={1}
                onChange={(to) => setHandles(moveHandle(handles, i, { at: to / 100 }))}
              />
            )}
            {rim ? (
              <span className="bench-name">100 %, marked</span>
            ) : (
              <NumberField
                label="width"
                unit="%"
                spoken={name}
                value={tenth(w * 100)}
                min={LEAST_HALF * 100}
                max={LIMITS.halfWidth * 100}
                digits={1}
                onChange={(to) => setHandles(moveHandle(handles, i, { half: to / 100 }))}
              />
            )}
            <span className="bench-size">{formatLength(w * mouth, units)}</span>
            <span className="bench-acts">
              {rim ? null : (
                <Button
                  kind="word"
                  aria-label={`+ handle above: ${name}`}
                  onClick={() => setHandles(addHandle(handles, i))}
                >
                  + handle
                </Button>
              )}
              {rim || base ? null : (
                <Button kind="word" aria-label={`take out ${name}`} onClick={() => setHandles(dropHandle(handles, i))}>
                  take out
                </Button>
              )}
            </span>
          </li>
        )
      })
      .reverse()}
  </ol>
)
