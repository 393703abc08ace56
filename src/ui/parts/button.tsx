import type { ButtonHTMLAttributes, ReactNode } from 'react'
import './button.css'

export interface ButtonProps extends Omit<ButtonHTMLAttributes<HTMLButtonElement>, 'disabled'> {
  /** `main` is filled (one in sight at most), `plain` has a line round it, `word` is a word that can be pressed. */
  kind?: 'main' | 'plain' | 'word'
  /** Stays reachable by key and says that it can't be pressed now. */
  off?: boolean
  children: ReactNode
}

/** A button with words on it. */
export const Button = ({ kind = 'plain', off = false, className, onClick, ...rest }: ButtonProps) => (
  <button
    type="button"
    {...rest}
    className={`act ${kind}${className ? ` ${className}` : ''}`}
    aria-disabled={off || undefined}
    onClick={off ? undefined : onClick}
  />
)
