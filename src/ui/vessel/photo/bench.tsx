import { useMemo, useState } from 'react'
import { applyEdit, type Edit, LIMITS, VESSEL_PLANS, type VesselPlan } from '../../../arrangement/index.ts'
import { type Known, lopsided, measuredVessel } from '../../../geometry/index.ts'
import { type PhotoBench, perform, say, useStudio } from '../../../state/index.ts'
import { formatLength, fromUnit, toUnit } from '../../../units/index.ts'
import { Button, NumberField, SelectField } from '../../parts/index.ts'
import { VesselDrawing } from '../vessel-drawing.tsx'
import { MarkNumbers, SideNumbers } from './numbers.tsx'
import { Plate } from './plate.tsx'
import { useOutline } from './use-outline.ts'
import { traceWords } from './words.ts'

const KNOWN_OPTIONS = [
  { value: 'width', words: 'across the mouth, outside' },
  { value: 'height', words: 'height, table to rim' },
] as const satisfies readonly { value: Known['of']; words: string }[]

const figures = (n: number): string => n.toLocaleString('en')

/** The least and the greatest that a measure may be typed as, mm: those of the sizes set by hand. */
const TYPED = { least: 10, most: 2000 } as const

/** One photo on the bench: its marks, its outline, the measure that is known, and the vessel that comes of it. */
export const Bench = ({ bench, onUsed }: { bench: PhotoBench; onUsed: () => void }) => {
  const { photo, full } = bench.taken
  const document = useStudio((s) => s.document)
  const units = useStudio((s) => s.units)
  const before = document.vessel
  const state = useOutline(bench)
  const [known, setKnown] = useState<Known>({ of: 'width', mm: before.width })
  const [plan, setPlan] = useState<VesselPlan>(before.plan)
  const [depth, setDepth] = useState(before.depth)
  const { frame, handles, outline, byHand, looked } = state

  const set = useMemo(
    () => (frame ? measuredVessel(frame, handles, known, { plan, depth }) : null),
    [frame, handles, known, plan, depth],
  )
  const edit: Edit | null = set && { do: 'set-vessel', set }
  const after = edit ? applyEdit(document, edit).vessel : null
  const tooLarge = set !== null && Math.max(set.width, set.height) > LIMITS.mm
  const fits = after !== null && set !== null && after.width === set.width && after.height === set.height

  const digits = units === 'in' ? 2 : units === 'cm' ? 1 : 0
  const step = units === 'in' ? 0.25 : units === 'cm' ? 0.5 : 5
  const shown = (mm: number) => Number(toUnit(mm, units).toFixed(digits))
  const length = (label: string, mm: number, onChange: (mm: number) => void) => (
    <NumberField
      label={`${label}, ${units}`}
      value={shown(mm)}
      min={shown(TYPED.least)}
      max={shown(TYPED.most)}
      step={step}
      digits={digits}
      onChange={(to) => onChange(fromUnit(to, units))}
    />
  )
  const use = (): void => {
    if (!edit || !after || !fits) return
    perform(edit)
    say(
      `The vessel of the photo is on the sheet: ${formatLength(after.width, units)} across, ${formatLength(after.height, units)} high.`,
    )
    onUsed()
  }
  const widest = after ? Math.max(...(after.profile ?? [[1, 1]]).map((p) => p[1])) * after.width : 0
  return (
    <div className="bench">
      <Plate photo={photo} state={state} />
      <div className="bench-numbers">
        <h3>What is known of it</h3>
        <div className="field-line">
          <SelectField<Known['of']>
            label="measured with a rule"
            value={known.of}
            options={KNOWN_OPTIONS}
            onChange={(of) => setKnown({ of, mm: Math.round((set?.[of] ?? known.mm) * 10) / 10 })}
          />
          {length('it is', known.mm, (mm) => setKnown({ ...known, mm }))}
          <SelectField<VesselPlan>
            label="plan"
            value={plan}
            options={VESSEL_PLANS.map((value) => ({ value, words: value }))}
            onChange={setPlan}
          />
          {plan === 'round' ? null : length('depth', depth, setDepth)}
        </div>
        <div className="bench-result">
          {after && fits ? (
            <>
              <VesselDrawing vessel={after} size={104} span={Math.max(after.height, widest) * 1.15} />
              <p>
                <b>
                  {formatLength(after.width, units)} across the mouth, {formatLength(after.height, units)} high
                </b>
                {after.profile === undefined
                  ? ', with straight sides. '
                  : widest > after.width
                    ? `, ${formatLength(widest, units)} at its widest. `
                    : '. '}
                {after.plan === 'round'
                  ? 'Round: as deep as it is wide.'
                  : `Its depth of ${formatLength(after.depth, units)} is not seen on a photo; it is yours to say.`}{' '}
                {after.wall === before.wall
                  ? `Wall (${formatLength(after.wall, units)}) and material stay.`
                  : `Its wall of ${formatLength(before.wall, units)} does not fit, and becomes ${after.wall.toFixed(1)} mm.`}
              </p>
            </>
          ) : (
            <p role="alert">
              {tooLarge
                ? `That would be larger than ${formatLength(LIMITS.mm, units)}: look at the marks and the measure.`
                : 'The marks lie too near to one another, or left and right are swapped: put them on the rim and the base.'}
            </p>
          )}
        </div>
        {full.width > photo.width ? (
          <p className="dim">
            Of its {figures(full.width)} × {figures(full.height)} pixels it is looked at in {photo.width} ×{' '}
            {photo.height}: that is enough to trace it.
          </p>
        ) : null}
        <p className="dim">
          Perspective and lens are not corrected. From nearer than 2 m, or from above, widths and heights come out
          wrong.
        </p>
        <h3>Rim and base</h3>
        <p className="dim">
          {state.proposed
            ? 'Proposed: look whether they lie on the outer edge of the rim and on the table.'
            : 'Nothing stands off clearly from the wall: put them on the outer edge of the rim and on the table.'}{' '}
          The axis runs from the middle of the base to the middle of the mouth
          {frame ? `; the base line is tilted by ${Math.abs(frame.tilt_deg).toFixed(1)}°, which does no harm` : ''}.
        </p>
        <MarkNumbers photo={photo} state={state} />
        <h3>Its side</h3>
        <p className="dim" role="status">
          {byHand
            ? 'Set by hand; one side is drawn as the mirror of the other.'
            : outline && frame
              ? traceWords(outline, lopsided(outline, frame))
              : looked
                ? 'Not traced: there is too little wall beside the vessel. Set its handles by hand.'
                : state.waiting
                  ? 'It is traced as soon as the marks are set.'
                  : 'Tracing its edges.'}
        </p>
        {byHand ? <Button onClick={state.traceAgain}>Trace it again</Button> : null}
        {frame ? <SideNumbers state={state} frame={frame} mouth={after?.width ?? 0} units={units} /> : null}
        <p className="bench-use">
          <Button kind="main" off={!fits || !looked} onClick={use}>
            Put this vessel on the sheet
          </Button>
        </p>
      </div>
    </div>
  )
}
