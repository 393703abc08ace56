import { useEffect, useId, useMemo, useRef, useState } from 'react'
import { LIMITS } from '../../arrangement/index.ts'
import { say, useHousePalettes, useOwnPalettes, useStudio } from '../../state/index.ts'
import { LONG_LINK, type Parcel, showFragment } from '../../storage/index.ts'
import { Button } from '../parts/index.ts'
import { copyLink, home, saveEditable, savePage } from './acts.ts'
import { Offers } from './offers.tsx'
import { OpenAnswer } from './open-field.tsx'
import { parcelOf, type Ticks } from './parcel-of.ts'
import './share.css'

/** What was ticked last stays for as long as the page is open. */
let kept: Ticks = { offered: [], prices: false, note: false, words: '' }

const NONE = { fragment: '', problem: '' }

/** The fragment for a parcel, anew with every change; '' until it is there, with the reason where it can't be. */
const useFragment = (parcel: Parcel): { fragment: string; problem: string } => {
  const [made, setMade] = useState<{ of: Parcel | null; fragment: string; problem: string }>({ of: null, ...NONE })
  useEffect(() => {
    let live = true
    showFragment(parcel).then((got) => {
      if (live) setMade({ of: parcel, ...NONE, ...(got.ok ? { fragment: got.value } : { problem: got.message }) })
    })
    return () => {
      live = false
    }
  }, [parcel])
  // The link of a moment ago may hold what goes along no more.
  return made.of === parcel ? made : NONE
}

/**
 * What goes to the partner and comes back from them.
 * @param png paints the ordinary picture
 */
export const SharePanel = ({ png }: { png: () => Promise<Blob | null> }) => {
  const id = useId()
  const document = useStudio((s) => s.document)
  const units = useStudio((s) => s.units)
  const prices = useStudio((s) => s.prices)
  const [own, house] = [useOwnPalettes(), useHousePalettes()]
  const known = useMemo(() => [...own, ...house], [own, house])
  const [ticks, setTicks] = useState(kept)
  const [busy, setBusy] = useState(false)
  const field = useRef<HTMLTextAreaElement>(null)
  const tick = (part: Partial<Ticks>): void => {
    kept = { ...ticks, ...part }
    setTicks(kept)
  }
  const parcel = useMemo(() => parcelOf(document, known, ticks, units, prices), [document, known, ticks, units, prices])
  const { fragment, problem } = useFragment(parcel)
  const link = fragment ? home() + fragment : ''
  const working = (work: Promise<void>): void => {
    setBusy(true)
    void work.finally(() => setBusy(false))
  }
  return (
    <section className="share" aria-labelledby={id}>
      <h2 id={id}>For your partner</h2>
      <p className="advice">
        A page that opens on any phone, without this tool. They turn the arrangement, look at the palettes you offer,
        choose one and write back.
      </p>
      <Offers
        known={known}
        now={document.palette.name}
        offered={ticks.offered.filter((n) => n !== document.palette.name && known.some((p) => p.name === n))}
        onOffer={(offered) => tick({ offered })}
      />
      <label className="picture-choice">
        <input type="checkbox" checked={ticks.prices} onChange={(e) => tick({ prices: e.target.checked })} /> with what
        the flowers cost
      </label>
      <label className="picture-choice">
        <input type="checkbox" checked={ticks.note} onChange={(e) => tick({ note: e.target.checked })} /> with a note
        from you
      </label>
      {ticks.note ? (
        <>
          <label htmlFor={`${id}n`} className="unseen">
            Your note
          </label>
          <textarea
            id={`${id}n`}
            rows={3}
            value={ticks.words}
            onChange={(e) => tick({ words: [...e.target.value].slice(0, LIMITS.text).join('') })}
          />
        </>
      ) : null}
      <div className="field-line">
        <Button
          off={!link}
          onClick={async () => {
            if (await copyLink(link)) return
            field.current?.select()
            say('The link is selected: copy it with the keyboard.')
          }}
        >
          Copy a link
        </Button>
        <Button off={!fragment || busy} onClick={() => working(savePage(fragment, document.title))}>
          Save a page
        </Button>
      </div>
      <label htmlFor={`${id}l`} className="quiet">
        {problem || (link ? `The link, ${link.length.toLocaleString('en')} characters` : 'The link …')}
      </label>
      <textarea id={`${id}l`} ref={field} rows={2} readOnly value={link} />
      {link.length > LONG_LINK ? (
        <p className="share-problem">
          Some messengers cut links of over {LONG_LINK.toLocaleString('en')} characters: save the page and send that.
        </p>
      ) : null}
      {/* The iPhone's preview: from memory, not tried. */}
      <p className="quiet">
        Nothing is sent anywhere: link and page hold the design themselves. Whoever has one can see it. To an iPhone
        send the link: a page that comes as a file is often only previewed there, and a preview does not draw.
      </p>
      <h3>A picture that can be opened again</h3>
      <p className="quiet">
        The picture above carries nothing but itself. This one carries the whole design; many messengers take it out, so
        send it as a file.
      </p>
      <Button off={busy} onClick={() => working(saveEditable(png))}>
        Save an editable picture
      </Button>
      <OpenAnswer />
    </section>
  )
}
