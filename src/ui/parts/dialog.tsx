import { type ReactNode, useEffect, useId, useRef } from 'react'
import { Button } from './button.tsx'
import './dialog.css'

export interface DialogProps {
  title: string
  onClose: () => void
  children: ReactNode
  /** Buttons at the foot; a "Close" stands there if none are given. */
  actions?: ReactNode
  /** Widest it gets, px. */
  width?: number
}

/**
 * A sheet over the sheet, by the browser's own modal dialog: focus stays in it, Escape closes it, focus goes back to
 * where it was. Build it only while it is open.
 */
export const Dialog = ({ title, onClose, children, actions, width = 560 }: DialogProps) => {
  const id = useId()
  const ref = useRef<HTMLDialogElement>(null)
  useEffect(() => {
    const dialog = ref.current
    const before = document.activeElement
    if (dialog && !dialog.open) dialog.showModal()
    return () => {
      dialog?.close()
      if (before instanceof HTMLElement && before.isConnected) before.focus()
    }
  }, [])
  return (
    <dialog
      ref={ref}
      className="sheet-over"
      style={{ maxWidth: width }}
      aria-labelledby={id}
      onCancel={(event) => {
        event.preventDefault()
        onClose()
      }}
    >
      <h2 id={id}>{title}</h2>
      <div className="sheet-over-body">{children}</div>
      <div className="sheet-over-foot">{actions ?? <Button onClick={onClose}>Close</Button>}</div>
    </dialog>
  )
}
