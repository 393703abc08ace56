import { type KeyboardEvent, useId, useRef, useState } from 'react'
import { formatNumber, parseNumber } from './format.ts'
import './field.css'

export interface NumberFieldProps {
  /** Words before the unit: `across`. */
  label: string
  /** `mm`, `cm`, `in`, `°`; '' for plain numbers. */
  unit?: string
  value: number
  min: number
  max: number
  /** What − and + and the arrow keys add; Page Up and Page Down add ten of them. */
  step?: number
  /** Decimals shown. */
  digits?: number
  /** All of them, as money has: `9.50`. */
  fixed?: boolean
  /**
   * Called with a value inside the limits when one is settled: on a step, on Enter, on leaving the field. A step says by
   * how much as well: what is shown is rounded, or the mean of several, and a step is to go from what is there.
   */
  onChange: (value: number, by?: number) => void
  /** Longer words for ears, if the label is short: `across, stem 2 garden rose`. */
  spoken?: string
  /** The label is for ears only, in a table that has it at the head of the column. */
  hideLabel?: boolean
}

/** Steps a key takes. Home and End stay with the text. */
const STEPS: Record<string, number> = { ArrowUp: 1, ArrowDown: -1, PageUp: 10, PageDown: -10 }

/** A number with its label and unit, a − and a + beside it. Keys: arrows, Page Up and Down, Enter, Escape. */
export const NumberField = (props: NumberFieldProps) => {
  const { label, unit = '', value, min, max, step = 1, digits = 0, fixed = false } = props
  const { onChange, spoken, hideLabel = false } = props
  const id = useId()
  const [typed, setTyped] = useState<string | null>(null)
  const [problem, setProblem] = useState('')
  const field = useRef<HTMLInputElement>(null)
  const shown = (v: number): string => formatNumber(v, digits, fixed)

  const settle = (to: number, stepped = false): void => {
    const inside = Math.min(max, Math.max(min, to))
    setTyped(null)
    setProblem(inside === to ? '' : `${to > max ? 'At most' : 'At least'} ${shown(inside)}${unit ? ` ${unit}` : ''}.`)
    if (inside !== value) onChange(inside, stepped ? Number((inside - value).toFixed(6)) : undefined)
  }
  // Ten steps of 0.1 make 1, not 0.9999.
  const by = (steps: number): void => settle(Number((value + steps * step).toFixed(Math.max(digits, 4))), true)
  const read = (): void => {
    if (typed === null) return
    const number = parseNumber(typed)
    if (number === null) {
      setTyped(null)
      setProblem(`A number${unit ? ` in ${unit}` : ''}, from ${shown(min)} to ${shown(max)}.`)
    } else if (typed === shown(value)) setTyped(null)
    else settle(number)
  }
  const onKey = (event: KeyboardEvent): void => {
    if (event.key === 'Escape' && typed !== null) {
      event.stopPropagation()
      setTyped(null)
      setProblem('')
      return
    }
    const steps = STEPS[event.key]
    if (event.ctrlKey || event.metaKey || event.altKey) return
    if (event.key === 'Enter') read()
    else if (steps !== undefined) by(steps)
    else return
    event.preventDefault()
  }
  return (
    <div className="field number">
      <label htmlFor={id} className={hideLabel ? 'unseen' : undefined}>
        {unit ? `${label}, ${unit}` : label}
      </label>
      <span className="steps">
        <button type="button" tabIndex={-1} aria-label={`${label} less`} onClick={() => by(-1)}>
          −
        </button>
        <input
          ref={field}
          id={id}
          role="spinbutton"
          inputMode="decimal"
          autoComplete="off"
          aria-label={spoken ? `${label}, ${spoken}` : undefined}
          aria-valuenow={value}
          aria-valuemin={min}
          aria-valuemax={max}
          aria-valuetext={`${shown(value)}${unit ? ` ${unit}` : ''}`}
          aria-invalid={problem !== '' || undefined}
          aria-describedby={problem ? `${id}-problem` : undefined}
          value={typed ?? shown(value)}
          onChange={(event) => setTyped(event.target.value)}
          onFocus={(event) => event.target.select()}
          onBlur={read}
          onKeyDown={onKey}
        />
        <button type="button" tabIndex={-1} aria-label={`${label} more`} onClick={() => by(1)}>
          +
        </button>
      </span>
      {problem && (
        <span className="problem" id={`${id}-problem`} role="status">
          {problem}
        </span>
      )}
    </div>
  )
}
