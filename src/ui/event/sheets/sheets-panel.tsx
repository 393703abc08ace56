import { useMemo, useState } from 'react'
import { say, useStudio } from '../../../state/index.ts'
import { fileName } from '../../../storage/index.ts'
import { download } from '../../files/index.ts'
import { painter } from '../../painter.ts'
import { Button, SelectField } from '../../parts/index.ts'
import { canvasMeasure, type Faces } from '../../picture/paint.ts'
import { rastersOf } from '../../picture/rasters.ts'
import { useTools } from '../../picture/use-tools.ts'
import { type WorkedEvent, workedNow } from '../use-worked-event.ts'
import { type EventPage, eventPages, type SheetChoices } from './pages.ts'
import { SheetPreview } from './sheet-preview.tsx'
import './sheets.css'

const SIZES = [
  { value: 'a4' as const, words: 'A4' },
  { value: 'letter' as const, words: 'US Letter' },
]

/** All pages as one PDF, painted one after another: many at once would need the memory of all. */
const savePages = async (pages: readonly EventPage[], faces: Faces, title: string): Promise<void> => {
  say('Drawing the sheets …')
  try {
    const sheets = []
    for (const [i, { laid, document }] of pages.entries()) {
      const painted = await rastersOf({ document, laid, painter: painter(), scale: 1, lane: `sheet file ${i}` })
      if (!painted) return say('The sheets could not be made: other drawings came between. Ask for them again.')
      sheets.push({ laid, painted })
    }
    const { pdfPages } = await import('../../picture/pdf/index.ts')
    const words = `Sheets to work from: ${pages.map((p) => p.label).join('; ')}.`
    const blob = await pdfPages(sheets, faces, { title: title || 'The event', words })
    const name = fileName(title || 'event', '-sheets.pdf')
    download(blob, name)
    say(`Saved as ${name}: ${pages.length} ${pages.length === 1 ? 'page' : 'pages'}. Print it at 100 %.`)
  } catch (error) {
    say(`The sheets could not be made: ${error instanceof Error ? error.message : 'no reason was given'}.`)
  }
}

const TICKS = [
  ['order', 'what to buy'],
  ['days', 'day by day'],
  ['cutting', 'cut sheet'],
  ['bench', 'bench sheets, one for each design'],
  ['care', 'take care'],
  ['withCost', 'with the cost'],
] as const

/** What is printed to work from. */
export const SheetsPanel = ({ worked }: { worked: WorkedEvent }) => {
  const units = useStudio((s) => s.units)
  const tools = useTools()
  const [busy, setBusy] = useState(false)
  const [choices, setChoices] = useState<SheetChoices>(() => ({
    size: units === 'in' ? 'letter' : 'a4',
    bench: true,
    cutting: true,
    order: true,
    days: true,
    care: true,
    withCost: false,
  }))
  const laidOut = useMemo(
    () =>
      (of: WorkedEvent): EventPage[] =>
        tools ? eventPages(of, choices, { units, generalName: tools.general }, canvasMeasure(tools.faces)) : [],
    [choices, units, tools],
  )
  const pages = useMemo(() => laidOut(worked), [laidOut, worked])
  return (
    <div className="sheets">
      <div className="sheets-choices">
        <SelectField
          label="paper"
          value={choices.size}
          options={SIZES}
          onChange={(size) => setChoices({ ...choices, size })}
        />
        {TICKS.map(([key, words]) => (
          <label key={key} className="sheets-choice">
            <input
              type="checkbox"
              checked={choices[key]}
              onChange={(e) => setChoices({ ...choices, [key]: e.target.checked })}
            />{' '}
            {words}
          </label>
        ))}
        <Button
          kind="main"
          off={!tools || pages.length === 0 || busy}
          onClick={async () => {
            if (!tools) return
            setBusy(true)
            const now = workedNow(worked)
            await savePages(laidOut(now), tools.faces, now.event.title)
            setBusy(false)
          }}
        >
          {busy ? 'Drawing …' : `Download ${pages.length} ${pages.length === 1 ? 'page' : 'pages'} (PDF)`}
        </Button>
      </div>
      <p className="quiet">
        Print at 100 %, without “fit to page”, and lay a ruler on the scale at the foot before you cut by it. Then the
        right edge of bench and cut sheets measures stems.
      </p>
      <div className="sheets-pages">
        {tools
          ? pages.map(({ laid, document, label }, i) => (
              <SheetPreview
                key={label}
                document={document}
                laid={laid}
                faces={tools.faces}
                lane={`sheet ${i}`}
                label={label}
              />
            ))
          : null}
      </div>
    </div>
  )
}
