import { mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { degrees, PDFDocument as PdfLib } from '@cantoo/pdf-lib'
import PDFDocument from 'pdfkit'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { readDocuments } from '../../src/cli/output/pdf-documents.js'
import { renderPacket } from '../../src/cli/output/pdf-packet.js'
import { drawPacket } from '../../src/drawings/index.js'
import { microHouse, packetInput } from './demo-packet.js'
import { bookmarksOf, flat, pagesOf, placeOf } from './pdf-text.js'

const info = {
  title: 'Lark Hollow demo house (invented)',
  author: '',
  subject: 'Permit drawings',
  date: '2026-03-02',
  language: 'en-US',
}

/** A PDF of an invented data sheet. */
async function sheet(pages: readonly string[], options: PDFKit.PDFDocumentOptions = {}): Promise<Buffer> {
  const doc = new PDFDocument({
    ...options,
    autoFirstPage: false,
    info: { CreationDate: new Date('2026-01-01T00:00:00Z') },
  })
  const chunks: Buffer[] = []
  doc.on('data', (chunk: Buffer) => chunks.push(chunk))
  const done = new Promise<Buffer>((resolve) => doc.on('end', () => resolve(Buffer.concat(chunks))))
  for (const text of pages) {
    doc.addPage({ size: 'letter' })
    doc.text(text, 72, 72)
  }
  doc.end()
  return await done
}

describe('documents of the person', () => {
  const folder = mkdtempSync(join(tmpdir(), 'documents-'))
  const outside = mkdtempSync(join(tmpdir(), 'outside-'))

  beforeAll(async () => {
    const module = await sheet(['Invented M410 page one', 'Invented M410 page two'])
    writeFileSync(join(folder, 'm410.pdf'), module)
    writeFileSync(join(folder, 'rail.pdf'), await sheet(['Invented rail 40']))
    writeFileSync(join(folder, 'locked.pdf'), await sheet(['secret'], { userPassword: 'open' }))
    writeFileSync(join(folder, 'cut.pdf'), module.subarray(0, Math.floor(module.length * 0.6)))
    writeFileSync(join(folder, 'text.pdf'), 'this is no PDF')
    writeFileSync(join(folder, 'empty.pdf'), '')
    writeFileSync(join(outside, 'other.pdf'), module)
    symlinkSync(join(outside, 'other.pdf'), join(folder, 'link.pdf'))
  })

  afterAll(() => {
    rmSync(folder, { recursive: true })
    rmSync(outside, { recursive: true })
  })

  test('follow the drawings, each page with its number, and stand in the index', async () => {
    const documents = await readDocuments(folder, ['m410.pdf', 'rail.pdf'], false)
    const sheets = drawPacket({ ...packetInput(microHouse()), documents })
    const pdf = await renderPacket(sheets, documents, info, false)
    const pages = await pagesOf(pdf)
    expect(pages.length).toBe(sheets.length + 3)
    const index = flat(pages[0]?.text ?? '')
    expect(index).toContain('X-001 to X-002')
    expect(index).toContain('X-003')
    for (const [at, words] of [
      ['X-001', 'Invented M410 page one'],
      ['X-002', 'Invented M410 page two'],
      ['X-003', 'Invented rail 40'],
    ].entries()) {
      const page = flat(pages[sheets.length + at]?.text ?? '')
      for (const word of words) expect(page).toContain(word)
    }
    const bookmarks = await bookmarksOf(pdf)
    expect(bookmarks.slice(-2)).toEqual(['m410.pdf', 'rail.pdf'])
    expect(bookmarks.length).toBe(sheets.length + 2)
    const raw = Buffer.from(pdf).toString('latin1')
    expect(raw).toContain('/PrintScaling /None')
    const again = await renderPacket(sheets, await readDocuments(folder, ['m410.pdf', 'rail.pdf'], false), info, false)
    expect(Buffer.compare(Buffer.from(pdf), Buffer.from(again))).toBe(0)
  })

  test.each([
    ['locked.pdf', /'locked\.pdf' is locked with a password/u],
    ['cut.pdf', /'cut\.pdf' is (broken|cut off)/u],
    ['text.pdf', /'text\.pdf' is not a PDF/u],
    ['empty.pdf', /'empty\.pdf' is not a PDF/u],
    ['missing.pdf', /'missing\.pdf': no such file/u],
    ['link.pdf', /'link\.pdf' lies outside the project's folder/u],
    ['.', /cannot read document '\.': it is a folder/u],
  ])('%s is refused with its name', async (name, message) => {
    await expect(readDocuments(folder, [name], false)).rejects.toThrow(message)
  })

  test('are stamped in the lower right corner as they are seen, whatever their rotation', async () => {
    const turned = await PdfLib.create()
    for (const angle of [0, 90, 180, 270]) turned.addPage([612, 792]).setRotation(degrees(angle))
    writeFileSync(join(folder, 'turned.pdf'), await turned.save())
    const pdf = await renderPacket([], await readDocuments(folder, ['turned.pdf'], false), info, false)
    for (const number of [1, 2, 3, 4]) {
      const [x = 0, y = 0] = (await placeOf(pdf, number, `X-00${number}`)) ?? []
      expect([number, x > 0.85 && x < 1, y > 0.94 && y < 1]).toEqual([number, true, true])
    }
  })

  test('a file outside is read when that is allowed', async () => {
    expect((await readDocuments(folder, ['link.pdf'], true)).map((each) => each.pages)).toEqual([2])
  })
})
