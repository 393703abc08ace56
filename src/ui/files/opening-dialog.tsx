import { agreeToOpen, change, useStudio } from '../../state/index.ts'
import { WrongFile } from './wrong-file.tsx'

/** A design's file with something wrong in it waits for the person's word. */
export const OpeningDialog = () => {
  const opening = useStudio((s) => s.opening)
  if (!opening) return null
  const { name, problems, good } = opening
  const stems = good?.stems.length ?? 0
  return (
    <WrongFile
      name={name}
      problems={problems}
      good={good && `as a new design with ${stems} ${stems === 1 ? 'stem' : 'stems'}`}
      nothing="Your work is as it was."
      onOpen={agreeToOpen}
      onLeave={() => change({ opening: null })}
    />
  )
}
