import { lazy, Suspense, useState } from 'react'
import { createPortal } from 'react-dom'
import type { Light } from '../../arrangement/index.ts'
import { perform, useStudio } from '../../state/index.ts'
import { SelectField } from '../parts/index.ts'
import { LIGHT_OPTIONS, tableWords } from './words.ts'

const RoomDialog = lazy(async () => ({ default: (await import('./room-dialog.tsx')).RoomDialog }))

/** Table, linen and light, in the title block. */
export const RoomCells = () => {
  const { table, light, linen } = useStudio((s) => s.document.setting)
  const units = useStudio((s) => s.units)
  const [open, setOpen] = useState(false)
  return (
    <>
      <div className="cell room">
        <button type="button" className="cell-words" onClick={() => setOpen(true)}>
          <span className="label">table and linen</span>
          <span className="value">
            {tableWords(table, units)} <span className="linen" style={{ background: linen }} aria-hidden="true" />
          </span>
        </button>
      </div>
      <div className="cell light">
        <SelectField<Light>
          label="light of the room"
          value={light}
          options={LIGHT_OPTIONS}
          onChange={(to) => perform({ do: 'set-setting', set: { light: to } })}
        />
      </div>
      {!open
        ? null
        : // Outside the block, whose fields look otherwise.
          createPortal(
            <Suspense fallback={null}>
              <RoomDialog onClose={() => setOpen(false)} />
            </Suspense>,
            document.body,
          )}
    </>
  )
}
