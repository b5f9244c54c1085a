// Makes the invented letter about the rafters that the demo houses name; run it again after a change: node examples/make-letter.mjs
import { createWriteStream } from 'node:fs'
import { createRequire } from 'node:module'
import { fileURLToPath } from 'node:url'

const PDFDocument = createRequire(import.meta.url)('pdfkit')

const date = '2026-02-20'
const lines = [
  'This page is INVENTED. No engineer wrote it, no house was looked at, and it permits nothing.',
  'It stands where the letter of a licensed structural engineer belongs, so that the demo houses can show how a permit packet names and appends one.',
  'A real letter states: address and date; seal and licence of the engineer; what was looked at, by whom, and whether the attic was entered; size, spacing, spans, species and grade of the rafters and their supports; codes and editions; wind, snow and dead loads with the array; the method and its ratios; mounts, their spacing and screws; limits; and the opinion.',
]

for (const place of ['letter-rafters.pdf', 'fleet/letter-rafters.pdf']) {
  const created = new Date(`${date}T00:00:00Z`)
  const doc = new PDFDocument({
    size: 'letter',
    margin: 72,
    info: { Title: 'Letter about the rafters (INVENTED)', CreationDate: created, ModDate: created },
  })
  doc.pipe(createWriteStream(fileURLToPath(new URL(place, import.meta.url))))
  doc.font('Helvetica-Bold').fontSize(22).text('INVENTED - DEMONSTRATION ONLY')
  doc.moveDown().fontSize(14).text('Letter about the rafters (INVENTED)')
  doc.font('Helvetica').fontSize(11).text(`Dated ${date}`)
  for (const line of lines) doc.moveDown().text(line)
  doc.end()
}
