import { openSheet, perform, type Sheet, undo, useHistory, useStudio } from '../../state/index.ts'
import { Button, TextField } from '../parts/index.ts'

export const SHEETS: readonly { sheet: Sheet; words: string }[] = [
  { sheet: 'drawing', words: 'Drawing' },
  { sheet: 'palettes', words: 'Palettes' },
  { sheet: 'picture', words: 'Picture' },
  { sheet: 'event', words: 'Event' },
]

/** The way round the tool, at the foot. */
export const PhoneFoot = () => {
  const now = useStudio((s) => s.sheet)
  return (
    <nav className="phone-foot" aria-label="Sheets">
      {SHEETS.map(({ sheet, words }) => (
        <button
          key={sheet}
          type="button"
          aria-current={sheet === now ? 'page' : undefined}
          onClick={() => openSheet(sheet)}
        >
          {words}
        </button>
      ))}
    </nav>
  )
}

/** Title and undo. */
export const PhoneHead = () => {
  const title = useStudio((s) => s.document.title)
  const { undo: last } = useHistory()
  return (
    <header className="phone-head">
      <TextField
        className="title"
        label="Title of the design"
        hideLabel
        value={title}
        onCommit={(to) => perform({ do: 'set-title', title: to })}
      />
      <Button off={!last} onClick={undo} aria-label={last ? `Undo: ${last}` : 'Undo: nothing yet'}>
        Undo
      </Button>
    </header>
  )
}
