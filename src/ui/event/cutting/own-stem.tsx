import { cutsAlong, type Plant, sideLength_mm } from '../../../catalogue/index.ts'
import { EVENT_LIMITS, withOwnStem } from '../../../event/index.ts'
import { changeEvent, useEvent, useStudio } from '../../../state/index.ts'
import { stemAsItComes } from '../../../stem-list/index.ts'
import { formatLength, fromUnit, toUnit } from '../../../units/index.ts'
import { Button, NumberField } from '../../parts/index.ts'
import { count } from '../words.ts'

const DIGITS = { mm: 0, cm: 1, in: 2 } as const
const STEP = { mm: 10, cm: 1, in: 0.5 } as const

interface LengthProps {
  label: string
  plant: Plant
  of: 'stem_mm' | 'side_mm'
  least_mm: number
}

/** A length of the stems that came; the figure of the catalogue again takes one's own away. */
const LengthOf = ({ label, plant, of, least_mm }: LengthProps) => {
  const units = useStudio((s) => s.units)
  const stems = useEvent((s) => s.event.stems)
  const own = stems[plant.id]
  const shown = (mm: number): number => Number(toUnit(mm, units).toFixed(DIGITS[units]))
  const { [of]: _, ...others } = own ?? {}
  const usual = stemAsItComes(plant, others)[of]
  const change = (to: number): void => {
    const mm = Math.min(EVENT_LIMITS.stem_mm[1], Math.max(least_mm, fromUnit(to, units)))
    const figure = to === shown(usual) ? undefined : mm
    changeEvent(
      { stems: withOwnStem(stems, plant.id, { [of]: figure }) },
      `${label} of ${plant.name.toLowerCase()}: ${to} ${units}${figure === undefined ? ', as the catalogue has it' : ''}`,
    )
  }
  return (
    <NumberField
      label={label}
      unit={units}
      spoken={plant.name}
      value={shown(stemAsItComes(plant, own)[of])}
      min={shown(least_mm)}
      max={shown(EVENT_LIMITS.stem_mm[1])}
      step={STEP[units]}
      digits={DIGITS[units]}
      onChange={change}
    />
  )
}

interface CountProps {
  label: string
  spoken: string
  plant: Plant
  of: 'heads' | 'pieces'
  /** What was done, to be said. */
  wordsOf: (to: number) => string
}

/** A whole number of the stems that came; the figure of the catalogue again takes one's own away. */
const CountOf = ({ label, spoken, plant, of, wordsOf }: CountProps) => {
  const stems = useEvent((s) => s.event.stems)
  const usual = stemAsItComes(plant)[of]
  const change = (to: number): void => {
    const figure = Math.round(to)
    changeEvent(
      { stems: withOwnStem(stems, plant.id, { [of]: figure === usual ? undefined : figure }) },
      `${wordsOf(figure)} ${plant.name.toLowerCase()}`,
    )
  }
  return (
    <NumberField
      label={label}
      spoken={spoken}
      value={stemAsItComes(plant, stems[plant.id])[of]}
      min={1}
      max={EVENT_LIMITS[of]}
      onChange={change}
    />
  )
}

/** What a stem of this plant is like as it comes: the catalogue's figures, each open to what was measured. */
export const OwnStem = ({ plant }: { plant: Plant }) => {
  const units = useStudio((s) => s.units)
  const stems = useEvent((s) => s.event.stems)
  const own = stems[plant.id]
  const usual = stemAsItComes(plant)
  const side = sideLength_mm(plant)
  const known = [
    `stem ${formatLength(usual.stem_mm, units)} (${plant.stem_mm.standing})`,
    ...(side
      ? [
          `${count(usual.heads, 'head', 'heads')} (${plant.bloomsPerStem.standing})`,
          `side stems ${formatLength(usual.side_mm, units)} (${side.standing})`,
        ]
      : []),
    ...(cutsAlong(plant) ? ['1 piece, with its tip, as drawn'] : []),
  ].join(', ')
  return (
    <fieldset className="cut-own">
      <legend className="unseen">Stems of {plant.name} as they come</legend>
      <LengthOf label="stem" plant={plant} of="stem_mm" least_mm={EVENT_LIMITS.stem_mm[0]} />
      {side ? (
        <>
          <CountOf
            label="heads"
            spoken={`on a stem of ${plant.name}`}
            plant={plant}
            of="heads"
            wordsOf={(to) => `${count(to, 'head', 'heads')} on a stem of`}
          />
          <LengthOf label="side stem" plant={plant} of="side_mm" least_mm={0} />
        </>
      ) : null}
      {cutsAlong(plant) ? (
        <CountOf
          label="pieces along it, at most"
          spoken={plant.name}
          plant={plant}
          of="pieces"
          wordsOf={(to) => `${count(to, 'piece', 'pieces')} along a stem of`}
        />
      ) : null}
      <p className="cut-known">
        {own ? (
          <>
            Yours. The catalogue has {known}.{' '}
            <Button
              kind="word"
              aria-label={`Stems of ${plant.name} as the catalogue has them`}
              onClick={() => {
                const { [plant.id]: _, ...others } = stems
                changeEvent({ stems: others }, `stems of ${plant.name.toLowerCase()} as the catalogue has them`)
              }}
            >
              as the catalogue has it
            </Button>
          </>
        ) : (
          <>As the catalogue has it: {known}.</>
        )}
      </p>
    </fieldset>
  )
}
