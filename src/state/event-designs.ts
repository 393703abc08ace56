import { type Arrangement, writeArrangement } from '../arrangement/index.ts'
import type { EventPart, WholeEvent } from '../event/index.ts'
import { keepAside } from './design-opening.ts'
import { type EventState, useEvent } from './event-store.ts'
import { store } from './kept-store.ts'
import { useStudio } from './store.ts'

const { getState: get, setState: set } = useEvent

/** The designs of these parts as this browser keeps them now, and which are missing. */
export const lookUp = async (parts: readonly EventPart[]): Promise<Pick<EventState, 'designs' | 'missing'>> => {
  const designs: Record<string, Arrangement> = {}
  const missing: string[] = []
  await Promise.all(
    parts.map(async ({ design }) => {
      const result = await store.load(design)
      if (result.ok) designs[design] = result.document
      else if (design !== useStudio.getState().designId) missing.push(design)
    }),
  )
  return { designs, missing }
}

/** Fetches the designs that the event names. */
export const fetchDesigns = async (): Promise<void> => {
  for (;;) {
    const { parts, id } = get().event
    const found = await lookUp(parts)
    // Another event may have been opened while this browser looked, or a design put in: then that is looked for.
    if (get().event.id !== id) return
    if (get().event.parts === parts) return set(found)
  }
}

/** The designs that are at hand, the open one as it is in the tool. */
export const designsAtHand = (): Record<string, Arrangement> => {
  const { designId, document } = useStudio.getState()
  const { designs } = get()
  return designId ? { ...designs, [designId]: document } : designs
}

/** The event as it stands, with its designs. */
export const wholeEvent = (): WholeEvent => ({ ...get().event, designs: designsAtHand() })

/** A design of this browser that is equal to this one and not taken, if there is: first the one of the same key. */
const equalKept = async (document: Arrangement, key: string, taken: readonly string[]): Promise<string | null> => {
  const text = writeArrangement(document)
  const lies = async (id: string): Promise<boolean> => {
    if (taken.includes(id)) return false
    const there = await store.raw(id)
    return there.ok && there.text === text
  }
  if (await lies(key)) return key
  const list = await store.list()
  const alike = list.ok ? list.designs : []
  for (const { id, title, stems } of alike)
    if (title === document.title && stems === document.stems.length && (await lies(id))) return id
  return null
}

/** The event's parts with the keys that their designs have in this browser; '' for those that it does not keep. */
export const keptKeys = async ({ designs, parts }: WholeEvent): Promise<string[]> => {
  const keys: string[] = []
  for (const { design } of parts) keys.push((await equalKept(designs[design]!, design, keys)) ?? '')
  return keys
}

/** Keeps the designs of a file that this browser does not have, and gives the plan with their keys; null if it could not keep one. */
export const settled = async (file: WholeEvent): Promise<Omit<WholeEvent, 'designs'> | null> => {
  const { designs, ...plan } = file
  const keys = await keptKeys(file)
  for (const [i, { design }] of plan.parts.entries()) {
    const id = keys[i] || (await keepAside(designs[design]!))
    if (id === null) return null
    keys[i] = id
  }
  return { ...plan, parts: plan.parts.map((part, i) => ({ ...part, design: keys[i]! })) }
}
