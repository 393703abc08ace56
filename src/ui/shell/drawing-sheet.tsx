import { lazy, type ReactNode, Suspense, useState } from 'react'
import { useStudio } from '../../state/index.ts'
import { StemColumn } from '../list/index.ts'
import { ReadingsColumn } from '../readings/index.ts'
import { PhoneFoot, PhoneHead } from './phone-foot.tsx'
import { Frame } from './sheet-frame.tsx'
import { TitleBlock } from './title-block.tsx'
import { PHONE, useMedia, WIDE } from './use-media.ts'
import { Views } from './views-slot.tsx'

const PhoneReadings = lazy(async () => ({ default: (await import('../readings/phone-readings.tsx')).PhoneReadings }))

/** The name of the page, for ears: the eye has it in the title block. */
const Heading = () => <h1 className="unseen">{useStudio((s) => s.document.title) || 'Untitled'}, drawing</h1>

const Part = ({ name, label, children }: { name: string; label: string; children: ReactNode }) => (
  <section className={`column ${name}`} id={name} aria-label={label} tabIndex={-1}>
    {children}
  </section>
)

interface SwitchProps {
  words: readonly string[]
  at: number
  onTurn: (to: number) => void
}
/** Words to switch between the columns that find no room beside each other. */
const Switch = ({ words, at, onTurn }: SwitchProps) => (
  <nav className="switch" aria-label="Below the drawing">
    {words.map((word, i) => (
      <button key={word} type="button" aria-pressed={i === at} onClick={() => onTurn(i)}>
        {word}
      </button>
    ))}
  </nav>
)

const SkipLinks = () => (
  <nav className="skip" aria-label="Skip to">
    <a href="#stems">To the stems</a>
    <a href="#readings">To the readings</a>
    <a href="#views">To the drawing</a>
  </nav>
)

const Three = () => (
  <div className="sheet three">
    <SkipLinks />
    <Heading />
    <Frame />
    <Part name="readings" label="Readings">
      <ReadingsColumn />
    </Part>
    <main className="column views" id="views" tabIndex={-1}>
      <Views />
    </main>
    <div className="column side">
      <Part name="stems" label="Stems and palette">
        <StemColumn />
      </Part>
      <TitleBlock />
    </div>
  </div>
)

const Two = () => {
  const [at, setAt] = useState(0)
  return (
    <div className="sheet two">
      <SkipLinks />
      <Heading />
      <Frame />
      <main className="column views" id="views" tabIndex={-1}>
        <Views />
      </main>
      <div className="column side">
        <Switch words={['Stems', 'Readings']} at={at} onTurn={setAt} />
        {at === 0 ? (
          <Part name="stems" label="Stems and palette">
            <StemColumn />
          </Part>
        ) : (
          <Part name="readings" label="Readings">
            <ReadingsColumn />
          </Part>
        )}
        <TitleBlock />
      </div>
    </div>
  )
}

const Phone = () => {
  const [at, setAt] = useState(0)
  return (
    <div className="sheet phone">
      <Heading />
      <PhoneHead />
      <main className="column views" id="views" tabIndex={-1}>
        <Views />
      </main>
      <Switch words={['Readings', 'Stems and palette', 'Title']} at={at} onTurn={setAt} />
      <div className="phone-low">
        {at === 0 ? (
          <Part name="readings" label="Readings">
            <Suspense fallback={null}>
              <PhoneReadings />
            </Suspense>
          </Part>
        ) : at === 1 ? (
          <Part name="stems" label="Stems and palette">
            <StemColumn />
          </Part>
        ) : (
          <TitleBlock bare />
        )}
      </div>
      <PhoneFoot />
    </div>
  )
}

/** The drawing sheet, as the width allows. A new design is a new page: nothing of the last one stays open. */
export const DrawingSheet = () => {
  const design = useStudio((s) => s.designId)
  const phone = useMedia(PHONE)
  const wide = useMedia(WIDE)
  return phone ? <Phone key={design} /> : wide ? <Three key={design} /> : <Two key={design} />
}
