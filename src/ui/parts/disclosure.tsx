import { type ReactNode, useId, useState } from 'react'
import './disclosure.css'

export interface DisclosureProps {
  /** The words that are always seen. */
  head: ReactNode
  children: ReactNode
  /** Leave out for one that keeps its own state. */
  open?: boolean
  onToggle?: (open: boolean) => void
  className?: string
}

/** Something that opens below its own words. What is closed is not built. */
export const Disclosure = ({ head, children, open, onToggle, className = '' }: DisclosureProps) => {
  const id = useId()
  const [own, setOwn] = useState(false)
  const isOpen = open ?? own
  const toggle = (): void => {
    setOwn(!isOpen)
    onToggle?.(!isOpen)
  }
  return (
    <div className={`disclosure ${className}`}>
      <button type="button" className="disclosure-head" aria-expanded={isOpen} aria-controls={id} onClick={toggle}>
        {head}
      </button>
      <div id={id} hidden={!isOpen}>
        {isOpen && children}
      </div>
    </div>
  )
}
