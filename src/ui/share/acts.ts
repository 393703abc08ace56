import { say, textOfDesign } from '../../state/index.ts'
import { carryDesign, fileName } from '../../storage/index.ts'
import { download } from '../files/index.ts'
import { pageFile } from './page-file.ts'

/** Where the tool is, without what stands behind its #. */
export const home = (): string => location.href.split('#')[0]!

const why = (error: unknown): string => (error instanceof Error ? error.message : 'no reason was given')

/** Puts a link on the clipboard; false where the browser gives no leave. */
export const copyLink = async (link: string): Promise<boolean> => {
  try {
    await navigator.clipboard.writeText(link)
    say('The link is copied. Whoever has it can see the design.')
    return true
  } catch {
    return false
  }
}

/** Saves the page for the partner as one file that needs nothing else. */
export const savePage = async (fragment: string, title: string): Promise<void> => {
  try {
    const response = await fetch(`${import.meta.env.BASE_URL}partner-page.html`)
    if (!response.ok) throw new Error('the empty page is not to be had; are you connected?')
    const name = fileName(title, '.html')
    download(new Blob([pageFile(await response.text(), fragment, title, home())], { type: 'text/html' }), name)
    say(`Saved as ${name}. It opens in any browser, without a connection.`)
  } catch (error) {
    say(`The page could not be made: ${why(error)}.`)
  }
}

/** Saves a picture that carries the whole design, to be opened here again. */
export const saveEditable = async (png: () => Promise<Blob | null>): Promise<void> => {
  say('Drawing the picture …')
  try {
    const { text, title } = textOfDesign()
    const blob = await png()
    if (!blob) return say('The picture was not made: another one came in between.')
    const made = await carryDesign(new Uint8Array(await blob.arrayBuffer()), text)
    if (!made.ok) return say(made.message)
    const name = fileName(title, ' (editable).png')
    download(new Blob([made.value], { type: 'image/png' }), name)
    say(`Saved as ${name}. It carries the whole design: “Open a file” opens it again.`)
  } catch (error) {
    say(`The picture could not be made: ${why(error)}.`)
  }
}
