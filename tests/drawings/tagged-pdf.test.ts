import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { decodePDFRawStream, PDFBool, PDFDict, PDFDocument, PDFName, PDFRawStream } from '@cantoo/pdf-lib'
import { getDocument, OPS } from 'pdfjs-dist/legacy/build/pdf.mjs'
import { describe, expect, test } from 'vitest'
import { changesSince, drawPacket, markChanges, recordPacket, renderPdf, type Sheet } from '../../src/drawings/index.js'
import { readDocuments } from '../../src/packet/read-documents.js'
import { readFonts } from '../../src/packet/read-fonts.js'
import { renderPacket } from '../../src/packet/render-packet.js'
import { hipHouse, longNames, microHouse, packetInput, stringHouse, wallHouse } from './demo-packet.js'
import { allOf, readStructure, type ReadStructure } from './read-structure.js'
import { threeLevels } from './tree-houses.js'

const EXAMPLES = new URL('../../examples', import.meta.url).pathname
const info = { title: 'Lark Hollow', author: '', subject: '', date: '2026-03-02', language: 'en-US' }

/** Standard structure types. Source: ISO 32000-1, 14.8.4, tables 333 to 340 (from memory). */
const STANDARD = ['Document', 'Sect', 'H1', 'H2', 'P', 'L', 'LI', 'Lbl', 'LBody', 'Table', 'TR', 'TH', 'TD', 'Figure']
/** What each may lie in. Source: the same, as the profile for accessible documents asks (from memory). */
const WITHIN: Readonly<Record<string, readonly string[]>> = {
  Sect: ['Document'],
  H1: ['Sect'],
  H2: ['Sect'],
  P: ['Sect'],
  L: ['Sect'],
  LI: ['L'],
  Lbl: ['LI'],
  LBody: ['LI'],
  Table: ['Sect'],
  TR: ['Table'],
  TH: ['TR'],
  TD: ['TR'],
  Figure: ['Sect'],
}

/** Every rule that a packet keeps, documents or none. */
function judge(read: ReadStructure, sheets: readonly Sheet[]): void {
  const { root, pages, parentTree, holders, strays } = read
  expect(strays).toEqual([])
  expect(root.kind).toBe('Document')
  const wrong = allOf(root).flatMap((element) => [
    ...(STANDARD.includes(element.kind) ? [] : [`no standard type: ${element.kind}`]),
    ...element.children
      .filter((child) => WITHIN[child.kind]?.includes(element.kind) !== true)
      .map((child) => `${child.kind} in ${element.kind}`),
    ...(element.children.length > 0 && element.contents.length > 0 ? [`${element.kind} of parts holds content`] : []),
  ])
  expect(wrong).toEqual([])
  expect(root.children.length).toBe(sheets.length)
  let held = 0
  for (const [index, sheet] of sheets.entries()) {
    const page = pages[index]
    if (page === undefined) throw new Error('no page')
    // All that is drawn is in the tree or an artifact, once, and never one within another.
    expect([sheet.id, page.loose, page.deepest, page.balanced]).toEqual([sheet.id, [], 1, true])
    expect(page.artifacts).toBeGreaterThan(0)
    expect(page.ids).toEqual(page.ids.map((_, at) => at))
    const parents = parentTree.get(page.structParents ?? -1) ?? []
    expect(parents).toEqual(page.ids.map((id) => holders.get(`${index}/${id}`)))
    held += page.ids.length
    // The heading comes first; those below it do not skip a level.
    const section = root.children[index]
    const kinds = section?.children.map(({ kind }) => kind) ?? []
    expect([kinds[0], kinds.filter((kind) => kind === 'H1').length]).toEqual(['H1', 1])
    expect(section?.children[0]?.actual).toBe(`${sheet.id} ${sheet.title}`)
  }
  expect([...holders.keys()].filter((at) => Number.parseInt(at) < sheets.length).length).toBe(held)
  const all = allOf(root)
  for (const figure of all.filter(({ kind }) => kind === 'Figure')) {
    expect(figure.alt).toMatch(/\S/u)
    const [left = 0, low = 0, right = 0, high = 0] = figure.box ?? []
    const { widthPt, heightPt } = sheets[figure.contents[0]?.page ?? 0]?.size ?? { widthPt: 0, heightPt: 0 }
    expect(left < right && low < high && left >= 0 && low >= 0 && right <= widthPt && high <= heightPt).toBe(true)
  }
  const tables = all.filter(({ kind }) => kind === 'Table')
  expect(tables.length).toBeGreaterThan(5)
  for (const table of tables) {
    const widths = new Set(table.children.map((row) => row.children.length))
    expect(widths.size).toBe(1)
    expect([...widths][0]).toBeGreaterThan(0)
    const cells = table.children.flatMap((row) => row.children)
    expect(cells.filter(({ kind, scope }) => (kind === 'TH') !== (scope === 'Row' || scope === 'Column'))).toEqual([])
  }
  const items = all.filter(({ kind }) => kind === 'LI')
  expect(items.filter(({ children }) => children.map(({ kind }) => kind).join(' ') !== 'Lbl LBody')).toEqual([])
}

