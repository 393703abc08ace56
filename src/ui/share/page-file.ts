import { SHOW } from '../../storage/index.ts'

const escaped = (text: string): string => text.replace(/[&<>"']/g, (c) => `&#${c.charCodeAt(0)};`)

/** Puts words into the one place that is there for them; throws where it is not the page that it should be. */
const put = (html: string, from: string, to: string): string => {
  if (html.split(from).length !== 2) throw new Error('the empty page that came with the tool is not right')
  return html.replace(from, () => to)
}

/**
 * The page for the partner as one file, with its design.
 * @param empty the page as it is built, without a design
 * @param fragment what a link to the design has behind its #
 * @param home address of the tool, for the link to an answer; left out unless it is one that others can open
 */
export const pageFile = (empty: string, fragment: string, title: string, home: string): string => {
  const filled = put(
    empty,
    '<meta name="pedicel-show" content="">',
    `<meta name="pedicel-show" content="${escaped(fragment.slice(SHOW.length))}">`,
  )
  const named = put(
    filled,
    '<title>For the table</title>',
    `<title>${escaped(title.trim() || 'For the table')}</title>`,
  )
  if (!/^https?:\/\/(?!localhost|127\.|\[::1\])/.test(home)) return named
  return put(named, '<meta name="pedicel-home" content="">', `<meta name="pedicel-home" content="${escaped(home)}">`)
}
