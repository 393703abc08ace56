import { type ReactNode, useRef } from 'react'
import { Button } from './button.tsx'

interface FileButtonProps {
  /** Kinds of file, as the browser's own chooser wants them: `image/*`. */
  accept: string
  /** For ears, beside the words on the button. */
  label: string
  onFile: (file: File) => void
  children: ReactNode
}

/** A button that has a file chosen by the browser's own chooser; the same file may be chosen again. */
export const FileButton = ({ accept, label, onFile, children }: FileButtonProps) => {
  const input = useRef<HTMLInputElement>(null)
  return (
    <>
      <input
        ref={input}
        type="file"
        accept={accept}
        className="unseen"
        tabIndex={-1}
        aria-label={label}
        onChange={(event) => {
          const file = event.target.files?.[0]
          event.target.value = ''
          if (file) onFile(file)
        }}
      />
      <Button onClick={() => input.current?.click()}>{children}</Button>
    </>
  )
}
