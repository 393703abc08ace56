import { useEffect, useRef } from 'react'
import { FileButton } from '../../parts/index.ts'
import { pictureIn } from '../../photo/index.ts'

interface Props {
  onFile: (file: File) => void
  busy: boolean
  /** What is wrong with the last one, in words. */
  wrong: string
  another: boolean
}

/** How the photo is to be taken, and the ways it comes in: dropped anywhere on the dialog, pasted, or chosen. */
export const PhotoIn = ({ onFile, busy, wrong, another }: Props) => {
  const take = useRef(onFile)
  take.current = onFile
  useEffect(() => {
    const onPaste = (event: ClipboardEvent): void => {
      const file = pictureIn(event.clipboardData)
      if (!file) return
      event.preventDefault()
      take.current(file)
    }
    addEventListener('paste', onPaste)
    return () => removeEventListener('paste', onPaste)
  }, [])
  return (
    <div className={`photo-in${another ? ' brief' : ''}`}>
      <div>
        <p className="photo-in-label">Drop a photo of your vessel here, paste one, or choose a file.</p>
        <FileButton accept="image/*" label="Choose a photo of the vessel" onFile={onFile}>
          {another ? 'Choose another photo' : 'Choose a photo'}
        </FileButton>
        <p className="dim">It is looked at in this page alone: it is not stored, and goes nowhere.</p>
        {busy ? <p role="status">Looking at the photo.</p> : null}
        {wrong && !busy ? <p role="alert">{wrong}</p> : null}
      </div>
      {another ? null : (
        <ul className="photo-how">
          <li>The vessel empty, upright, before a plain wall of another colour, with wall to see on both sides.</li>
          <li>The camera level, at the height of the vessel’s middle, 2 m (6 ft) away or more; zoom in instead.</li>
          <li>Even light, so that no hard shadow lies beside it. Clear glass has to be set by hand.</li>
          <li>One size by a rule or tape: across the mouth, outside, or from the table to the rim.</li>
        </ul>
      )}
    </div>
  )
}
