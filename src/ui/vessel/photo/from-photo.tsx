import { useEffect, useRef, useState } from 'react'
import { Button, Dialog } from '../../parts/index.ts'
import { pictureIn } from '../../photo/index.ts'
import { Bench } from './bench.tsx'
import { type Loaded, loadPhoto } from './load-photo.ts'
import { PhotoIn } from './photo-in.tsx'
import './from-photo.css'

/** One’s own vessel from a photo of it, traced and measured in this page. */
export const VesselFromPhoto = ({ onLeave, onUsed }: { onLeave: () => void; onUsed: () => void }) => {
  const [loaded, setLoaded] = useState<Extract<Loaded, { ok: true }> | null>(null)
  const [wrong, setWrong] = useState('')
  const [busy, setBusy] = useState(false)
  const [turn, setTurn] = useState(0)
  const newest = useRef(0)
  useEffect(
    () => () => {
      newest.current = -1
    },
    [],
  )
  const take = async (file: File): Promise<void> => {
    newest.current += 1
    const mine = newest.current
    setBusy(true)
    const result = await loadPhoto(file)
    if (newest.current !== mine) return
    setBusy(false)
    setWrong(result.ok ? '' : result.message)
    if (!result.ok) return
    setLoaded(result)
    setTurn(mine)
  }
  return (
    <Dialog
      title="Your own vessel, from a photo"
      width={1080}
      onClose={onLeave}
      actions={
        <Button kind="word" onClick={onLeave}>
          Leave the photo
        </Button>
      }
    >
      {/* biome-ignore lint/a11y/noStaticElementInteractions: the same is done by choosing a file */}
      <div
        className="from-photo"
        onDragOver={(event) => event.preventDefault()}
        onDrop={(event) => {
          event.preventDefault()
          event.stopPropagation()
          const file = pictureIn(event.dataTransfer)
          if (file) void take(file)
        }}
      >
        <PhotoIn onFile={(file) => void take(file)} busy={busy} wrong={wrong} another={loaded !== null} />
        {loaded ? <Bench key={turn} photo={loaded.photo} onUsed={onUsed} /> : null}
      </div>
    </Dialog>
  )
}