const draw = async (sheets: readonly Sheet[]): Promise<Uint8Array> => await renderPdf(sheets, readFonts(), info)

describe('the structure of the packet', () => {
  test.each([
    ['module-level inverters', microHouse, '11x17'],
    ['strings', stringHouse, 'letter'],
    ['hips', hipHouse, 'A3'],
    ['long names', longNames, 'letter'],
    ['a tree of panels', threeLevels, '11x17'],
  ] as const)('of %s holds all that is drawn, by the rules', async (_, make, size) => {
    const sheets = drawPacket(packetInput(make(), size, true))
    const read = await readStructure(await draw(sheets))
    judge(read, sheets)
    expect(read.pages.length).toBe(sheets.length)
  })

  test('of sheets on request and of a revision holds all that is drawn, each diagram and wall as a figure in words', async () => {
    const input = { ...packetInput(wallHouse(), '11x17', true), threeLine: true }
    const first = drawPacket(packetInput(microHouse(), '11x17', true))
    const drawn = drawPacket(input)
    const changes = changesSince(recordPacket(first, 'Invented', 'A'), drawn)
    const sheets = markChanges(drawn, changes, 'B')
    const read = await readStructure(await draw(sheets))
    judge(read, sheets)
    const figuresOf = (id: string): (string | undefined)[] => {
      const section = read.root.children[sheets.findIndex((sheet) => sheet.id === id)]
      return section?.children.filter(({ kind }) => kind === 'Figure').map(({ alt }) => alt) ?? []
    }
    expect(figuresOf('E-605')[0]).toMatch(/^Three-line diagram, .* from 2 sources through /u)
    expect(figuresOf('E-606')[0]).toMatch(
      /^Wall of House, 30'-0" long, .* Utility meter at 5'-0", .*PV system disconnect at 16'-6"/u,
    )
    // Clouds are read last, in words.
    expect(changes.length).toBeGreaterThan(2)
    for (const { id } of changes) {
      const last = read.root.children[sheets.findIndex((sheet) => sheet.id === id)]?.children.at(-1)
      expect([id, last?.kind, last?.alt]).toEqual([
        id,
        'Figure',
        expect.stringMatching(/^Marks of revision B: (?:the sheet is new|\d+ clouds? round what changed)\.$/u),
      ])
    }
  })

  test('the file says that it is tagged, its language and its title; every font says what its glyphs mean', async () => {
    const bytes = await draw(drawPacket(packetInput(microHouse())))
    const { catalog } = await readStructure(bytes)
    const inside = (of: PDFDict, key: string): PDFDict => of.lookup(PDFName.of(key), PDFDict)
    expect(inside(catalog, 'MarkInfo').get(PDFName.of('Marked'))).toBe(PDFBool.True)
    expect(inside(catalog, 'ViewerPreferences').get(PDFName.of('DisplayDocTitle'))).toBe(PDFBool.True)
    expect(String(catalog.get(PDFName.of('Lang')))).toBe('(en-US)')
    const raw = Buffer.from(bytes).toString('latin1')
    const fonts = raw.match(/\/Subtype \/Type0/gu) ?? []
    expect(fonts.length).toBe(2)
    expect(raw.match(/\/ToUnicode \d+ 0 R/gu)?.length).toBe(fonts.length)
    expect(raw.match(/\/FontFile2 \d+ 0 R/gu)?.length).toBe(fonts.length)
  })

  test('a plan is a figure with its main dimensions in words, its schedule a table with heads', async () => {
    const sheets = drawPacket(packetInput(microHouse()))
    const { root } = await readStructure(await draw(sheets))
    const section = root.children[sheets.findIndex(({ id }) => id === 'A-101')]
    if (section === undefined) throw new Error('no section')
    const figures = section.children.filter(({ kind }) => kind === 'Figure').map(({ alt }) => alt)
    expect(figures[0]).toMatch(/^Plan of roof plane \S+, 40'-0" along the eave and .* up the slope, with \d+ modules/u)
    expect(figures.slice(1)).toEqual(['North arrow', 'Scale bar, 1/4" = 1\'-0"'])
    const headsOf = (id: string): unknown[] =>
      root.children
        .filter((_, index) => sheets[index]?.id === id || sheets[index]?.id.startsWith(`${id}-`) === true)
        .flatMap(({ children }) => children.filter(({ kind }) => kind === 'Table'))
        .map((table) => table.children[0]?.children.map(({ kind, scope }) => `${kind} ${scope ?? ''}`.trim()))
    // The words of the plan name the sheet that has the rails, which may be its continuation.
    const railsOn = /rails and mounts are listed on sheet (?<id>\S+)\.$/u.exec(figures[0] ?? '')?.groups?.['id'] ?? ''
    const heads = headsOf('A-101')
    const rails = headsOf(railsOn)
    expect(rails).toContainEqual(['TH Column', 'TH Column', 'TH Column', 'TH Column', 'TH Column'])
    expect(heads).toContainEqual(['TH Row', 'TD'])
  })

  test('a table that goes on at another sheet stays one, and its head is not read twice', async () => {
    const sheets = drawPacket(packetInput(microHouse()))
    const { root } = await readStructure(await draw(sheets))
    const spread = allOf(root).filter(
      ({ kind, children }) =>
        kind === 'Table' &&
        new Set(children.flatMap((row) => row.children).flatMap((cell) => cell.contents.map(({ page }) => page))).size >
          1,
    )
    expect(spread.length).toBeGreaterThan(0)
    for (const table of spread) {
      const headRows = table.children.filter((row) => row.children.every(({ scope }) => scope === 'Column'))
      expect(headRows.length).toBe(1)
      const heads = headRows.flatMap((row) => row.children).flatMap((cell) => cell.contents.map(({ page }) => page))
      expect(new Set(heads).size).toBe(1)
    }
  })

  test('another reader finds the same headings and words', async () => {
    const sheets = drawPacket(packetInput(microHouse()))
    const document = await getDocument({ data: await draw(sheets), useSystemFonts: false, verbosity: 0 }).promise
    let withTable = 0
    for (const [index, sheet] of sheets.entries()) {
      const page = await document.getPage(index + 1)
      const content = await page.getTextContent({ includeMarkedContent: true })
      const read = JSON.stringify(await page.getStructTree())
      const ids = content.items.flatMap((item) => ('id' in item && typeof item.id === 'string' ? [item.id] : []))
      expect(ids.length).toBeGreaterThan(0)
      expect(ids.filter((id) => !read.includes(`"id":"${id}"`))).toEqual([])
      expect(read).toContain('"role":"H1"')
      if (/^(?:G-001|C-101|A-10\d|S-501|S-601|E-601-2|E-60[23])$/u.test(sheet.id)) {
        expect(read).toContain('"role":"Table"')
        withTable += 1
      }
      if (/^(?:C-101|A-10\d|S-501|E-601|E-604)$/u.test(sheet.id)) expect(read).toContain('"role":"Figure"')
    }
    // The tables of the diagram stand on the sheet after it.
    expect(withTable).toBe(8)
  })

  test('words of a text that goes on in another line are read apart', async () => {
    const document = await getDocument({
      data: await draw(drawPacket(packetInput(microHouse()))),
      useSystemFonts: false,
      verbosity: 0,
    }).promise
    const { fnArray, argsArray } = await (await document.getPage(1)).getOperatorList()
    const written = fnArray.flatMap((operator, index) => {
      if (operator !== OPS.showText) return []
      const [glyphs] = argsArray[index] as [({ unicode: string } | number)[]]
      return glyphs.map((each) => (typeof each === 'number' ? '' : each.unicode))
    })
    expect(written.join('')).toMatch(/Sampletown: \d+ modules, .* connected to the main panel/u)
  })
})

describe('with documents behind the drawings', () => {
  /** The structure of a packet with these documents behind it, and what it says of them. */
  const bound = async (documents: Awaited<ReturnType<typeof readDocuments>>, title?: string) => {
    const titled = documents.map((document) => ({ ...document, title }))
    const sheets = drawPacket({ ...packetInput(microHouse()), documents: titled })
    const bytes = await renderPacket(sheets, titled, info, false)
    const read = await readStructure(bytes)
    return {
      sheets,
      bytes,
      read,
      parts: read.root.children.slice(sheets.length),
      pages: read.pages.slice(sheets.length),
    }
  }

  test('the structure of the drawings is whole, and each document is a part with its pages', async () => {
    const documents = await readDocuments(EXAMPLES, ['letter-rafters.pdf', 'papers/photographs.pdf'], false)
    const { sheets, bytes, read, parts, pages } = await bound(documents, 'Letter (invented)')
    judge({ ...read, root: { ...read.root, children: read.root.children.slice(0, sheets.length) } }, sheets)
    expect(parts.map(({ kind, title }) => [kind, title])).toEqual([
      ['Part', 'Letter (invented)'],
      ['Part', 'Letter (invented)'],
    ])
    expect(parts.map(({ children }) => children.map(({ kind, title }) => [kind, title]))).toEqual([
      [['Sect', 'X-001: page 1 of 1 of Letter (invented)']],
      [['Sect', 'X-002: page 1 of 1 of Letter (invented)']],
    ])
    for (const [index, page] of pages.entries()) {
      const at = sheets.length + index
      // All of the page is one content; the stamp with its number is an artifact.
      expect([page.ids, page.artifacts, page.loose, page.deepest, page.balanced]).toEqual([[0], 1, [], 1, true])
      expect(read.parentTree.get(page.structParents ?? -1)).toEqual([read.holders.get(`${at}/0`)])
    }
    expect(new Set(read.pages.map(({ structParents }) => structParents)).size).toBe(read.pages.length)
    // What stamps draw has no numbers of content, as no page of ours owns them.
    const { context } = await PDFDocument.load(bytes, { updateMetadata: false })
    const forms = context
      .enumerateIndirectObjects()
      .flatMap(([, each]) => (each instanceof PDFRawStream && each.dict.has(PDFName.of('BBox')) ? [each] : []))
    expect(forms.length).toBeGreaterThan(0)
    for (const form of forms)
      expect(Buffer.from(decodePDFRawStream(form).decode()).toString('latin1')).not.toContain('MCID')
    const again = await bound(documents, 'Letter (invented)')
    expect(Buffer.compare(Buffer.from(bytes), Buffer.from(again.bytes))).toBe(0)
  })

  test('another reader finds the words of a letter in its paragraph, and the words for a scan', async () => {
    const scan = await PDFDocument.create()
    scan.addPage([300, 400]).drawRectangle({ x: 50, y: 50, width: 100, height: 100 })
    const folder = mkdtempSync(join(tmpdir(), 'tagged-'))
    writeFileSync(join(folder, 'scan.pdf'), await scan.save())
    const letter = await readDocuments(EXAMPLES, ['letter-rafters.pdf'], false)
    const documents = [...letter, ...(await readDocuments(folder, ['scan.pdf'], false))]
    rmSync(folder, { recursive: true })
    const { sheets, bytes, parts } = await bound(documents)
    expect(parts.map(({ title }) => title)).toEqual(['letter-rafters.pdf', 'scan.pdf'])
    const figure = parts[1]?.children[0]?.children[0]
    expect([figure?.kind, figure?.alt]).toEqual(['Figure', 'X-002: page 1 of 1 of scan.pdf'])
    expect(figure?.box).toEqual([0, 0, 300, 400])
    const document = await getDocument({ data: bytes, useSystemFonts: false, verbosity: 0 }).promise
    const page = await document.getPage(sheets.length + 1)
    const tree = JSON.stringify(await page.getStructTree())
    const { items } = await page.getTextContent({ includeMarkedContent: true })
    const [id] = items.flatMap((item) => ('id' in item && typeof item.id === 'string' ? [item.id] : []))
    expect(tree).toContain(`"role":"P","children":[{"type":"content","id":"${id}"}]`)
    const scanned = await (await document.getPage(sheets.length + 2)).getStructTree()
    expect(JSON.stringify(scanned)).toContain('"alt":"X-002: page 1 of 1 of scan.pdf"')
  })

  test('a page that numbers its own content keeps it, and ours counts on', async () => {
    const own = new Uint8Array(await renderPdf(drawPacket(packetInput(microHouse())).slice(0, 1), readFonts(), info))
    const folder = mkdtempSync(join(tmpdir(), 'tagged-'))
    writeFileSync(join(folder, 'own.pdf'), own)
    const { pages, read, sheets } = await bound(await readDocuments(folder, ['own.pdf'], false))
    rmSync(folder, { recursive: true })
    const ids = pages[0]?.ids ?? []
    expect(ids.length).toBeGreaterThan(20)
    expect(new Set(ids).size).toBe(ids.length)
    const [ours] = ids
    expect(ours).toBe(Math.max(...ids))
    const parents = read.parentTree.get(pages[0]?.structParents ?? -1) ?? []
    expect(parents.slice(0, -1).every((each) => each === 'null')).toBe(true)
    expect(parents.at(-1)).toBe(read.holders.get(`${sheets.length}/${ours}`))
  })

  test('what is not drawing is packed: a packet with a letter takes no more than two thirds of one without', async () => {
    const sheets = drawPacket(packetInput(microHouse()))
    const without = await renderPacket(sheets, [], info, false)
    const { bytes } = await bound(await readDocuments(EXAMPLES, ['letter-rafters.pdf'], false))
    expect(bytes.length / without.length).toBeLessThan(2 / 3)
  })
})
