import { perform, useStudio } from '../../state/index.ts'
import { Button } from '../parts/index.ts'

/** Says that bands of the person's own are in force, and takes the table's back. Nothing where there are none. */
export const OwnBandsWords = ({ lead }: { lead: string }) => {
  const bands = useStudio((s) => s.document.bands)
  const names = Object.keys(bands ?? {})
  if (names.length === 0) return null
  const back = (): void =>
    perform({
      do: 'many',
      label: 'bands of the table taken back',
      edits: names.map((name) => ({ do: 'set-band', name, ends: null })),
    })
  return (
    <>
      {`${lead} ${names.length} ${names.length === 1 ? 'band' : 'bands'} of your own `}
      <Button kind="word" onClick={back}>
        back to the table’s
      </Button>
    </>
  )
}
