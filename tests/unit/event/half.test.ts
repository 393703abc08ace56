import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { halfOf, halfOfZone, newEvent, whenOf } from '../../../src/event/index.ts'

/** Coordinates and names of all time zones that have a place, as IANA gives them. */
const ZONES = readFileSync(new URL('../../fixtures/zones/zone-tab-2025b.txt', import.meta.url), 'utf8')
  .split('\n')
  .filter((row) => row && !row.startsWith('#'))
  .map((row) => row.split(' ') as [string, string])

describe('the half of the earth that an event is on', () => {
  it('Lisbon has the seasons of the north, Melbourne of the south', () => {
    expect(halfOfZone('Europe/Lisbon')).toBe('north')
    expect(halfOfZone('Australia/Melbourne')).toBe('south')
    expect(halfOfZone('UTC')).toBe('north')
  })
  it('each zone lies where its latitude says', () => {
    expect(ZONES.length).toBeGreaterThan(400)
    for (const [place, zone] of ZONES)
      expect([zone, halfOfZone(zone)]).toEqual([zone, place.startsWith('-') ? 'south' : 'north'])
  })
  it('older names lie where the newer ones do', () => {
    for (const zone of ['America/Buenos_Aires', 'Australia/NSW', 'NZ', 'Chile/Continental', 'Brazil/East'])
      expect([zone, halfOfZone(zone)]).toEqual([zone, 'south'])
    // These were merged into southern zones by their clocks, not by their place.
    for (const zone of ['Pacific/Truk', 'Pacific/Ponape', 'Africa/Asmera', 'America/Louisville'])
      expect([zone, halfOfZone(zone)]).toEqual([zone, 'north'])
  })
  it('what the person says goes before the zone; the month is that of the local date', () => {
    const event = { ...newEvent('Africa/Nairobi'), date: '2027-11-30T23:00' }
    expect(whenOf(event)).toEqual({ month: 11, half: 'south' })
    expect(whenOf({ ...event, seasons: 'north' })).toEqual({ month: 11, half: 'north' })
    expect(halfOf({ ...event, seasons: 'north' })).toBe('north')
    expect(whenOf(newEvent('UTC'))).toBeNull()
  })
})
