import { useEffect, useId, useRef } from 'react'
import './field.css'

export interface ColourFieldProps {
  label: string
  /** #rrggbb */
  value: string
  /** Called once, when the choice is made: trying colours in the browser's own chooser is no step yet. */
  onCommit: (value: string) => void
}

/** A colour, by the browser's own chooser. */
export const ColourField = ({ label, value, onCommit }: ColourFieldProps) => {
  const id = useId()
  const ref = useRef<HTMLInputElement>(null)
  const commit = useRef(onCommit)
  commit.current = onCommit
  // The page's framework hears every colour that is tried; the browser says `change` for the one that is taken.
  useEffect(() => {
    const input = ref.current
    const taken = (): void => commit.current(input?.value ?? '')
    input?.addEventListener('change', taken)
    return () => input?.removeEventListener('change', taken)
  }, [])
  useEffect(() => {
    if (ref.current) ref.current.value = value
  }, [value])
  return (
    <div className="field colour">
      <label htmlFor={id}>{label}</label>
      <input ref={ref} id={id} type="color" defaultValue={value} />
    </div>
  )
}
