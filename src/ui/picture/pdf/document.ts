import type { Said } from '../export.ts'
import type { Placed } from '../rasters.ts'
import type { Item, Laid, Measure } from '../types.ts'
import type { PdfFace } from './font.ts'
import { addFont } from './font.ts'
import { addImage } from './image.ts'
import { createObjects, num, packedStream, textString } from './objects.ts'
import { type PageParts, type PdfImage, pageContent, pointsOf } from './page.ts'

/**
 * One page as a PDF 1.7 (ISO 32000-1:2008): exactly as large as its paper, words as words in embedded letters, lines as lines,
 * painted pieces as images, tagged, with the alternative text at the figure and as the document's subject.
 * @param painted a piece for each view and plate, and for words in letters that the faces lack
 */
export const pdfOf = async (
  laid: Laid,
  painted: ReadonlyMap<Item, Placed>,
  faces: readonly PdfFace[],
  measure: Measure,
  { title, words }: Said,
): Promise<Blob> => {
  const objects = createObjects()
  const [catalogue, pages, page, tree] = [objects.reserve(), objects.reserve(), objects.reserve(), objects.reserve()]
  const images = new Map<Item, PdfImage>()
  const resources: string[] = []
  for (const [item, { x, y, pixels }] of painted) {
    if (pixels.width === 0 || pixels.height === 0) continue
    const name = `I${images.size}`
    resources.push(`/${name} ${await addImage(objects, pixels)} 0 R`)
    images.set(item, { name, x, y, width: pixels.width, height: pixels.height })
  }
  const parts: PageParts = { laid, images, faces, measure, used: new Map() }
  const { content, order } = pageContent(parts)
  const fonts: string[] = []
  for (const face of faces) {
    const used = parts.used.get(face.name)
    if (used) fonts.push(`/${face.name} ${await addFont(objects, face, used)} 0 R`)
  }
  const stream = objects.add(await packedStream('', new TextEncoder().encode(content)))
  const whole = objects.reserve()
  const elements = order.map((part, i) =>
    objects.add(
      `<< /Type /StructElem /S /${part} /P ${whole} 0 R /Pg ${page} 0 R /K ${i}${part === 'Figure' ? ` /Alt ${textString(words)}` : ''} >>`,
    ),
  )
  const kids = elements.map((n) => `${n} 0 R`).join(' ')
  objects.put(whole, `<< /Type /StructElem /S /Document /P ${tree} 0 R /K [${kids}] >>`)
  objects.put(tree, `<< /Type /StructTreeRoot /K ${whole} 0 R /ParentTree << /Nums [0 [${kids}]] >> >>`)
  objects.put(
    page,
    `<< /Type /Page /Parent ${pages} 0 R /MediaBox [0 0 ${pointsOf(laid).map(num).join(' ')}] /Contents ${stream} 0 R /StructParents 0 /Tabs /S /Resources << /XObject << ${resources.join(' ')} >> /Font << ${fonts.join(' ')} >> >> >>`,
  )
  objects.put(pages, `<< /Type /Pages /Kids [${page} 0 R] /Count 1 >>`)
  objects.put(
    catalogue,
    `<< /Type /Catalog /Pages ${pages} 0 R /Lang (en) /MarkInfo << /Marked true >> /StructTreeRoot ${tree} 0 R /ViewerPreferences << /DisplayDocTitle true >> >>`,
  )
  const info = objects.add(
    `<< /Title ${textString(title)} /Subject ${textString(words)} /Creator ${textString('Pedicel')} >>`,
  )
  return objects.file(catalogue, info)
}
