import { lazy, Suspense, useEffect, useState } from 'react'
import { stepsNow } from './undo-keys.ts'

const KeysDialog = lazy(async () => ({ default: (await import('./keys-dialog.tsx')).KeysDialog }))

/** Something that a person types into, where Ctrl+Z and letters belong to the text. */
const isTyping = (target: EventTarget | null): boolean =>
  target instanceof HTMLElement &&
  (target.isContentEditable ||
    target instanceof HTMLTextAreaElement ||
    target instanceof HTMLSelectElement ||
    (target instanceof HTMLInputElement && !['checkbox', 'radio', 'button', 'range', 'color'].includes(target.type)))

/** Lets a button anywhere open the list of keys. */
export const SHOW_KEYS = 'pedicel-show-keys'

/** Keys that hold on every sheet: undo, redo, and ? for the list of keys. */
export const AppKeys = () => {
  const [open, setOpen] = useState(false)
  useEffect(() => {
    const show = (): void => setOpen(true)
    const onKey = (event: KeyboardEvent): void => {
      if (event.defaultPrevented || event.altKey || isTyping(event.target)) return
      const key = event.key.toLowerCase()
      if (event.ctrlKey || event.metaKey) {
        const { undo, redo } = stepsNow()
        const act = key === 'z' ? (event.shiftKey ? redo : undo) : key === 'y' && event.ctrlKey ? redo : null
        if (!act || document.querySelector('dialog:modal')) return
        event.preventDefault()
        act()
      } else if (event.key === '?') {
        event.preventDefault()
        show()
      }
    }
    addEventListener('keydown', onKey)
    addEventListener(SHOW_KEYS, show)
    return () => {
      removeEventListener('keydown', onKey)
      removeEventListener(SHOW_KEYS, show)
    }
  }, [])
  return open ? (
    <Suspense fallback={null}>
      <KeysDialog onClose={() => setOpen(false)} />
    </Suspense>
  ) : null
}
