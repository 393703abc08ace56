import { claimDesign, type Release } from '../storage/index.ts'

/** What this page claims, by the design, and how many hold it. */
const claims = new Map<string, { asked: Promise<Release | null>; holders: number }>()

/**
 * Claims a design for this page. What is asked for twice, or again before it was given back, is claimed once: else the page
 * would take itself for another tab.
 * @returns gives this hold of the claim back; null where another tab has it
 */
export const claimForPage = async (id: string): Promise<Release | null> => {
  const claim = claims.get(id) ?? { asked: claimDesign(id), holders: 0 }
  claim.holders += 1
  claims.set(id, claim)
  const release = await claim.asked
  const done = (): void => {
    claim.holders -= 1
    if (claim.holders > 0) return
    claims.delete(id)
    release?.()
  }
  if (release) return done
  done()
  return null
}
