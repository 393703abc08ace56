import { EVENT_LIMITS } from '../../../event/index.ts'
import { beginEvent, openEventText, say, textOfEvent, useEvent } from '../../../state/index.ts'
import { fileName } from '../../../storage/index.ts'
import { download } from '../../files/index.ts'
import { Button, FileButton } from '../../parts/index.ts'
import { count } from '../words.ts'
import { EventOpening } from './event-opening.tsx'
import { EventTwin } from './event-twin.tsx'

const refuse = (name: string, message: string): void =>
  useEvent.setState({ opening: { name, problems: [{ path: '', message }], good: null } })

const openFile = async (file: File): Promise<void> => {
  const most = EVENT_LIMITS.file_bytes
  if (file.size > most)
    return refuse(file.name, `expected at most ${most / 1e6} MB, got ${(file.size / 1e6).toFixed(1)} MB`)
  try {
    await openEventText(file.name, await file.text())
  } catch {
    refuse(file.name, 'could not be read')
  }
}

/** Saves the event with its designs as a file. */
export const saveEvent = (): void => {
  const { event, missing } = useEvent.getState()
  const name = fileName(`${event.title || 'event'}.event`)
  download(new Blob([textOfEvent()], { type: 'application/json' }), name)
  const without = event.parts.filter((p) => missing.includes(p.design)).length
  say(
    without === 0
      ? `Saved as ${name}.`
      : `Saved as ${name}, without ${count(without, 'design that is', 'designs that are')} missing.`,
  )
}

/** The whole event as a file, out and in, and a new one. */
export const EventFiles = () => (
  <span className="order-acts">
    <FileButton accept=".json,application/json" label="Open an event's file" onFile={(file) => void openFile(file)}>
      Open an event
    </FileButton>
    <Button onClick={saveEvent}>Save the event</Button>
    <Button onClick={() => void beginEvent()}>Begin a new event</Button>
    <EventOpening />
    <EventTwin />
  </span>
)
