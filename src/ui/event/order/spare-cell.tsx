import { type Plant, spareShare } from '../../../catalogue/index.ts'
import { changeEvent, useEvent } from '../../../state/index.ts'
import { Button, NumberField } from '../../parts/index.ts'

const percent = (share: number): number => Math.round(share * 1000) / 10

/** The spare of a plant in per cent, and what is usual for it. */
export const SpareCell = ({ plant }: { plant: Plant }) => {
  const spare = useEvent((s) => s.event.spare)
  const usual = spareShare(plant)
  const own = Object.hasOwn(spare, plant.id)
  const name = plant.name.toLowerCase()
  const toUsual = (): void => {
    const { [plant.id]: _, ...others } = spare
    changeEvent({ spare: others }, `the usual spare of ${name}, ${percent(usual.value)} %`)
  }
  return (
    <div className="order-spare">
      <NumberField
        label="spare, %"
        spoken={plant.name}
        hideLabel
        value={percent(spare[plant.id] ?? usual.value)}
        min={0}
        max={100}
        digits={1}
        onChange={(to) =>
          to === percent(usual.value)
            ? toUsual()
            : changeEvent({ spare: { ...spare, [plant.id]: to / 100 } }, `${to} % spare of ${name}`)
        }
      />
      {own ? (
        <Button kind="word" onClick={toUsual} aria-label={`${plant.name}: the usual spare, ${percent(usual.value)} %`}>
          usual {percent(usual.value)}
        </Button>
      ) : null}
    </div>
  )
}
