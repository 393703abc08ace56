import { type KeyboardEvent, type RefObject, useEffect, useId, useLayoutEffect, useMemo, useRef, useState } from 'react'
import { findPlant } from '../../catalogue/index.ts'
import type { Mark } from '../../readings/index.ts'
import { change, say, turnTo, useStudio } from '../../state/index.ts'
import { painter } from '../painter.ts'
import { Button } from '../parts/index.ts'
import { listenToPointer } from './gestures.ts'
import { createKeys, type Keys } from './keys.ts'
import { type Layers, layInto } from './layers.ts'
import { type Layout, splitOf, type ViewName } from './layout.ts'
import { otherTurn } from './reading-marks.ts'
import { createScene, type SceneControl } from './scene.ts'
import './views.css'
import { summaryOf } from './words.ts'

/** More device px than this to a CSS px are not seen and cost time. Ours. */
const MOST_RATIO = 2
const ratioNow = (): number => Math.min(MOST_RATIO, Math.max(1, window.devicePixelRatio || 1))
const NO_MARKS: readonly Mark[] = []

const KEYS_OF_VIEWS =
  'Arrows move the selected heads by 5 mm, with Shift by 1 mm, with Alt in depth. Square brackets go through the stems. Delete takes out, D copies, M mirrors. Comma and full stop turn. Every stem is in the list as well.'

/** The two linked views: elevation above, plan below, at one scale. Fills its parent. */
export const Views = () => {
  const host = useRef<HTMLDivElement>(null)
  const paper = useRef<HTMLDivElement>(null)
  const layers = useRef<Layers>(null)
  const regions = useRef<Record<ViewName, HTMLElement | null>>({ elevation: null, plan: null })
  const [control, setControl] = useState<SceneControl | null>(null)
  const [layout, setLayout] = useState<Layout | null>(null)
  const [ratio, setRatio] = useState(ratioNow)

  useEffect(() => {
    const made = createScene(painter(), {
      still: () => {
        setLayout(made.scene.layout)
        layers.current?.still()
      },
      live: () => layers.current?.live(),
      failed: (why) => say(`The drawing stopped: ${why}`),
    })
    setControl(made)
    document.fonts?.ready.then(() => {
      layers.current?.still()
      layers.current?.live()
    })
    return () => {
      made.stop()
      setControl(null)
    }
  }, [])

  useEffect(() => {
    const element = host.current
    if (!element || !control) return
    const measure = (): void => {
      const now = ratioNow()
      setRatio(now)
      control.resize(Math.round(element.clientWidth), Math.round(element.clientHeight), now)
      setLayout(control.scene.layout)
    }
    measure()
    const observer = new ResizeObserver(measure)
    observer.observe(element)
    window.addEventListener('resize', measure)
    const stopPointer = listenToPointer(element, control, (view) =>
      regions.current[view]?.focus({ preventScroll: true }),
    )
    return () => {
      observer.disconnect()
      window.removeEventListener('resize', measure)
      stopPointer()
    }
  }, [control])

  useLayoutEffect(() => {
    if (!control || !paper.current) return
    const { draw, scene } = control
    // For tests: a canvas can't be asked what is on it, nor how often it was drawn.
    const tell = (name: string, value: string): void => {
      if (host.current && host.current.dataset[name] !== value) host.current.dataset[name] = value
    }
    const made = layInto(paper.current, {
      ...draw,
      still: (pen) => {
        draw.still(pen)
        tell('stillDraws', String(scene.counts.stillDraws))
        tell('stills', scene.counts.stills)
      },
      live: (pen) => {
        draw.live(pen)
        tell('marks', scene.counts.marks)
      },
      hand: (pen, patch) => {
        draw.hand(pen, patch)
        tell('spriteMisses', String(scene.counts.spriteMisses))
      },
    })
    layers.current = made
    return () => {
      layers.current = null
      made.stop()
    }
  }, [control])
  const [width, height] = [layout?.width ?? 1, layout?.height ?? 1]
  // biome-ignore lint/correctness/useExhaustiveDependencies: layers that were made anew have no size yet
  useLayoutEffect(() => layers.current?.size(width, height, ratio), [control, width, height, ratio])

  const keys = useMemo(() => control && createKeys(control), [control])

  return (
    <div
      ref={host}
      className="views"
      data-testid="views"
      data-scale={layout?.scale}
      data-axis-x={layout?.axisX}
      data-rim-y={layout?.rimY}
      data-plan-y={layout?.planY}
      data-compact={layout?.compact}
    >
      <div ref={paper} className="drawn" aria-hidden="true" />
      {layout ? (
        <>
          {keys ? (
            <>
              <Region view="elevation" layout={layout} keys={keys} regions={regions} />
              <Region view="plan" layout={layout} keys={keys} regions={regions} />
            </>
          ) : null}
          <Turning layout={layout} />
          <FirstWord layout={layout} />
          <InHand />
        </>
      ) : null}
    </div>
  )
}

