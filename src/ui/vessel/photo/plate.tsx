import { useEffect, useId, useRef } from 'react'
import type { Point2, ProfilePoint, Vessel } from '../../../arrangement/index.ts'
import {
  dropHandle,
  type Frame,
  moveHandle,
  type Photo,
  placeIn,
  pointAt,
  vesselHalfWidth,
} from '../../../geometry/index.ts'
import { Handle, type HandleAt } from './handle.tsx'
import { useDrag } from './use-drag.ts'
import type { OutlineState } from './use-outline.ts'
import { MARKS, sideName } from './words.ts'

/** Heights at which the curve is drawn. */
const STEPS = 60
/** Axis and base line go on beyond what they measure, of the height and the half mouth. */
const BEYOND = 0.08

const path = (points: readonly Point2[]): string =>
  `M${points.map(([x, y]) => `${x.toFixed(1)} ${y.toFixed(1)}`).join('L')}`

/** The curve through the handles, as the vessel is drawn by it, on one side of the axis. */
const curveOf = (frame: Frame, profile: ProfilePoint[], side: 1 | -1): Point2[] => {
  const vessel = { width: frame.half * 2, profile } as Vessel
  return Array.from({ length: STEPS + 1 }, (_, i) =>
    pointAt(frame, i / STEPS, side * vesselHalfWidth(vessel, i / STEPS)),
  )
}

const Lines = ({ frame, state }: { frame: Frame; state: OutlineState }) => {
  const { marks, handles, outline } = state
  const wide = frame.half * (1 + BEYOND) * Math.max(1, ...handles.map((p) => p[1]))
  const seen = (ends: readonly number[], side: 1 | -1) =>
    path(ends.map((d, i) => pointAt(frame, outline!.heights[i]!, side * d)))
  const drawn: [string, string][] = [
    ['axis', path([pointAt(frame, -BEYOND, 0), pointAt(frame, 1 + BEYOND, 0)])],
    ['measure', path([pointAt(frame, 0, -wide), pointAt(frame, 0, wide)])],
    ['measure', path([marks.left, marks.right])],
    ...(outline
      ? ([
          ['seen', seen(outline.left, -1)],
          ['seen', seen(outline.right, 1)],
        ] as [string, string][])
      : []),
    ['outline', path(curveOf(frame, handles, 1))],
    ['outline', path(curveOf(frame, handles, -1))],
  ]
  return (
    <>
      {drawn.map(([kind, d], i) => (
        <g key={i} className={kind}>
          <path className="halo" d={d} />
          <path className="core" d={d} />
        </g>
      ))}
    </>
  )
}

/** The photo with its marks, the outline over it and a handle for each. */
export const Plate = ({ photo, state }: { photo: Photo; state: OutlineState }) => {
  const canvas = useRef<HTMLCanvasElement>(null)
  const how = useId()
  useEffect(() => {
    const data = new ImageData(new Uint8ClampedArray(photo.rgba), photo.width, photo.height)
    canvas.current?.getContext('2d')?.putImageData(data, 0, 0)
  }, [photo])
  const { marks, setMarks, frame, handles, setHandles } = state
  const onPhoto = ([x, y]: Point2): Point2 => [
    Math.min(photo.width, Math.max(0, x)),
    Math.min(photo.height, Math.max(0, y)),
  ]
  const all: HandleAt[] = MARKS.map((mark) => ({
    ...mark,
    at: marks[mark.key],
    onMove: (to) => setMarks({ ...marks, [mark.key]: onPhoto(to) }),
  }))
  if (frame)
    handles.slice(0, -1).forEach(([h, w], i) => {
      all.push({
        kind: 'side',
        key: `side-${i}`,
        name: sideName(i, handles),
        at: pointAt(frame, h, w * frame.half),
        onMove: (to) => {
          const { at, aside } = placeIn(frame, to)
          setHandles(moveHandle(handles, i, { at, half: aside / frame.half }))
        },
        ...(i > 0 && { onDrop: () => setHandles(dropHandle(handles, i)) }),
      })
    })
  const dragging = useDrag(photo, all)
  return (
    <section aria-label="The photo and its handles" className="plate-part">
      <div
        {...dragging}
        className="plate"
        style={{ aspectRatio: `${photo.width} / ${photo.height}`, ['--shape' as string]: photo.width / photo.height }}
      >
        <canvas
          ref={canvas}
          width={photo.width}
          height={photo.height}
          role="img"
          aria-label="Your photo, with the outline drawn over it"
        />
        <svg viewBox={`0 0 ${photo.width} ${photo.height}`} aria-hidden="true">
          {frame ? <Lines frame={frame} state={state} /> : null}
        </svg>
        {all.map((handle) => (
          <Handle key={handle.key} handle={handle} photo={photo} describedBy={how} />
        ))}
      </div>
      <p id={how} className="dim">
        Drag a handle, or move it with the arrow keys (Shift: ten pixels; Delete takes out one of the side). The same as
        numbers stands beside it.
      </p>
    </section>
  )
}
