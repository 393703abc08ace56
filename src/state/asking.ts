export interface Asking {
  /** Asks for one by its key, '' for one without; what was asked for before comes no more. @returns whether nothing else was asked for since */
  askFor(id?: string): () => boolean
  /** The key that was asked for last; it may have come by now. */
  asked(): string
  /** One that is on its way comes no more, if it is this one. */
  drop(id: string): void
}

/** Of what is asked for one after another, the last is what comes. */
export const asking = (): Asking => {
  let last = { id: '' }
  const askFor = (id = ''): (() => boolean) => {
    const mine = { id }
    last = mine
    return () => mine === last
  }
  return { askFor, asked: () => last.id, drop: (id) => void (last.id === id && askFor()) }
}
