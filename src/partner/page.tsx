import { useEffect, useMemo, useState } from 'react'
import type { Light, Problem } from '../arrangement/index.ts'
import { loadColourNames } from '../colour/index.ts'
import { fingerprint, type Parcel } from '../storage/index.ts'
import { AnswerForm } from './answer-form.tsx'
import { offerName, Palettes } from './palettes.tsx'
import { Stage } from './stage.tsx'
import { dressedIn, LIGHT_WORDS, paletteWords, tell } from './tell.ts'
import type { OpenPort } from './use-stage.ts'
import './partner.css'

export interface PageProps {
  parcel: Parcel
  /** What could not be read of it. */
  problems: Problem[]
  /** Address of the tool, without a fragment; '' where it is not known. */
  home: string
  open: OpenPort
}

/** Dates and money follow the kind of English that the reader's browser asks for, as on the picture. */
const language = (): string => navigator.languages.find((l) => l.startsWith('en')) ?? 'en-GB'

/** General names for colours; their own figures until the names are there. */
const useGeneral = (): ((hex: string) => string) => {
  const [general, setGeneral] = useState<{ name: (hex: string) => string }>({ name: (hex) => hex })
  useEffect(() => {
    let live = true
    loadColourNames().then(
      ({ colourName }) => live && setGeneral({ name: colourName }),
      () => undefined,
    )
    return () => {
      live = false
    }
  }, [])
  return general.name
}

/** To what the partner sends back, by hand and by keyboard. */
const toAnswer = (): void => {
  const heading = document.getElementById('answer')
  heading?.focus({ preventScroll: true })
  heading?.scrollIntoView({ block: 'start' })
}

const LightChoice = ({ own, light, onLight }: { own: Light; light: Light; onLight: (light: Light) => void }) =>
  own === 'daylight' ? null : (
    <fieldset className="light">
      <legend className="unseen">In which light</legend>
      {[own, 'daylight' as const].map((l) => (
        <label key={l}>
          <input type="radio" name="light" checked={l === light} onChange={() => onLight(l)} />
          in {LIGHT_WORDS[l]}
        </label>
      ))}
    </fieldset>
  )

/** What the partner sees: the drawing to turn, the palettes to choose from, what is in it, and the way to answer. */
export const PartnerPage = ({ parcel, problems, home, open }: PageProps) => {
  const { design, offers, note } = parcel
  const [which, setWhich] = useState(0)
  const [chosen, setChosen] = useState<number | null>(null)
  const [light, setLight] = useState<Light>(design.setting.light)
  const general = useGeneral()
  const documents = useMemo(() => dressedIn(parcel), [parcel])
  const told = useMemo(
    () => tell(parcel, documents[which] ?? design, offers[which] ?? design.palette, language(), general),
    [parcel, documents, design, offers, which, general],
  )
  const words = useMemo(() => offers.map((o) => paletteWords(o, general)), [offers, general])
  const answer = useMemo(
    () => ({
      design: fingerprint(design),
      title: design.title,
      chosen: chosen === null ? null : (documents[chosen]?.palette ?? null),
    }),
    [design, documents, chosen],
  )
  useEffect(() => {
    document.title = told.title
  }, [told.title])
  const liked = chosen === which
  return (
    <main className="partner">
      <header>
        <h1>{told.title}</h1>
        <p>{told.subtitle}</p>
      </header>
      <div className="choosing">
        <section className="look" aria-label="The drawing">
          <Stage
            documents={documents}
            which={which}
            light={light}
            words={told.picture}
            aspect={told.aspect}
            open={open}
          />
          <LightChoice own={design.setting.light} light={light} onLight={setLight} />
        </section>
        <div className="beside">
          {note ? <blockquote>{note}</blockquote> : null}
          {problems.length > 0 ? (
            <p className="problem">
              {problems.length === 1 ? 'One thing' : `${problems.length} things`} in it could not be read and{' '}
              {problems.length === 1 ? 'is' : 'are'} not shown: it was made by another version of the tool.
            </p>
          ) : null}
          <Palettes offers={offers} words={words} which={which} chosen={chosen} onShow={setWhich} />
          <button
            type="button"
            className={liked ? 'choose liked' : 'choose main'}
            aria-pressed={liked}
            onClick={() => setChosen(liked ? null : which)}
          >
            I like this one
          </button>
          <p role="status" className="said">
            {chosen === null
              ? ''
              : `You like ${offerName(offers[chosen])}. Nothing is sent yet: your answer stands below, ready to be sent.`}
          </p>
          {chosen === null ? null : (
            <button type="button" className="word" onClick={toAnswer}>
              To your answer
            </button>
          )}
        </div>
      </div>
      <div className="answering">
        <AnswerForm answer={answer} home={home} />
        <section className="inside" aria-labelledby="inside">
          <h2 id="inside">What is in it</h2>
          <ul>
            {told.plants.map((p) => (
              <li key={`${p.name} ${p.colour} ${p.colourWord}`}>
                <span className="dot" style={{ background: p.colour }} aria-hidden="true" />
                <span>
                  {p.name} <i>{p.colourWord}</i>
                </span>
                <span className="count">{p.count}</span>
              </li>
            ))}
          </ul>
          <dl>
            {told.facts.map(([name, value]) => (
              <div key={name}>
                <dt>{name}</dt>
                <dd>{value}</dd>
              </div>
            ))}
          </dl>
          {told.caution ? (
            <p className="caution">
              <b>Take care.</b> {told.caution}
            </p>
          ) : null}
        </section>
      </div>
    </main>
  )
}
