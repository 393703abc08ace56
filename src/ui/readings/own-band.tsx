import { type FormEvent, type KeyboardEvent, useEffect, useId, useRef, useState } from 'react'
import { type Held, isShare } from '../../readings/index.ts'
import { perform } from '../../state/index.ts'
import { Button, formatNumber } from '../parts/index.ts'
import { type Ends, readEnds } from './own-ends.ts'

/** A band of the person's own for one measured value, in two fields, and the way back to the table. One settling, one step of undo. */
export const OwnBand = ({ held }: { held: Held }) => {
  const id = useId()
  const box = useRef<HTMLDivElement>(null)
  const [open, setOpen] = useState(false)
  const [problem, setProblem] = useState('')
  useEffect(() => {
    if (!open) return
    box.current?.querySelector('input')?.select()
    box.current?.querySelector('form')?.scrollIntoView({ block: 'nearest' })
  }, [open])
  const { wants } = held
  if (!wants) return null
  const per = isShare(held) ? 100 : 1
  const unit = isShare(held) ? '%' : held.unit
  const written = (end: number | null): string => (end === null ? '' : formatNumber(end * per, 3))
  // The keyboard stands on the word that opens the fields before they go.
  const close = (): void => {
    box.current?.querySelector('button')?.focus()
    setProblem('')
    setOpen(false)
  }
  const want = (ends: Ends | null): void => {
    close()
    perform({ do: 'set-band', name: wants.name, ends })
  }
  const settle = (event: FormEvent<HTMLFormElement>): void => {
    event.preventDefault()
    const given = new FormData(event.currentTarget)
    const typed = (name: 'least' | 'most'): string => String(given.get(name) ?? '')
    // What was not touched stays exactly as it was, though fewer figures are shown.
    const texts = [typed('least'), typed('most')] as const
    if (texts[0] === written(wants.ends[0]) && texts[1] === written(wants.ends[1])) return close()
    const read = readEnds(texts, { per, unit, range: wants.range })
    if ('problem' in read) return setProblem(read.problem)
    want([0, 1].map((i) => (texts[i] === written(wants.ends[i]!) ? wants.ends[i] : read.ends[i])) as Ends)
  }
  const onKey = (event: KeyboardEvent): void => {
    if (event.key !== 'Escape') return
    event.stopPropagation()
    close()
  }
  const field = (name: 'least' | 'most', words: string, end: number | null) => (
    <span className="field">
      <label htmlFor={`${id}-${name}`}>{`${words}${unit ? `, ${unit}` : ''}`}</label>
      <input
        id={`${id}-${name}`}
        name={name}
        inputMode="decimal"
        autoComplete="off"
        defaultValue={written(end)}
        aria-describedby={`${id}-hint${problem ? ` ${id}-problem` : ''}`}
        aria-invalid={problem !== '' || undefined}
        onKeyDown={onKey}
      />
    </span>
  )
  return (
    <div className="own-band" ref={box}>
      <Button kind="word" aria-expanded={open} onClick={open ? close : () => setOpen(true)}>
        set your own<span className="unseen"> band: {held.name}</span>
      </Button>
      {wants.own && (
        <Button kind="word" onClick={() => want(null)}>
          back to the table<span className="unseen"> of bands: {held.name}</span>
        </Button>
      )}
      {open && (
        <form key={wants.ends.join()} onSubmit={settle} aria-label={`What is wanted: ${held.name}`}>
          {field('least', 'at least', wants.ends[0])}
          {field('most', 'at most', wants.ends[1])}
          <Button type="submit">Want this</Button>
          <p className="quiet" id={`${id}-hint`}>
            {`From ${written(wants.range[0])} to ${written(wants.range[1])}${unit ? ` ${unit}` : ''}; leave one empty for no end.`}
          </p>
          {problem && (
            <p className="problem" id={`${id}-problem`} role="alert">
              {problem}
            </p>
          )}
        </form>
      )}
    </div>
  )
}
