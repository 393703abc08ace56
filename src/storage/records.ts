/** The two drawers of the store. */
export type Drawer = 'designs' | 'settings'

/** One drawer inside one transaction. */
export interface Table {
  get(key: string): Promise<unknown>
  put(key: string, value: unknown): Promise<unknown>
  remove(key: string): Promise<unknown>
  all(): Promise<[key: string, value: unknown][]>
}

/**
 * Keyed records with transactions: all that a place to store designs has to offer. `transact` resolves only when the
 * transaction has completed; when it rejects, nothing of it is in force (or, where the answer got lost, all of it).
 * `work` may wait for nothing but the table.
 */
export interface Records {
  transact<T>(drawer: Drawer, mode: 'readonly' | 'readwrite', work: (table: Table) => Promise<T>): Promise<T>
}
