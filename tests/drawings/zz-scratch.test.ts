import { writeFileSync, readFileSync } from 'node:fs'
import { test } from 'vitest'
import { drawPacket, renderPdf, flattenSheet } from '/work/main/src/drawings/index.js'
import * as demos from '/work/main/tests/drawings/demo-packet.js'
test('render', async () => {
  const which = (process.env['DEMO'] ?? 'microHouse') as 'microHouse'
  const input = demos.packetInput(demos[which](), (process.env['SIZE'] ?? '11x17') as never, process.env['DRAFT']==='1')
  for (const f of input.findings) console.log(f.severity, f.id, f.message)
  const sheets = drawPacket(input)
  for (const s of sheets) { const f = flattenSheet(s); console.log(s.id, s.title, s.scaleNote, f.collisions.join(' | ')) }
  const dir='/work/main/node_modules/dejavu-fonts-ttf/ttf/'
  const t=Date.now()
  const pdf = await renderPdf(sheets, { plain: readFileSync(dir+'DejaVuSansCondensed.ttf'), bold: readFileSync(dir+'DejaVuSansCondensed-Bold.ttf') }, { title: 't', author: 'a', subject: 's', date: '2026-03-02', language: 'en-US' })
  writeFileSync('/tmp/dp/out.pdf', pdf); console.log(pdf.length, Date.now()-t)
})
