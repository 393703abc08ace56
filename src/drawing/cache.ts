/** Things that were made before, the ones not asked for longest given up first. */
export interface Cache {
  /** Bytes that may be held. */
  limit: number
  bytes: number
  kept: Map<string, { value: unknown; bytes: number }>
}

/** 160 MB of sprites and solids: about six hundred fine sprites. Ours. */
const DEFAULT_LIMIT = 160 * 1024 * 1024

export const createCache = (limit: number = DEFAULT_LIMIT): Cache => ({ limit, bytes: 0, kept: new Map() })

/** What stands under `key`, or what `make` makes, remembered. Never holds more than `limit` bytes. */
export const remembered = <T>(cache: Cache, key: string, make: () => T, sizeOf: (value: T) => number): T => {
  const known = cache.kept.get(key)
  if (known) {
    // A Map keeps the order of insertion: putting it back last makes the first one the oldest.
    cache.kept.delete(key)
    cache.kept.set(key, known)
    return known.value as T
  }
  const value = make()
  const bytes = sizeOf(value)
  if (bytes > cache.limit) return value
  cache.kept.set(key, { value, bytes })
  cache.bytes += bytes
  for (const [oldest, { bytes: freed }] of cache.kept) {
    if (cache.bytes <= cache.limit) break
    cache.kept.delete(oldest)
    cache.bytes -= freed
  }
  return value
}
