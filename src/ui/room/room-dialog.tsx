import { useMemo } from 'react'
import { LIGHTS, LIMITS, type TableShape } from '../../arrangement/index.ts'
import { TABLES } from '../../catalogue/index.ts'
import { underLight } from '../../colour/index.ts'
import { sceneOf } from '../../drawing/index.ts'
import { resolveArrangement } from '../../geometry/index.ts'
import { perform, useStudio } from '../../state/index.ts'
import { fromUnit, toUnit, type Units } from '../../units/index.ts'
import { Button, ColourField, Dialog, NumberField, SelectField } from '../parts/index.ts'
import { FlameCaution } from './flame-caution.tsx'
import { laidWords } from './laid-words.ts'
import { RoomView } from './room-view.tsx'
import { TablePlan } from './table-plan.tsx'
import { ABOUT_LIGHT, lightWords, tableWords } from './words.ts'
import './room.css'

const sameTable = (a: TableShape, b: TableShape): boolean =>
  a.shape === 'round'
    ? b.shape === 'round' && a.diameter === b.diameter
    : b.shape === 'rectangular' && a.length === b.length && a.width === b.width

const setTable = (table: TableShape): void => perform({ do: 'set-setting', set: { table } })

/** Of another shape, near the size that was there. */
const asShape = (table: TableShape, shape: TableShape['shape']): TableShape => {
  if (table.shape === shape) return table
  return table.shape === 'round'
    ? { shape: 'rectangular', length: table.diameter, width: Math.min(762, table.diameter) }
    : { shape: 'round', diameter: table.length }
}

const TableSizes = ({ table, units }: { table: TableShape; units: Units }) => {
  const digits = { mm: 0, cm: 1, in: 1 }[units]
  const size = (label: string, mm: number, set: (mm: number) => TableShape) => (
    <NumberField
      label={`${label}, ${units}`}
      value={Number(toUnit(mm, units).toFixed(digits))}
      min={Number(toUnit(200, units).toFixed(digits))}
      max={Number(toUnit(LIMITS.mm, units).toFixed(digits))}
      step={{ mm: 50, cm: 5, in: 2 }[units]}
      digits={digits}
      onChange={(to) => setTable(set(fromUnit(to, units)))}
    />
  )
  return (
    <div className="field-line">
      <SelectField<TableShape['shape']>
        label="shape"
        value={table.shape}
        options={[
          { value: 'round', words: 'round' },
          { value: 'rectangular', words: 'long' },
        ]}
        onChange={(to) => setTable(asShape(table, to))}
      />
      {table.shape === 'round' ? (
        size('across', table.diameter, (diameter) => ({ ...table, diameter }))
      ) : (
        <>
          {size('length', table.length, (length) => ({ ...table, length }))}
          {size('width', table.width, (width) => ({ ...table, width }))}
        </>
      )}
    </div>
  )
}

/** Colours of the design, each once, in the order in which they are drawn. */
const coloursOf = (palette: readonly { colour: string }[]): string[] => [...new Set(palette.map((s) => s.colour))]

/** CSS px; it shrinks to the space there is. Ours. */
const VIEW_WIDTH = 812

/** The room that the piece will stand in: table, linen and light. */
export const RoomDialog = ({ onClose }: { onClose: () => void }) => {
  const design = useStudio((s) => s.document)
  const { table, light, linen } = design.setting
  const palette = design.palette.slots
  const units = useStudio((s) => s.units)
  const spread = useStudio((s) => s.readings.find((r) => r.id === 'proportion')?.values.spread_mm)
  const resolved = useMemo(() => resolveArrangement(design), [design])
  const scene = useMemo(() => sceneOf(resolved), [resolved])
  const known = TABLES.find((row) => sameTable(row.table, table))
  return (
    <Dialog
      title="The room"
      width={860}
      onClose={onClose}
      actions={
        <Button kind="main" onClick={onClose}>
          Done
        </Button>
      }
    >
      <RoomView
        design={design}
        resolved={resolved}
        scene={scene}
        width={VIEW_WIDTH}
        label={`The design on its table, seen from a little above, in ${lightWords(light)}: ${tableWords(table, units)}`}
      />
      <div className="room">
        <section aria-labelledby="room-table">
          <h3 id="room-table">Table</h3>
          <div className="field-line">
            <SelectField
              label="as hired"
              value={known?.id ?? 'own'}
              options={[
                ...TABLES.map(({ id, name }) => ({ value: id, words: name })),
                { value: 'own', words: 'another size' },
              ]}
              onChange={(to) => {
                const row = TABLES.find((r) => r.id === to)
                if (row) setTable(row.table)
              }}
            />
          </div>
          <TableSizes table={table} units={units} />
          <TablePlan
            resolved={resolved}
            scene={scene}
            spread={typeof spread === 'number' ? spread : null}
            lit={(hex) => underLight(hex, light)}
          />
          <p className="dim">
            {known ? `Seats ${known.seats}: ${known.source}. ` : ''}
            {laidWords(scene, units).join(' ')} The dashed ring is how far the plants reach at the widest: it should
            stay off the plates.
          </p>
        </section>
        <section aria-labelledby="room-light">
          <h3 id="room-light">Light</h3>
          <fieldset className="lights">
            <legend className="unseen">Light of the room</legend>
            {LIGHTS.map((name) => (
              <label key={name}>
                <input
                  type="radio"
                  name="room-light"
                  checked={light === name}
                  onChange={() => perform({ do: 'set-setting', set: { light: name } })}
                />
                <span>
                  {lightWords(name)} <span className="dim">{ABOUT_LIGHT[name]}</span>
                </span>
                <span className="light-strip" aria-hidden="true">
                  {[...coloursOf(palette), linen].map((c) => (
                    <span key={c} style={{ background: underLight(c, name) }} />
                  ))}
                </span>
              </label>
            ))}
          </fieldset>
          <p className="dim">
            The harmony reading and the comparison of palettes go by this light; the drawing stays in daylight. The
            strips show the palette and the linen as an eye used to the light sees them (CAT16, by a published degree of
            adaptation; no model knows your lamps).
          </p>
          {light === 'candle' ? <FlameCaution resolved={resolved} scene={scene} units={units} /> : null}
          <h3>Linen</h3>
          <ColourField
            label="colour of the cloth"
            value={linen}
            onCommit={(to) => perform({ do: 'set-setting', set: { linen: to } })}
          />
        </section>
      </div>
    </Dialog>
  )
}
