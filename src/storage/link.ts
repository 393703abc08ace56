import type { Known, Problem } from '../arrangement/index.ts'
import type { Got } from './packing.ts'
import { type Parcel, readParcel, writeParcel } from './parcel.ts'
import { seal, unseal } from './sealed.ts'

/** The name of the fragment that holds a design for the partner. */
export const SHOW = '#show='

/** Longer links are cut by some messengers and mail programs: common practice, no published limit holds for all. */
export const LONG_LINK = 8000

/** A parcel as the fragment of a link, `#show=2.…`. A fragment is not sent to the site that the link names (RFC 3986, 3.5). */
export const showFragment = async (parcel: Parcel): Promise<Got<string>> => {
  const sealed = await seal(writeParcel(parcel))
  return sealed.ok ? { ok: true, value: SHOW + sealed.value } : sealed
}

/** What a fragment holds, or in words why it can't be read. */
export const readShow = async (
  fragment: string,
  known: Known,
): Promise<Got<{ parcel: Parcel; problems: Problem[] }>> => {
  if (!fragment.startsWith(SHOW)) return { ok: false, message: 'There is no design in this link.' }
  const text = await unseal(fragment.slice(SHOW.length))
  return text.ok ? readParcel(text.value, known) : text
}
