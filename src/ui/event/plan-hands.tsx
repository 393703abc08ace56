import { useId } from 'react'
import { type EventPlan, isClock, type Work } from '../../event/index.ts'
import { changeEvent } from '../../state/index.ts'
import { NumberField, SelectField, TextField } from '../parts/index.ts'
import { PlanMinutes } from './plan-minutes.tsx'

const changeWork = (work: Work, change: Partial<Work>, words: string): void =>
  changeEvent({ work: { ...work, ...change } }, words)

const ClockField = ({ label, value, onChange }: { label: string; value: string; onChange: (to: string) => void }) => {
  const id = useId()
  return (
    <div className="field plan-clock">
      <label htmlFor={id}>{label}</label>
      <input id={id} type="time" value={value} onChange={(e) => isClock(e.target.value) && onChange(e.target.value)} />
    </div>
  )
}

/** Names, a comma between: there are as many people as names. */
const takeNames = (work: Work, typed: string): void => {
  const names = typed
    .split(/[,;\n]/)
    .map((name) => name.trim())
    .filter((name) => name !== '')
    .slice(0, 100)
  const people = names.length > 0 ? names.length : work.people
  changeWork(work, { names, people }, names.length > 0 ? `${names.join(', ')} are there` : 'no names')
}

const People = ({ work }: { work: Work }) => (
  <div className="plan-fields">
    <TextField
      className="plan-names"
      label="names, a comma between"
      value={work.names.join(', ')}
      onCommit={(typed) => takeNames(work, typed)}
    />
    <NumberField
      label="people"
      value={work.people}
      min={1}
      max={100}
      onChange={(people) =>
        changeWork(
          work,
          { people, names: work.names.slice(0, people) },
          `${people} ${people === 1 ? 'person' : 'people'}`,
        )
      }
    />
    <ClockField label="from" value={work.from} onChange={(from) => changeWork(work, { from }, `work from ${from}`)} />
    <ClockField label="to" value={work.to} onChange={(to) => changeWork(work, { to }, `work to ${to}`)} />
    <SelectField
      label="what goes in last"
      value={work.evening ? 'evening' : 'day'}
      options={[
        { value: 'day', words: 'on the day' },
        { value: 'evening', words: 'the evening before, if it may' },
      ]}
      onChange={(to) =>
        changeWork(
          work,
          { evening: to === 'evening' },
          `what goes in last goes in ${to === 'day' ? 'on the day' : 'on the evening before, where it may'}`,
        )
      }
    />
    <NumberField
      label="on the road"
      unit="min"
      value={work.drive}
      min={0}
      max={1440}
      step={5}
      onChange={(drive) => changeWork(work, { drive }, `${drive} minutes on the road`)}
    />
  </div>
)

/** What a cooler is taken to be when there is one: 3 °C is inside 34–38 °F, at which most are run (FloraLife); the room is ours. */
const USUAL_COOLER = { celsius: 3, stems: 400 }

const CoolerFields = ({ cooler }: Pick<EventPlan, 'cooler'>) => (
  <div className="plan-fields">
    <SelectField
      label="cooler"
      value={cooler ? 'yes' : 'no'}
      options={[
        { value: 'no', words: 'none' },
        { value: 'yes', words: 'there is one' },
      ]}
      onChange={(to) =>
        changeEvent({ cooler: to === 'yes' ? USUAL_COOLER : null }, to === 'yes' ? 'a cooler' : 'no cooler')
      }
    />
    {cooler && (
      <>
        <NumberField
          label="runs at"
          unit="°C"
          value={cooler.celsius}
          min={-5}
          max={25}
          step={0.5}
          digits={1}
          onChange={(celsius) => changeEvent({ cooler: { ...cooler, celsius } }, `cooler at ${celsius} °C`)}
        />
        <NumberField
          label="stems in it"
          value={cooler.stems}
          min={0}
          max={100_000}
          step={50}
          onChange={(stems) => changeEvent({ cooler: { ...cooler, stems } }, `cooler for ${stems} stems`)}
        />
      </>
    )}
  </div>
)

/** Who works when, how fast, and where flowers wait. */
export const PlanHands = ({ event: { work, cooler } }: { event: EventPlan }) => (
  <section aria-labelledby="plan-by-whom">
    <h2 id="plan-by-whom" tabIndex={-1}>
      Hands and cooler
    </h2>
    <People work={work} />
    <p className="quiet">
      One takes flowers in and makes the trial pieces, one drives, all are at everything else, one task after another.
      Where you say who is at a task, tasks of different people stand side by side.
    </p>
    <CoolerFields cooler={cooler} />
    <PlanMinutes work={work} />
  </section>
)
