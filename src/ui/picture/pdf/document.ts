import type { Said } from '../export.ts'
import type { Placed } from '../rasters.ts'
import type { Item, Laid, Measure } from '../types.ts'
import type { PdfFace } from './font.ts'
import { addFont } from './font.ts'
import { addImage } from './image.ts'
import { createObjects, num, packedStream, textString } from './objects.ts'
import { type PageParts, type Part, type PdfImage, pageContent, pointsOf } from './page.ts'

/** A page of a document: what stands on it, and its painted pieces. */
export interface PdfSheet {
  laid: Laid
  /** A piece for each view and plate, and for words in letters that the faces lack. */
  painted: ReadonlyMap<Item, Placed>
}

/**
 * Pages as a PDF 1.7 (ISO 32000-1:2008): each exactly as large as its paper, words as words in embedded letters, lines as lines,
 * painted pieces as images, tagged, with the alternative text at the figure and as the document's subject.
 */
export const pdfOf = async (
  sheets: readonly PdfSheet[],
  faces: readonly PdfFace[],
  measure: Measure,
  { title, words }: Said,
): Promise<Blob> => {
  const objects = createObjects()
  const [catalogue, pages, tree, whole] = [objects.reserve(), objects.reserve(), objects.reserve(), objects.reserve()]
  const used: PageParts['used'] = new Map()
  const written: { page: number; laid: Laid; resources: string[]; content: string; order: Part[] }[] = []
  for (const { laid, painted } of sheets) {
    const images = new Map<Item, PdfImage>()
    const resources: string[] = []
    for (const [item, { x, y, pixels }] of painted) {
      if (pixels.width === 0 || pixels.height === 0) continue
      const name = `I${images.size}`
      resources.push(`/${name} ${await addImage(objects, pixels)} 0 R`)
      images.set(item, { name, x, y, width: pixels.width, height: pixels.height })
    }
    const page = objects.reserve()
    written.push({ page, laid, resources, ...pageContent({ laid, images, faces, measure, used }) })
  }
  const fonts: string[] = []
  for (const face of faces) {
    const letters = used.get(face.name)
    if (letters) fonts.push(`/${face.name} ${await addFont(objects, face, letters)} 0 R`)
  }
  const kids: string[][] = []
  for (const [n, { page, laid, resources, content, order }] of written.entries()) {
    const stream = objects.add(await packedStream('', new TextEncoder().encode(content)))
    kids.push(
      order.map((part, i) => {
        const said = part === 'Figure' ? ` /Alt ${textString(words)}` : ''
        return `${objects.add(`<< /Type /StructElem /S /${part} /P ${whole} 0 R /Pg ${page} 0 R /K ${i}${said} >>`)} 0 R`
      }),
    )
    objects.put(
      page,
      `<< /Type /Page /Parent ${pages} 0 R /MediaBox [0 0 ${pointsOf(laid).map(num).join(' ')}] /Contents ${stream} 0 R /StructParents ${n} /Tabs /S /Resources << /XObject << ${resources.join(' ')} >> /Font << ${fonts.join(' ')} >> >> >>`,
    )
  }
  const parents = kids.map((own, n) => `${n} [${own.join(' ')}]`).join(' ')
  objects.put(whole, `<< /Type /StructElem /S /Document /P ${tree} 0 R /K [${kids.flat().join(' ')}] >>`)
  objects.put(tree, `<< /Type /StructTreeRoot /K ${whole} 0 R /ParentTree << /Nums [${parents}] >> >>`)
  objects.put(
    pages,
    `<< /Type /Pages /Kids [${written.map(({ page }) => `${page} 0 R`).join(' ')}] /Count ${written.length} >>`,
  )
  objects.put(
    catalogue,
    `<< /Type /Catalog /Pages ${pages} 0 R /Lang (en) /MarkInfo << /Marked true >> /StructTreeRoot ${tree} 0 R /ViewerPreferences << /DisplayDocTitle true >> >>`,
  )
  const info = objects.add(
    `<< /Title ${textString(title)} /Subject ${textString(words)} /Creator ${textString('Pedicel')} >>`,
  )
  return objects.file(catalogue, info)
}