interface RegionProps {
  view: ViewName
  layout: Layout
  keys: Keys
  regions: RefObject<Record<ViewName, HTMLElement | null>>
}

const TITLE = { elevation: 'Elevation', plan: 'Plan' } as const

/** One view as the keyboard and the ear have it: a name, what is seen, the keys. */
const Region = ({ view, layout, keys, regions }: RegionProps) => {
  const turn = useStudio((s) => Math.round(s.turn))
  const document = useStudio((s) => s.document)
  const units = useStudio((s) => s.units)
  const marks = useStudio((s) => s.readings.find((r) => r.id === (s.markedReading ?? s.openReading))?.marks ?? NO_MARKS)
  const exact = useStudio((s) => s.turn)
  const id = useId()
  const split = splitOf(layout)
  const place = view === 'elevation' ? { top: 0, height: split } : { top: split, bottom: 0 }
  const seen = view === 'elevation' ? 'seen along A, right half cut open' : `seen from above, turned ${turn}°`
  const other = view === 'elevation' ? otherTurn(marks, exact) : null
  const onKeyDown = (e: KeyboardEvent): void => {
    if (e.target !== e.currentTarget) return
    const pressed = { key: e.key, shift: e.shiftKey, alt: e.altKey, command: e.ctrlKey || e.metaKey }
    if (!keys.press(view, pressed)) return
    e.preventDefault()
    e.stopPropagation()
  }
  return (
    // biome-ignore lint/a11y/useSemanticElements: a fieldset would be read as a form
    <div
      ref={(element) => {
        regions.current[view] = element
      }}
      role="group"
      className="region"
      data-testid={view}
      style={place}
      // biome-ignore lint/a11y/noNoninteractiveTabindex: keys work on the view; every stem is in the list as well
      tabIndex={0}
      aria-labelledby={`${id}name`}
      aria-describedby={`${id}seen ${id}what ${id}keys`}
      onKeyDown={onKeyDown}
      onKeyUp={keys.release}
      onFocus={(e) => e.target === e.currentTarget && e.currentTarget.matches(':focus-visible') && keys.enter(view)}
      onBlur={() => {
        keys.release()
        keys.leave()
      }}
    >
      <h2 id={`${id}name`}>{TITLE[view]}</h2>
      <p className="seen" id={`${id}seen`}>
        {seen}
      </p>
      <p className="unseen" id={`${id}what`}>
        {summaryOf(document, turn, units)}
      </p>
      <p className="unseen" id={`${id}keys`}>
        {KEYS_OF_VIEWS}
      </p>
      {other === null ? null : (
        <Button kind="word" onClick={() => turnTo(other)}>
          seen from {Math.round(other)}°
        </Button>
      )}
    </div>
  )
}

/** The ring's own place, and turning without dragging it. */
const Turning = ({ layout }: { layout: Layout }) => {
  const by = (degrees: number): void => {
    turnTo(useStudio.getState().turn + degrees)
    say(`Turned to ${Math.round(useStudio.getState().turn)}°.`)
  }
  const r = layout.ring_mm * layout.scale
  return (
    <>
      <div
        className="ring"
        data-testid="ring"
        style={{ left: layout.axisX - r, top: layout.planY - r, width: 2 * r, height: 2 * r }}
      />
      {/* biome-ignore lint/a11y/useSemanticElements: a fieldset would be read as a form */}
      <div className="turning" role="group" aria-label="Turn both views">
        <Button onClick={() => by(-15)} aria-label="− 15°: turn clockwise">
          − 15°
        </Button>
        <Button onClick={() => by(15)} aria-label="+ 15°: turn anticlockwise">
          + 15°
        </Button>
      </div>
    </>
  )
}

const FirstWord = ({ layout }: { layout: Layout }) => {
  const empty = useStudio((s) => (s.draft ?? s.document).stems.length === 0)
  const placing = useStudio((s) => s.placing !== null)
  if (!empty || placing) return null
  return (
    <p className="first-word advice" style={{ top: layout.rimY - layout.top_mm * layout.scale * 0.55 }}>
      Nothing stands in it yet. Add a stem, then touch either view where its head should be.
    </p>
  )
}

/** What is in the hand, and how to put it down. */
const InHand = () => {
  const placing = useStudio((s) => s.placing)
  if (!placing) return null
  return (
    <p className="in-hand-note">
      in hand: {findPlant(placing.plant)?.name.toLowerCase() ?? placing.plant}
      <Button onClick={() => change({ placing: null })}>Done</Button>
    </p>
  )
}
