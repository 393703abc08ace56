import { useId, useState } from 'react'
import './field.css'

export interface SelectFieldProps<V extends string> {
  label: string
  value: V
  options: readonly { value: V; words: string }[]
  onChange: (value: V) => void
}

/** One of a few, by the browser's own list. */
export const SelectField = <V extends string>({ label, value, options, onChange }: SelectFieldProps<V>) => {
  const id = useId()
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      <select id={id} value={value} onChange={(event) => onChange(event.target.value as V)}>
        {options.map((o) => (
          <option key={o.value} value={o.value}>
            {o.words}
          </option>
        ))}
      </select>
    </div>
  )
}

export interface TextFieldProps {
  label: string
  value: string
  /** Called once, on Enter or on leaving the field; Escape puts back what was there. */
  onCommit: (value: string) => void
  maxLength?: number
  type?: 'text' | 'date'
  /** The label is for ears only. */
  hideLabel?: boolean
  className?: string
}

/** A line of text that is one step when it is settled. */
export const TextField = ({ label, value, onCommit, maxLength = 500, type = 'text', ...rest }: TextFieldProps) => {
  const { hideLabel = false, className = '' } = rest
  const id = useId()
  const [typed, setTyped] = useState<string | null>(null)
  const settle = (): void => {
    if (typed !== null && typed !== value) onCommit(typed)
    setTyped(null)
  }
  return (
    <div className={`field ${className}`}>
      <label htmlFor={id} className={hideLabel ? 'unseen' : undefined}>
        {label}
      </label>
      <input
        id={id}
        type={type}
        value={typed ?? value}
        maxLength={maxLength}
        autoComplete="off"
        onChange={(event) => setTyped(event.target.value)}
        onBlur={settle}
        onKeyDown={(event) => {
          if (event.key === 'Enter') settle()
          if (event.key === 'Escape' && typed !== null) {
            event.stopPropagation()
            setTyped(null)
          }
        }}
      />
    </div>
  )
}
