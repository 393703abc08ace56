import type { Arrangement } from './types.ts'

/**
 * Ids for new stems, short and free: `s1`, `s2` … one past the highest number in use, so that the id of a stem taken
 * out does not soon name another.
 */
export const newStemIds = (document: Pick<Arrangement, 'stems'>, count: number): string[] => {
  const taken = new Set(document.stems.map((s) => s.id))
  let number = 0
  for (const id of taken) {
    const match = /^s(\d{1,6})$/.exec(id)
    if (match) number = Math.max(number, Number(match[1]))
  }
  const ids: string[] = []
  while (ids.length < count) {
    number += 1
    if (!taken.has(`s${number}`)) ids.push(`s${number}`)
  }
  return ids
}

/** One id for a new stem. */
export const newStemId = (document: Pick<Arrangement, 'stems'>): string => newStemIds(document, 1)[0]!
