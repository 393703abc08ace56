import { useEffect, useMemo, useState } from 'react'
import type { ProfilePoint } from '../../../arrangement/index.ts'
import { frameOf, handlesOf, type Marks, marksByHand, type Outline } from '../../../geometry/index.ts'
import type { PhotoBench } from '../../../state/index.ts'

/** The outline is traced anew when the hand has rested for so long, ms. Ours. */
const REST = 250
/** Straight sides, until something is traced. */
const STRAIGHT: ProfilePoint[] = [
  [0, 1],
  [1, 1],
]

interface Traced {
  marks: Marks
  outline: Outline | null
}

/**
 * Marks and handles on a photo. Both are proposed; while the handles are as traced they follow the marks, once moved by
 * hand they stay until one asks for a new trace.
 */
export const useOutline = ({ taken, trace }: PhotoBench) => {
  const { photo, marks: found } = taken
  const [start] = useState<Marks>(() => found ?? marksByHand(photo))
  const [marks, setMarks] = useState(start)
  /** Nothing is known yet of where the vessel is. */
  const waiting = found === null && marks === start
  const [handles, setHandles] = useState<ProfilePoint[]>(STRAIGHT)
  const [traced, setTraced] = useState<Traced | null>(null)
  const [byHand, setByHand] = useState(false)
  const frame = useMemo(() => frameOf(marks), [marks])

  useEffect(() => {
    if (byHand || waiting || !frame) return
    let live = true
    const timer = setTimeout(async () => {
      const outline = await trace(frame)
      if (!live) return
      setTraced({ marks, outline })
      setHandles(outline ? handlesOf(outline, frame) : STRAIGHT)
    }, REST)
    return () => {
      live = false
      clearTimeout(timer)
    }
  }, [trace, marks, frame, byHand, waiting])

  return {
    proposed: found !== null,
    waiting,
    marks,
    setMarks,
    frame,
    handles,
    setHandles: (to: ProfilePoint[]) => {
      setHandles(to)
      setByHand(true)
    },
    byHand,
    traceAgain: () => setByHand(false),
    /** What was traced, as long as the marks are still there where they were. */
    outline: traced?.marks === marks ? traced.outline : null,
    looked: traced?.marks === marks || byHand,
  }
}
export type OutlineState = ReturnType<typeof useOutline>
