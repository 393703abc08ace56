/** Names that one widespread system keeps for devices, whatever the ending. */
const RESERVED = /^(con|prn|aux|nul|com\d|lpt\d)$/i

/**
 * A name for the file of a design: its title without what some system can't have in a name (separators, control and
 * invisible characters, leading and trailing dots), at most 80 characters, and the ending.
 */
export const fileName = (title: string, ending = '.json'): string => {
  const plain = title
    .normalize('NFC')
    .replace(/[\p{C}<>:"/\\|?*]+/gu, ' ')
    .replace(/\s+/g, ' ')
  const cut = [...plain.replace(/^[. ]+/, '')].slice(0, 80).join('')
  const name = cut.replace(/[. ]+$/, '')
  if (!name) return `arrangement${ending}`
  // The system looks only at what stands before the first dot.
  return RESERVED.test(name.split('.')[0]!.trim()) ? `design ${name}${ending}` : `${name}${ending}`
}

/** A name that no other page or design has. Not `randomUUID`, which a page served without TLS does not have. */
export const newName = (): string => crypto.getRandomValues(new Uint32Array(4)).join('-')
