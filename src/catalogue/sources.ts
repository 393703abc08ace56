import type { Standing } from './types.ts'

interface Source {
  standing: Standing
  text: string
}

/**
 * What the short codes in the data files stand for. A range is a union of what the sources named with it say; where a code
 * of a page is followed by M, one end of the range is from memory.
 */
const SOURCES: Record<string, Source> = {
  FDI: { standing: 'source', text: 'Floral Design Institute, flower library' },
  SFQ: { standing: 'source', text: 'Super Floral, January 2010' },
  SFR: { standing: 'source', text: 'Super Floral, care pages 2012–2015' },
  FR: { standing: 'source', text: "Florists' Review, flower pages" },
  CCFC: { standing: 'source', text: 'California Cut Flower Commission' },
  CSF: { standing: 'source', text: 'California State Floral Association' },
  SAF: { standing: 'source', text: 'Society of American Florists, as copied' },
  ASCFG: { standing: 'source', text: 'NC State University and Association of Specialty Cut Flower Growers' },
  GC: { standing: 'source', text: "garden clubs' care notes (Shaker Lakes, Brookfield)" },
  ASHS: { standing: 'source', text: 'Jahnke, Kalinowski & Dole 2022, HortTechnology 32(3):263' },
  STK: { standing: 'source', text: "postharvest trial of Matthiola incana 'Vivas Blue', abstract" },
  HS: { standing: 'source', text: 'HortScience 30(4):835, abstract' },
  HS2: { standing: 'source', text: 'American Society for Horticultural Science, abstract' },
  ASPCA: { standing: 'source', text: 'ASPCA list of plants and cats, a copy of 2019' },
  FL: { standing: 'source', text: 'FloraLife, what is available when' },
  FPA: { standing: 'source', text: 'Flowers & Plants Association (UK), flower facts' },
  FFF: { standing: 'source', text: 'Flowers from the Farm (UK), guide to the seasons' },
  WSU: { standing: 'source', text: 'Washington State University Extension, PNW Plants' },
  FDA: { standing: 'source', text: 'US FDA notice on lilies and cats, as relayed by the press' },
  APL: { standing: 'source', text: 'Animal PoisonLine (UK) on lilies, 2022' },
  NC: { standing: 'source', text: 'NC State Extension, county columns' },
  CPC: { standing: 'source', text: 'California Poison Control, list of plants' },
  RHS: { standing: 'source', text: 'RHS, potentially harmful plants, in part as relayed' },
  MA: { standing: 'source', text: 'Marks 1988; Santucci 1985 (alstroemeria dermatitis)' },
  MG: { standing: 'source', text: "University of Maryland Extension, Master Gardener note; garden clubs' notes" },
  MG2: { standing: 'source', text: 'Extension Master Gardener column, 2017' },
  SDS: { standing: 'source', text: "makers' safety data sheets for floral foam" },
  FIRE: { standing: 'source', text: 'US fire authorities: 12 in (NFPA), 3 ft and 4 ft are all asked for' },
  NIOSH: { standing: 'source', text: 'NIOSH lifting equation (OSHA eTool)' },
  C: { standing: 'common practice', text: 'common practice' },
  M: { standing: 'from memory', text: 'from memory' },
  O: { standing: 'ours', text: 'ours' },
  X: { standing: 'common practice', text: 'sources differ' },
  '?': { standing: 'not known', text: 'not known' },
}

/** From the best known to the least. */
const ORDER: Standing[] = ['source', 'common practice', 'from memory', 'ours', 'not known']

/**
 * Codes joined by + to a standing (that of the best of them) and the words for the screen.
 * Throws an Error for a code that is not listed.
 */
export function cite(codes: string): { standing: Standing; source: string } {
  const found = codes.split('+').map((code) => {
    const source = SOURCES[code]
    if (!source) throw new Error(`catalogue: no source is listed under "${code}"`)
    return source
  })
  // That sources differ says nothing of how well anything is known, unless it stands alone.
  const ranked = found.filter((s) => s !== SOURCES.X || found.length === 1)
  const standing = ORDER.find((o) => ranked.some((s) => s.standing === o)) ?? 'not known'
  const mixed = found.length > 1
  const words = found.map((s) => (mixed && s === SOURCES.M ? 'in part from memory' : s.text))
  return { standing, source: words.join('; ') }
}
