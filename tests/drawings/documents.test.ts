import { mkdtempSync, rmSync, symlinkSync, truncateSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import {
  degrees,
  PDFArray,
  PDFDict,
  PDFDocument as PdfLib,
  PDFHexString,
  PDFName,
  PDFRawStream,
  PDFString,
  type PDFObject,
} from '@cantoo/pdf-lib'
import PDFDocument from 'pdfkit'
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { FileError } from '../../src/files/index.js'
import { readDocuments } from '../../src/packet/read-documents.js'
import { renderPacket } from '../../src/packet/render-packet.js'
import { drawPacket } from '../../src/drawings/index.js'
import { hostileSheet, SCRIPT } from './hostile-pdf.js'
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

  test('bear no imprint, which would lie on the words of their stamps; the drawings do', async () => {
    const documents = await readDocuments(folder, ['m410.pdf'], false)
    const sheets = drawPacket({ ...packetInput(microHouse()), documents })
    const pages = await pagesOf(await renderPacket(sheets, documents, { ...info, imprint: 'build 0123' }, false))
    const has = pages.map(({ text }) => text.includes('build 0123'))
    expect(has).toEqual([...sheets.map(() => true), false, false])
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
    const { catalog } = await PdfLib.load(pdf, { updateMetadata: false })
    const preferences = catalog.lookup(PDFName.of('ViewerPreferences'), PDFDict)
    expect(preferences.get(PDFName.of('PrintScaling'))).toBe(PDFName.of('None'))
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

  test('too large, it is refused with its size, what is allowed and what to do', async () => {
    writeFileSync(join(folder, 'large.pdf'), '%PDF-1.7\n')
    truncateSync(join(folder, 'large.pdf'), 120_000_000)
    await expect(readDocuments(folder, ['large.pdf'], false)).rejects.toMatchObject({
      name: 'FileError',
      exitCode: 3,
      message:
        "cannot read document 'large.pdf': it is 120.0 MB large; at most 100.0 MB is read; print it to a new PDF with coarser pictures, or with the pages that are wanted alone",
    })
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

  test('come over as they look and with nothing alive: no script, action, link, form, file or medium', async () => {
    writeFileSync(join(folder, 'hostile.pdf'), await hostileSheet())
    const documents = await readDocuments(folder, ['hostile.pdf'], false)
    const pdf = await renderPacket([], documents, info, false)
    const [first, second] = (await pagesOf(pdf)).map(({ text }) => flat(text))
    expect(first).toContain('Invented M410 page one')
    expect(second).toContain('Invented M410 page two')
    // The look of a stamp and of a filled field is drawn; what is hidden stays so.
    expect(first).toContain('APPROVED STAMP')
    expect(first).toContain('FILLED FIELD')
    expect(first).not.toContain('HIDDEN STAMP')
    expect((await placeOf(pdf, 1, 'APPROVED STAMP'))?.map((share) => Math.round(share * 100))).toEqual([12, 24])
    expect(documents[0]?.notes).toEqual([
      "document 'hostile.pdf': the packet leaves out what has no drawn look of its own (notes, marks, fields: 1); print it to a new PDF to keep it",
    ])
    const opened = await getDocument({ data: pdf.slice(), verbosity: 0 }).promise
    expect(await opened.getJSActions()).toBeNull()
    expect(await opened.getAttachments()).toBeNull()
    expect(await opened.getOpenAction()).toBeNull()
    expect(await opened.getFieldObjects()).toBeNull()
    for (const number of [1, 2]) {
      const page = await opened.getPage(number)
      expect(await page.getAnnotations()).toEqual([])
      expect(await page.getJSActions()).toBeNull()
    }
    const { keys, texts } = await everythingIn(pdf)
    // The packet itself has metadata, and an empty list of annotations on every page.
    const alive = ['A', 'AA', 'AF', 'AcroForm', 'AP', 'EF', 'EmbeddedFiles', 'F', 'FS', 'JS', 'JavaScript', 'Launch']
    const others = ['OpenAction', 'Ref', 'RichMedia', 'RichMediaContent', 'URI', 'XFA']
    expect([...alive, ...others].filter((key) => keys.has(key))).toEqual([])
    expect(texts.filter((text) => text.includes(SCRIPT) || text.includes('alive'))).toEqual([])
  })

  test.each<[string, RegExp, (page: PDFDict, pdf: PdfLib) => void]>([
    ['without a MediaBox', /its size \(MediaBox\) is missing/u, (page) => page.delete(PDFName.of('MediaBox'))],
    [
      'with a short MediaBox',
      /MediaBox\) is not four numbers/u,
      (page, { context }) => set(page, 'MediaBox', context.obj([0, 0, 612])),
    ],
    [
      'with words as its MediaBox',
      /MediaBox\) is not four numbers/u,
      (page) => set(page, 'MediaBox', PDFString.of('letter')),
    ],
    ['of no size', /MediaBox\) is nothing/u, (page, { context }) => set(page, 'MediaBox', context.obj([0, 0, 0, 0]))],
    [
      'with a word in its CropBox',
      /CropBox\) is not four numbers/u,
      (page, { context }) => set(page, 'CropBox', context.obj([0, 0, 'x', 1])),
    ],
    [
      'with a list as Resources',
      /its resources are no dictionary/u,
      (page, { context }) => set(page, 'Resources', context.obj([])),
    ],
    [
      'with a number as Contents',
      /what it draws \(Contents\) is no stream/u,
      (page, { context }) => set(page, 'Contents', context.obj(7)),
    ],
    [
      'with words among its Contents',
      /Contents\) is no stream/u,
      (page, { context }) => set(page, 'Contents', context.obj([PDFString.of('q')])),
    ],
    [
      'that is turned by a word',
      /its rotation is no multiple of 90/u,
      (page) => set(page, 'Rotate', PDFString.of('90')),
    ],
    [
      'that is turned by 45',
      /its rotation is no multiple of 90/u,
      (page, { context }) => set(page, 'Rotate', context.obj(45)),
    ],
    [
      'with a number as its drawings',
      /its list of every drawing is no dictionary/u,
      (page, { context }) => set(page, 'Resources', context.obj({ XObject: 3 })),
    ],
    [
      'with a drawing that is no stream',
      /a drawing of it is no stream/u,
      (page, { context }) => set(page, 'Resources', context.obj({ XObject: { X: [1] } })),
    ],
    [
      'with a font that is a number',
      /a font of it is no dictionary/u,
      (page, { context }) => set(page, 'Resources', context.obj({ Font: { F: 1 } })),
    ],
  ])('a page %s is refused with the name of the document and the page', async (_name, message, damage) => {
    const pdf = await PdfLib.create()
    pdf.addPage([612, 792])
    const { node } = pdf.addPage([612, 792])
    damage(node, pdf)
    writeFileSync(join(folder, 'damaged.pdf'), await pdf.save({ addDefaultPage: false }))
    const work = async () => await renderPacket([], await readDocuments(folder, ['damaged.pdf'], false), info, false)
    await expect(work()).rejects.toThrow(FileError)
    await expect(work()).rejects.toThrow(/^document 'damaged\.pdf', page 2, is broken and cannot be copied \(/u)
    await expect(work()).rejects.toThrow(message)
  })

  test('a list of pages that leads back to itself is refused', async () => {
    const pdf = await PdfLib.create()
    pdf.addPage()
    const pages = pdf.catalog.get(PDFName.of('Pages'))
    pdf.catalog.Pages().set(PDFName.of('Kids'), pdf.context.obj([pages, pages] as never))
    writeFileSync(join(folder, 'circle.pdf'), await pdf.save({ addDefaultPage: false }))
    await expect(readDocuments(folder, ['circle.pdf'], false)).rejects.toThrow(
      "document 'circle.pdf' is broken and cannot be copied (its list of pages leads back to itself)",
    )
  })

  test(
    'with 200 seeded damages none gives anything but a packet that opens or a refusal with its name, soon',
    { timeout: 300_000 },
    async () => {
      const wholes = [Buffer.from(await hostileSheet()), await sheet(['Invented M410 page one', 'page two'])]
      const outcomes = { drawn: 0, refused: 0 }
      for (let seed = 1; seed <= 200; seed += 1) {
        writeFileSync(join(folder, 'mutant.pdf'), damaged(wholes[seed % 2] ?? Buffer.alloc(0), seed))
        const began = performance.now()
        try {
          const pdf = await renderPacket([], await readDocuments(folder, ['mutant.pdf'], false), info, false)
          expect((await PdfLib.load(pdf)).getPageCount()).toBeGreaterThan(0)
          outcomes.drawn += 1
        } catch (error) {
          expect(error, `seed ${seed}`).toBeInstanceOf(FileError)
          expect((error as Error).message, `seed ${seed}`).toMatch(/'mutant\.pdf'/u)
          outcomes.refused += 1
        }
        expect(performance.now() - began, `seed ${seed}`).toBeLessThan(10_000)
      }
      expect(outcomes.drawn).toBeGreaterThan(20)
      expect(outcomes.refused).toBeGreaterThan(20)
    },
  )
})

