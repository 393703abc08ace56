import { readdirSync, readFileSync } from 'node:fs'
import { dirname, join, relative, resolve, sep } from 'node:path'
import { describe, expect, it } from 'vitest'

/** What each room may import from; data runs one way, so this has no cycle. */
const MAY_IMPORT: Record<string, string[]> = {
  units: [],
  arrangement: [],
  colour: [],
  catalogue: ['arrangement'],
  geometry: ['arrangement', 'catalogue', 'colour'],
  readings: ['arrangement', 'catalogue', 'colour', 'geometry', 'units'],
  event: ['arrangement', 'catalogue'],
  'stem-list': ['arrangement', 'catalogue', 'colour', 'geometry', 'units'],
  'work-plan': ['arrangement', 'catalogue', 'geometry', 'readings', 'event', 'stem-list'],
  drawing: ['arrangement', 'catalogue', 'colour', 'geometry'],
  telling: ['arrangement', 'catalogue', 'geometry'],
  storage: ['arrangement'],
  state: [
    'arrangement',
    'catalogue',
    'colour',
    'event',
    'geometry',
    'readings',
    'stem-list',
    'work-plan',
    'drawing',
    'storage',
    'units',
  ],
  partner: ['arrangement', 'catalogue', 'colour', 'geometry', 'stem-list', 'drawing', 'telling', 'storage', 'units'],
  inspect: ['arrangement', 'catalogue', 'geometry', 'readings', 'event', 'stem-list', 'work-plan'],
  ui: [
    'arrangement',
    'catalogue',
    'colour',
    'geometry',
    'readings',
    'event',
    'stem-list',
    'work-plan',
    'drawing',
    'telling',
    'storage',
    'state',
    'partner',
    'units',
  ],
}
const PURE = [
  'units',
  'arrangement',
  'colour',
  'catalogue',
  'geometry',
  'event',
  'readings',
  'stem-list',
  'work-plan',
  'drawing',
  'telling',
]
const SRC = resolve(import.meta.dirname, '../../src')

const filesOf = (folder: string): string[] =>
  readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((f) => /\.(ts|tsx)$/.test(f))
    .map((f) => join(folder, f))

const importsOf = (file: string): string[] =>
  [...readFileSync(file, 'utf8').matchAll(/(?:from|import|import\(|new URL\()\s*\(?\s*'([^']+)'/g)].map(
    (m) => m[1] as string,
  )

const roomOf = (file: string): string => relative(SRC, file).split(sep)[0] as string

describe('the direction of imports', () => {
  const files = filesOf(SRC)

  it('knows every room that is there', () => {
    expect([...new Set(files.map(roomOf))].filter((room) => !(room in MAY_IMPORT))).toEqual([])
    expect(files.length).toBeGreaterThan(50)
  })

  it('the rooms stand in one order, without a circle', () => {
    const depth = (room: string, seen: string[] = []): number => {
      expect(seen).not.toContain(room)
      return 1 + Math.max(0, ...(MAY_IMPORT[room] ?? []).map((r) => depth(r, [...seen, room])))
    }
    for (const room of Object.keys(MAY_IMPORT)) expect(depth(room)).toBeGreaterThan(0)
  })

  it('a room imports only from rooms to its left, through their door', () => {
    const wrong: string[] = []
    for (const file of files)
      for (const from of importsOf(file)) {
        if (!from.startsWith('.')) continue
        const target = resolve(dirname(file), from)
        if (!target.startsWith(SRC + sep)) continue
        const [here, there] = [roomOf(file), roomOf(target)]
        if (here === there) continue
        const allowed = (MAY_IMPORT[here] ?? []).includes(there)
        const door = relative(join(SRC, there), target) === 'index.ts'
        if (!allowed || !door) wrong.push(`${relative(SRC, file)} imports ${from}`)
      }
    expect(wrong).toEqual([])
  })

  it('pure rooms know neither the page nor the store nor the clock', () => {
    const wrong: string[] = []
    for (const file of files.filter((f) => PURE.includes(roomOf(f)))) {
      for (const from of importsOf(file))
        if (/^(react|konva|zustand|zundo|idb)/.test(from)) wrong.push(`${relative(SRC, file)} imports ${from}`)
      const code = readFileSync(file, 'utf8').replace(/\/\*[\s\S]*?\*\/|\/\/.*$/gm, '')
      const touched = code.match(
        /\b(document\.(createElement|body|getElementById|querySelector)|window\.|localStorage|Math\.random|Date\.now|new Date\(\)|fetch\()/,
      )
      if (touched) wrong.push(`${relative(SRC, file)} uses ${touched[0]}`)
    }
    expect(wrong).toEqual([])
  })

  it('nothing asks for anything but its own files', () => {
    const wrong = files.filter((f) =>
      /\b(fetch|XMLHttpRequest|WebSocket|sendBeacon)\b\(?/.test(
        readFileSync(f, 'utf8')
          .replace(/\/\*[\s\S]*?\*\/|\/\/.*$/gm, '')
          .replace(/fetch\(new URL|fetch\(`\$\{import\.meta\.env\.BASE_URL\}/g, ''),
      ),
    )
    expect(wrong.map((f) => relative(SRC, f))).toEqual([])
  })
})
