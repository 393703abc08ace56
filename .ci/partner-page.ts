import { createHash } from 'node:crypto'
import { Script } from 'node:vm'
import react from '@vitejs/plugin-react'
import { build, type Plugin } from 'vite'

/** Where the page without a design lies in the built site; the tool fetches it when it is asked to save one. */
const NAME = 'partner-page.html'
const ENTRY = 'src/ui/shown/file.ts'

const LICENCE =
  'Letters: Newsreader, Copyright 2020 The Newsreader Project Authors; Ysabeau Office, Copyright 2023 The Ysabeau Project Authors. Both under the SIL Open Font License 1.1, https://openfontlicense.org'

/**
 * What stands there until the script has drawn. A script that was cut or changed on the way does not run at all, nor does one
 * in a preview; styles come after these words, so that they are there in whatever is left of the page.
 */
const LATE =
  'The drawing comes in a moment. If it does not: this page was cut or changed on its way, or it is only a preview of it. Open it in a browser, or ask for it again, as a link.'

const sumOf = (text: string): string => `'sha256-${createHash('sha256').update(text).digest('base64')}'`

/** Script text as it may stand inside an element: nothing in it ends the element or begins a comment. */
const insideScript = (code: string): string => {
  const safe = code
    .replace(/<\/(script)/gi, '<\\/$1')
    .replace(/<!--/g, '\\x3c!--')
    .trim()
  // Throws where one of these stood outside of a string.
  new Script(safe)
  return safe
}

/** One file that holds script, styles and letters. Its policy names the sums of both, so nothing else in it can run; no network. */
const compose = (code: string, css: string): string => {
  const [script, style] = [insideScript(code), css.trim()]
  const policy = `default-src 'none'; script-src ${sumOf(script)}; worker-src blob:; style-src ${sumOf(style)}; font-src data:; img-src data:; form-action 'none'; base-uri 'none'`
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="referrer" content="no-referrer">
<meta name="color-scheme" content="light">
<meta name="theme-color" content="#e4e4e4">
<meta name="pedicel-home" content="">
<meta name="pedicel-show" content="">
<title>For the table</title>
<link rel="icon" href="data:,">
<!-- ${LICENCE} -->
</head>
<body>
<div id="root"><p class="late">${LATE}</p></div>
<noscript>This page draws by itself, and needs JavaScript for it. It asks nothing of the network.</noscript>
<style>${style}</style>
<script>${script}</script>
</body>
</html>
`
}

const make = async (root: string): Promise<string> => {
  const made = await build({
    root,
    configFile: false,
    logLevel: 'error',
    publicDir: false,
    plugins: [react()],
    define: { 'process.env.NODE_ENV': '"production"' },
    build: {
      write: false,
      target: 'es2023',
      assetsInlineLimit: () => true,
      lib: { entry: ENTRY, formats: ['iife'], name: 'pedicelPage', cssFileName: 'page' },
    },
  })
  const files = [made].flat().flatMap((m) => ('output' in m ? m.output : []))
  const scripts = files.flatMap((f) => (f.type === 'chunk' ? [f.code] : []))
  const styles = files.flatMap((f) => (f.type === 'asset' && f.fileName.endsWith('.css') ? [String(f.source)] : []))
  if (scripts.length !== 1 || styles.length !== 1 || files.length !== 2)
    throw new Error(`the partner's page came out as ${files.map((f) => f.fileName).join(', ')}`)
  return compose(scripts[0]!, styles[0]!)
}

/** Makes the page for the partner as one file beside the site; while developing, whenever it is asked for. */
export const partnerPage = (): Plugin => {
  let root = ''
  return {
    name: 'pedicel-partner-page',
    configResolved: (config) => {
      root = config.root
    },
    async generateBundle() {
      this.emitFile({ type: 'asset', fileName: NAME, source: await make(root) })
    },
    configureServer: (server) => {
      server.middlewares.use(`/${NAME}`, (_, answer, next) => {
        make(root).then((html) => {
          answer.setHeader('content-type', 'text/html')
          answer.end(html)
        }, next)
      })
    },
  }
}
