import './fonts/fonts.css'
import './theme/tokens.css'

const root = document.getElementById('root')

// A link that holds a design brings only the page that shows it (the same word as in storage's link.ts), else the tool comes.
if (root && location.hash.startsWith('#show=')) void import('./shown/link.ts').then(({ showLink }) => showLink(root))
else if (root) void import('./tool.tsx').then(({ startTool }) => startTool(root))
