import { beginDesign, textOfDesign, useStudio } from '../../state/index.ts'
import { fileName } from '../../storage/index.ts'
import { download } from '../files/index.ts'
import { Button } from '../parts/index.ts'

const clock = (at: number): string => new Date(at).toLocaleTimeString([], { hour: '2-digit', minute: '2-digit' })

const downloadCopy = (): void => {
  const { text, title } = textOfDesign()
  download(new Blob([text], { type: 'application/json' }), fileName(title))
}

/** Whether the work is kept, in words. What is not kept stays on screen with a way to save it. */
export const SaveWords = () => {
  const save = useStudio((s) => s.save)
  if (save.state === 'failed')
    return (
      <span className="save failed">
        <b>Not kept:</b> {save.why}{' '}
        <Button kind="word" onClick={downloadCopy}>
          Download a copy
        </Button>
      </span>
    )
  if (save.state === 'elsewhere')
    return (
      <span className="save failed">
        Open in another tab, which keeps it. What is changed here is <b>not kept</b>.{' '}
        <Button kind="word" onClick={() => void beginDesign(useStudio.getState().document)}>
          Keep as a new design
        </Button>
      </span>
    )
  const words = {
    loading: 'opening …',
    saving: 'keeping …',
    saved: save.state === 'saved' && save.at > 0 ? `kept in this browser ${clock(save.at)}` : '',
  }[save.state]
  return <span className="save quiet">{words}</span>
}
