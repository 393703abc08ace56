import { lazy, Suspense, useState } from 'react'
import { MATERIALS, MECHANICS, VESSEL_PLANS, type Vessel } from '../../arrangement/index.ts'
import { MECHANICS_ROWS, VESSELS } from '../../catalogue/index.ts'
import { waterVolume_mm3 } from '../../geometry/index.ts'
import { change, perform, useStudio } from '../../state/index.ts'
import { formatLength, fromUnit, toUnit, type Units } from '../../units/index.ts'
import { Button, ColourField, Dialog, NumberField, SelectField } from '../parts/index.ts'
import { ProfileEditor } from './profile-editor.tsx'
import { VesselDrawing } from './vessel-drawing.tsx'
import './vessel.css'

const VesselFromPhoto = lazy(async () => ({ default: (await import('./photo/index.ts')).VesselFromPhoto }))

const vesselOf = (row: (typeof VESSELS)[number]): Vessel => {
  const { id: _id, name: _name, source: _source, ...vessel } = row
  return vessel
}

const UNIT_OPTIONS: readonly { value: Units; words: string }[] = [
  { value: 'cm', words: 'centimetres' },
  { value: 'in', words: 'inches' },
  { value: 'mm', words: 'millimetres' },
]

/** Choose a vessel of real size, or set every measure by hand. Everything shown is to one scale. */
export const VesselDialog = ({ onClose }: { onClose: () => void }) => {
  const vessel = useStudio((s) => s.document.vessel)
  const units = useStudio((s) => s.units)
  const [byPhoto, setByPhoto] = useState<'no' | 'now' | 'done'>('no')

  const span = Math.max(...VESSELS.map((v) => Math.max(v.height, v.width, v.depth))) * 1.08
  const digits = units === 'in' ? 2 : units === 'cm' ? 1 : 0
  const step = units === 'in' ? 0.25 : units === 'cm' ? 0.5 : 5
  const shown = (mm: number) => Number(toUnit(mm, units).toFixed(digits))
  const set = (part: Extract<Parameters<typeof perform>[0], { do: 'set-vessel' }>['set']) =>
    perform({ do: 'set-vessel', set: part })
  const size = (key: 'width' | 'depth' | 'height' | 'wall', label: string) => (
    <NumberField
      label={`${label}, ${units}`}
      value={shown(vessel[key])}
      min={shown(key === 'wall' ? 0.5 : 10)}
      max={shown(key === 'wall' ? 60 : 2000)}
      step={key === 'wall' ? step / 5 : step}
      digits={key === 'wall' ? digits + 1 : digits}
      onChange={(v) => {
        const mm = fromUnit(v, units)
        if (vessel.plan === 'round' && key === 'width') set({ width: mm, depth: mm })
        else set({ [key]: mm })
      }}
    />
  )
  const mechanics = MECHANICS_ROWS.find((m) => m.id === vessel.mechanics)

  if (byPhoto === 'now')
    return (
      <Suspense fallback={null}>
        <VesselFromPhoto onLeave={() => setByPhoto('no')} onUsed={() => setByPhoto('done')} />
      </Suspense>
    )
  return (
    <Dialog
      title="Vessel"
      width={920}
      onClose={onClose}
      actions={
        <Button kind="main" onClick={onClose}>
          Done
        </Button>
      }
    >
      <div className="vessel-units">
        <SelectField<Units>
          label="measures in"
          value={units}
          options={UNIT_OPTIONS}
          onChange={(to) => change({ units: to })}
        />
      </div>
      <p className="vessel-own">
        <Button onClick={() => setByPhoto('now')}>From a photo of your own</Button>
        <span className="dim">Its size and outline, traced in this page.</span>
      </p>
      <p className="dim">
        All drawn to one scale. Choosing one keeps your stems; those that would cross the wall are for you to move.
      </p>
      <ul className="vessel-list">
        {VESSELS.map((row) => {
          const v = vesselOf(row)
          const same =
            v.width === vessel.width &&
            v.height === vessel.height &&
            v.plan === vessel.plan &&
            v.material === vessel.material
          return (
            <li key={row.id}>
              <button
                type="button"
                aria-pressed={same}
                onClick={() => perform({ do: 'set-vessel', set: { ...v, profile: v.profile ?? null } })}
              >
                <VesselDrawing vessel={v} size={92} span={span} />
                <span>{row.name}</span>
                <small>
                  {formatLength(row.width, units)} × {formatLength(row.height, units)}
                </small>
              </button>
            </li>
          )
        })}
      </ul>
      <h3>By hand</h3>
      <div className="field-line">
        <label className="choice">
          plan
          <select
            value={vessel.plan}
            onChange={(e) => {
              const plan = e.target.value as Vessel['plan']
              set(plan === 'round' ? { plan, depth: vessel.width } : { plan })
            }}
          >
            {VESSEL_PLANS.map((p) => (
              <option key={p}>{p}</option>
            ))}
          </select>
        </label>
        {size('width', vessel.plan === 'round' ? 'across the mouth' : 'width')}
        {vessel.plan === 'round' ? null : size('depth', 'depth')}
        {size('height', 'height')}
        {size('wall', 'wall')}
        <label className="choice">
          material
          <select value={vessel.material} onChange={(e) => set({ material: e.target.value as Vessel['material'] })}>
            {MATERIALS.map((m) => (
              <option key={m}>{m}</option>
            ))}
          </select>
        </label>
        <ColourField label="colour" value={vessel.colour} onCommit={(to) => set({ colour: to })} />
        <label className="choice">
          held by
          <select value={vessel.mechanics} onChange={(e) => set({ mechanics: e.target.value as Vessel['mechanics'] })}>
            {MECHANICS.map((m) => (
              <option key={m} value={m}>
                {MECHANICS_ROWS.find((r) => r.id === m)?.name ?? m}
              </option>
            ))}
          </select>
        </label>
        <NumberField
          label="filled"
          unit="%"
          value={Math.round(vessel.waterFill * 100)}
          min={0}
          max={100}
          step={5}
          onChange={(v) => set({ waterFill: v / 100 })}
        />
      </div>
      <p className="dim">
        Holds {(waterVolume_mm3(vessel) / 1e6).toFixed(2)} litres at that level. {mechanics?.about}{' '}
        {mechanics?.cautions.map((c) => c.text).join(' ')}
      </p>
      <ProfileEditor vessel={vessel} open={byPhoto === 'done'} onChange={(profile) => set({ profile })} />
    </Dialog>
  )
}
