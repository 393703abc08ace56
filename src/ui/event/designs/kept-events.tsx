import { useEffect, useState } from 'react'
import {
  type KeptEvent,
  openEvent,
  putEventBack,
  rawEvent,
  refreshEvents,
  removeEvent,
  say,
  throwEventAway,
  useEvent,
} from '../../../state/index.ts'
import { fileName } from '../../../storage/index.ts'
import { download } from '../../files/index.ts'
import { Button } from '../../parts/index.ts'
import { count, whenWords } from '../words.ts'
import { EventFiles } from './event-files.tsx'

const nameOf = ({ title, readable }: Pick<KeptEvent, 'title' | 'readable'>): string =>
  readable ? title || 'Without a title' : 'An event that can’t be read'

const saveAsItIs = async (id: string): Promise<void> => {
  const text = await rawEvent(id)
  if (text === null) return say('The event is no longer there.')
  download(new Blob([text], { type: 'text/plain' }), fileName('event as it was kept', '.txt'))
}

const When = ({ date }: { date: string }) => <span className="dim">{whenWords(date) || 'no date yet'}</span>

/** One of the events; after a press that takes its row away, the keyboard stands at the head of the list. */
const Row = ({ kept, onGone }: { kept: KeptEvent; onGone: () => void }) => {
  const { id, date, readable } = kept
  const name = nameOf(kept)
  return (
    <li>
      {readable ? (
        <button type="button" className="event-open" onClick={() => void openEvent(id)}>
          <span>{name}</span> <When date={date} />
        </button>
      ) : (
        <span className="event-open">
          <span>{name}</span>
        </span>
      )}
      {readable ? null : (
        <Button kind="word" onClick={() => void saveAsItIs(id)}>
          save it as it is
        </Button>
      )}
      <Button
        kind="word"
        aria-label={`Throw ${name} away`}
        onClick={() => {
          onGone()
          void throwEventAway(id)
        }}
      >
        throw away
      </Button>
    </li>
  )
}

const ThrownRow = ({ kept, onGone }: { kept: KeptEvent; onGone: () => void }) => {
  const [sure, setSure] = useState(false)
  const name = nameOf(kept)
  return (
    <li>
      <span className="event-open">
        <span>{name}</span> <When date={kept.date} />
      </span>
      <Button
        kind="word"
        aria-label={`Put ${name} back`}
        onClick={() => {
          onGone()
          void putEventBack(kept.id)
        }}
      >
        put back
      </Button>
      {sure ? (
        <>
          <Button
            onClick={() => {
              onGone()
              void removeEvent(kept.id)
            }}
          >
            Remove for good
          </Button>
          <Button onClick={() => setSure(false)}>Keep it</Button>
        </>
      ) : (
        <Button kind="word" aria-label={`Remove ${name}`} onClick={() => setSure(true)}>
          remove
        </Button>
      )}
    </li>
  )
}

/** The event that is open, as it is now. */
const Open = ({ onGone }: { onGone: () => void }) => {
  const { id, title, date } = useEvent((s) => s.event)
  const isKept = useEvent((s) => s.kept.some((e) => e.id === id))
  return (
    <li aria-current="true">
      <span className="event-open">
        <span>{title || 'Without a title'}</span> <When date={date} />
        <span className="dim">open now{isKept ? '' : '; kept from the first change on'}</span>
      </span>
      {isKept ? (
        <Button
          kind="word"
          aria-label={`Throw ${title || 'Without a title'} away`}
          onClick={() => {
            onGone()
            void throwEventAway(id)
          }}
        >
          throw away
        </Button>
      ) : null}
    </li>
  )
}

/** The events of this browser, one of them open: another is opened, thrown away and put back here. */
export const KeptEvents = () => {
  const open = useEvent((s) => s.event.id)
  const kept = useEvent((s) => s.kept)
  useEffect(() => void refreshEvents(), [])
  const others = kept.filter((e) => e.id !== open && !e.thrown)
  const thrown = kept.filter((e) => e.id !== open && e.thrown)
  const toHead = (): void => document.getElementById('kept-events')?.focus()
  return (
    <section className="event-list" aria-labelledby="kept-events">
      <div className="event-list-head">
        <h2 id="kept-events" tabIndex={-1}>
          Your events, kept in this browser
        </h2>
        <EventFiles />
      </div>
      <ul>
        <Open onGone={toHead} />
        {others.map((e) => (
          <Row key={e.id} kept={e} onGone={toHead} />
        ))}
      </ul>
      {thrown.length > 0 ? (
        <details className="order-fold">
          <summary>Thrown away: {count(thrown.length, 'event', 'events')}</summary>
          <ul>
            {thrown.map((e) => (
              <ThrownRow key={e.id} kept={e} onGone={toHead} />
            ))}
          </ul>
        </details>
      ) : null}
    </section>
  )
}
