import { StrictMode } from 'react'
import { createRoot } from 'react-dom/client'
import { say, startKeeping, startReading } from '../state/index.ts'
import { App } from './app.tsx'
import { keepFocus } from './keep-focus.ts'
import './fonts/fonts.css'
import './theme/tokens.css'
import './theme/base.css'

startReading()
startKeeping().catch((why: unknown) => say(`What this browser keeps could not be read: ${String(why)}`))
keepFocus()

const root = document.getElementById('root')
if (root)
  createRoot(root).render(
    <StrictMode>
      <App />
    </StrictMode>,
  )
