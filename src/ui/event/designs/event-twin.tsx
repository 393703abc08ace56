import { dropOpeningEvent, openTwinAsCopy, putTwinInPlace, useEvent } from '../../../state/index.ts'
import { Button, Dialog } from '../../parts/index.ts'

/** A file of an event that is kept already, and not as it is in the file: the person says what becomes of it. */
export const EventTwin = () => {
  const twin = useEvent((s) => s.twin)
  if (!twin) return null
  const { name, kept } = twin
  return (
    <Dialog
      title="This event is kept already"
      onClose={dropOpeningEvent}
      actions={
        <>
          <Button onClick={() => void putTwinInPlace()}>Put it in place of the kept one</Button>
          <Button kind="main" onClick={() => void openTwinAsCopy()}>
            Open it as a copy
          </Button>
          <Button onClick={dropOpeningEvent}>Leave it</Button>
        </>
      }
    >
      <p>
        {name} holds another state of “{kept.title || 'Without a title'}”, which this browser keeps
        {kept.thrown ? ' among those thrown away' : ''}. As a copy it stands beside it. In its place it is one step,
        which Undo takes back.
      </p>
    </Dialog>
  )
}
