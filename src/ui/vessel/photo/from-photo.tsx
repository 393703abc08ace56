import { useEffect, useRef, useState } from 'react'
import { benchFor, type PhotoBench } from '../../../state/index.ts'
import { Button, Dialog } from '../../parts/index.ts'
import { pictureIn } from '../../photo/index.ts'
import { Bench } from './bench.tsx'
import { PhotoIn } from './photo-in.tsx'
import './from-photo.css'

/** One’s own vessel from a photo of it, traced and measured in this page. */
export const VesselFromPhoto = ({ onLeave, onUsed }: { onLeave: () => void; onUsed: () => void }) => {
  const [bench, setBench] = useState<PhotoBench | null>(null)
  const [wrong, setWrong] = useState('')
  const [busy, setBusy] = useState(false)
  const [turn, setTurn] = useState(0)
  const newest = useRef(0)
  const open = useRef<PhotoBench | null>(null)
  useEffect(
    () => () => {
      newest.current = -1
      open.current?.close()
    },
    [],
  )
  const take = async (file: File): Promise<void> => {
    newest.current += 1
    const mine = newest.current
    setBusy(true)
    const result = await benchFor(file)
    if (newest.current !== mine) {
      if (result.ok) result.bench.close()
      return
    }
    setBusy(false)
    setWrong(result.ok ? '' : result.message)
    if (!result.ok) return
    open.current?.close()
    open.current = result.bench
    setBench(result.bench)
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
        <PhotoIn onFile={(file) => void take(file)} busy={busy} wrong={wrong} another={bench !== null} />
        {bench ? <Bench key={turn} bench={bench} onUsed={onUsed} /> : null}
      </div>
    </Dialog>
  )
}
