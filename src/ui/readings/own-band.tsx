import { type FormEvent, useId, useState } from 'react'
import type { Held } from '../../readings/index.ts'
import { perform } from '../../state/index.ts'
import { Button, formatNumber, parseNumber } from '../parts/index.ts'
import { isShare } from './words.ts'

/** Figures of an end as a person types them; '' for no end. */
const written = (end: number | null, per: number): string => (end === null ? '' : formatNumber(end * per, 3))

/** The two ends of what is wanted, to be set to one's own; empty for no end on that side. One settling, one step of undo. */
export const OwnBand = ({ held }: { held: Held }) => {
  const id = useId()
  const [open, setOpen] = useState(false)
  const [problem, setProblem] = useState('')
  const { wants } = held
  if (!wants) return null
  const per = isShare(held) ? 100 : 1
  const unit = isShare(held) ? '%' : held.unit
  const settle = (event: FormEvent<HTMLFormElement>): void => {
    event.preventDefault()
    const given = new FormData(event.currentTarget)
    const ends = ['least', 'most'].map((name) => {
      const text = String(given.get(name) ?? '').trim()
      const number = parseNumber(text)
      return text === '' ? null : number === null ? Number.NaN : number / per
    }) as [number | null, number | null]
    if (ends.some(Number.isNaN)) return setProblem('A number, or nothing where there is no end.')
    if (ends[0] === null && ends[1] === null) return setProblem('One of the two, at least.')
    if (ends[0] !== null && ends[1] !== null && ends[0] > ends[1]) return setProblem('The least is more than the most.')
    setProblem('')
    setOpen(false)
    perform({ do: 'set-band', name: wants.name, ends })
  }
  const field = (name: 'least' | 'most', words: string, end: number | null) => (
    <span className="field">
      <label htmlFor={`${id}-${name}`}>{`${words}${unit ? `, ${unit}` : ''}`}</label>
      <input
        id={`${id}-${name}`}
        name={name}
        inputMode="decimal"
        autoComplete="off"
        defaultValue={written(end, per)}
        aria-describedby={problem ? `${id}-problem` : undefined}
        aria-invalid={problem !== '' || undefined}
      />
    </span>
  )
  return (
    <div className="own-band">
      {open ? (
        <form onSubmit={settle} aria-label={`What is wanted: ${held.name}`}>
          {field('least', 'at least', wants.ends[0])}
          {field('most', 'at most', wants.ends[1])}
          <Button type="submit">Want this</Button>
          {problem && (
            <p className="problem" id={`${id}-problem`} role="alert">
              {problem}
            </p>
          )}
        </form>
      ) : (
        <Button kind="word" onClick={() => setOpen(true)} aria-label={`Set your own band: ${held.name}`}>
          set your own
        </Button>
      )}
      {wants.own && (
        <Button
          kind="word"
          onClick={() => perform({ do: 'set-band', name: wants.name, ends: null })}
          aria-label={`Back to the table’s band: ${held.name}`}
        >
          back to the table
        </Button>
      )}
    </div>
  )
}
