import { type DBSchema, type IDBPDatabase, openDB } from 'idb'
import type { Records, Table } from './records.ts'

interface Schema extends DBSchema {
  designs: { key: string; value: unknown }
  settings: { key: string; value: unknown }
}

const NAME = 'pedicel'
const VERSION = 1

/** Errors after which another try on a fresh connection makes sense: browsers drop connections of pages in the background. */
const CONNECTION_LOST = ['InvalidStateError', 'UnknownError']

const isLost = (error: unknown): boolean => error instanceof Error && CONNECTION_LOST.includes(error.name)

/** Records in the browser's own database. A dead connection is opened anew, once for each call. */
export const databaseRecords = (name: string = NAME): Records => {
  let opening: Promise<IDBPDatabase<Schema>> | null = null

  const forget = (): void => {
    opening = null
  }
  const open = (): Promise<IDBPDatabase<Schema>> => {
    if (opening) return opening
    const attempt = new Promise<IDBPDatabase<Schema>>((resolve, reject) => {
      openDB<Schema>(name, VERSION, {
        upgrade: (db) => {
          for (const drawer of ['designs', 'settings'] as const)
            if (!db.objectStoreNames.contains(drawer)) db.createObjectStore(drawer)
        },
        blocked: () => reject(new Error('Another tab holds an older store open')),
        blocking: (_, __, event) => {
          // A newer Pedicel in another tab wants to change the store: let it.
          ;(event.target as IDBDatabase).close()
          forget()
        },
        terminated: forget,
      }).then(resolve, reject)
    })
    opening = attempt
    attempt.catch(() => {
      if (opening === attempt) forget()
    })
    return attempt
  }

  const once: Records['transact'] = async (drawer, mode, work) => {
    const db = await open()
    const tx = db.transaction(drawer, mode, mode === 'readwrite' ? { durability: 'strict' } : {})
    // Looked at below; without this an abort while `work` waits would count as nobody's.
    tx.done.catch(() => {})
    const rows = tx.objectStore(drawer)
    const table: Table = {
      get: (key) => rows.get(key),
      put: async (key, value) => rows.put?.(value, key),
      remove: async (key) => rows.delete?.(key),
      all: async () => {
        const [keys, values] = await Promise.all([rows.getAllKeys(), rows.getAll()])
        return keys.map((key, i) => [String(key), values[i]])
      },
    }
    try {
      const result = await work(table)
      await tx.done
      return result
    } catch (error) {
      try {
        tx.abort()
      } catch {
        // It has ended by itself.
      }
      throw tx.error ?? error
    }
  }

  return {
    transact: async (drawer, mode, work) => {
      try {
        return await once(drawer, mode, work)
      } catch (error) {
        if (!isLost(error)) throw error
        forget()
        return once(drawer, mode, work)
      }
    },
  }
}