function set(page: PDFDict, name: string, value: PDFObject): void {
  page.set(PDFName.of(name), value)
}

/** Every key and every text of a file, also inside streams. */
async function everythingIn(pdf: Uint8Array): Promise<{ readonly keys: Set<string>; readonly texts: string[] }> {
  const { context } = await PdfLib.load(pdf, { updateMetadata: false })
  const keys = new Set<string>()
  const texts: string[] = []
  const visit = (value: PDFObject): void => {
    if (value instanceof PDFString || value instanceof PDFHexString) texts.push(value.decodeText())
    else if (value instanceof PDFName) texts.push(value.decodeText())
    else if (value instanceof PDFArray) value.asArray().forEach(visit)
    else if (value instanceof PDFRawStream) {
      texts.push(Buffer.from(value.contents).toString('latin1'))
      visit(value.dict)
    } else if (value instanceof PDFDict) {
      for (const [name, item] of value.entries()) {
        // Fonts may bear any name.
        if (!/^F\d*$/u.test(name.decodeText()) || item instanceof PDFString) keys.add(name.decodeText())
        visit(item)
      }
    }
  }
  for (const [, value] of context.enumerateIndirectObjects()) visit(value)
  return { keys, texts }
}

/** One to four places of a PDF changed: a byte, a number, a key, a piece cut out or doubled. */
function damaged(whole: Buffer, seed: number): Buffer {
  let state = seed * 2_654_435_761
  const random = (below: number): number => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0
    return Math.floor((state / 2 ** 32) * below)
  }
  const names = ['MediaBox', 'Resources', 'Contents', 'Rotate', 'XObject', 'Kids', 'Length', 'Type', 'Count', 'Pages']
  let text = whole.toString('latin1')
  for (let count = 1 + random(4); count > 0; count -= 1) {
    const at = random(text.length)
    const name = names[random(names.length)] ?? ''
    const ways: (() => string)[] = [
      () => text.slice(0, at) + String.fromCharCode(random(256)) + text.slice(at + 1),
      () => text.slice(0, at) + text.slice(at + 1 + random(40)),
      () => text.slice(0, at) + text.slice(Math.max(0, at - random(200))),
      () => text.replace(`/${name} `, `/${name.slice(0, -1)} `),
      () =>
        text.replace(
          new RegExp(`/${name} [^/>]*`, 'u'),
          `/${name} ${['null', '7', '(x)', '[1 2]', '/x', '<< >>', '1 0 R', '999 0 R'][random(8)]} `,
        ),
      () => text.replace(/\d+ 0 R/gu, (ref) => (random(12) === 0 ? `${random(20)} 0 R` : ref)),
    ]
    text = ways[random(ways.length)]?.() ?? text
  }
  return Buffer.from(text, 'latin1')
}
