import {
  type PDFDict,
  PDFDocument,
  PDFName,
  PDFString,
  StandardFonts,
  type PDFContext,
  type PDFObject,
} from '@cantoo/pdf-lib'

/** Whatever of this reaches a packet was alive in the document. */
export const SCRIPT = 'app.alert("alive")'

/**
 * An INVENTED data sheet of two pages with every way known to carry something alive into another file, a stamp with a
 * drawn look and a note without one.
 */
export async function hostileSheet(): Promise<Uint8Array> {
  const pdf = await PDFDocument.create()
  const { context } = pdf
  const font = await pdf.embedFont(StandardFonts.Helvetica)
  const [first, second] = [pdf.addPage([612, 792]), pdf.addPage([612, 792])]
  first.drawText('Invented M410 page one', { x: 72, y: 700, font, size: 12 })
  second.drawText('Invented M410 page two', { x: 72, y: 700, font, size: 12 })
  const script = () => context.register(context.obj({ Type: 'Action', S: 'JavaScript', JS: PDFString.of(SCRIPT) }))
  const action = (entries: Record<string, PDFObject | string>) => context.register(context.obj({ ...entries }))
  const file = context.register(
    context.obj({
      Type: 'Filespec',
      F: PDFString.of('alive.exe'),
      EF: context.obj({ F: context.register(context.stream(SCRIPT, { Type: 'EmbeddedFile' })) }),
    }),
  )
  const rect = [72, 600, 172, 640]
  const annotation = (subtype: string, more: Record<string, unknown>) =>
    context.register(context.obj({ Type: 'Annot', Subtype: subtype, Rect: rect, ...more } as never))
  const look = (words: string) =>
    context.register(
      context.stream(`BT /F1 10 Tf 2 2 Td (${words}) Tj ET`, {
        Type: 'XObject',
        Subtype: 'Form',
        BBox: [0, 0, 100, 40],
        Resources: { Font: { F1: font.ref } },
        Metadata: context.register(context.stream(SCRIPT, { Type: 'Metadata', Subtype: 'XML' })),
        AF: [file],
        Ref: { F: file, Page: 0 },
      }),
    )
  first.node.set(PDFName.of('AA'), context.obj({ O: script(), C: script() }))
  first.node.set(PDFName.of('AF'), context.obj([file]))
  first.node.set(PDFName.of('Metadata'), context.register(context.stream(SCRIPT, { Type: 'Metadata' })))
  first.node.set(
    PDFName.of('Annots'),
    context.obj([
      annotation('Link', { A: script() }),
      annotation('Link', { A: action({ S: 'Launch', F: file }) }),
      annotation('Link', { A: action({ S: 'URI', URI: PDFString.of('http://example.invalid/alive') }) }),
      annotation('Stamp', { AP: { N: look('APPROVED STAMP') }, A: script() }),
      annotation('Widget', {
        FT: 'Tx',
        T: PDFString.of('field'),
        V: PDFString.of('filled in'),
        AP: { N: look('FILLED FIELD') },
        AA: { K: script() },
      }),
      annotation('Stamp', { F: 2, AP: { N: look('HIDDEN STAMP') } }),
      annotation('Square', { C: [1, 0, 0] }),
      annotation('FileAttachment', { FS: file, F: 2 }),
      annotation('RichMedia', { RichMediaContent: { Assets: { Names: [file] } }, F: 2 }),
    ]),
  )
  addToResources(first.node.Resources(), context, file)
  const { catalog } = pdf
  catalog.set(PDFName.of('OpenAction'), script())
  catalog.set(PDFName.of('AA'), context.obj({ WC: script() }))
  catalog.set(
    PDFName.of('Names'),
    context.obj({
      JavaScript: { Names: [PDFString.of('start'), script()] },
      EmbeddedFiles: { Names: [PDFString.of('alive.exe'), file] },
    } as never),
  )
  catalog.set(
    PDFName.of('AcroForm'),
    context.obj({ Fields: [], XFA: context.register(context.stream(SCRIPT)) } as never),
  )
  return await pdf.save({ useObjectStreams: false, updateFieldAppearances: false })
}

/** Live things where only looks belong. */
function addToResources(resources: PDFDict | undefined, context: PDFContext, file: PDFObject): void {
  if (resources === undefined) throw new Error('a page without resources')
  const set = (key: PDFName, value: PDFObject): void => resources.set(key, value)
  set(PDFName.of('JavaScript'), context.register(context.obj({ S: 'JavaScript', JS: PDFString.of(SCRIPT) })))
  set(PDFName.of('Properties'), context.obj({ MC0: { Type: 'OCG', AF: [file], JS: PDFString.of(SCRIPT) } } as never))
  set(
    PDFName.of('ColorSpace'),
    context.obj({ Cs1: ['Separation', 'Alive', 'DeviceRGB', { FunctionType: 2, JS: PDFString.of(SCRIPT) }] } as never),
  )
  set(
    PDFName.of('XObject'),
    context.obj({
      Ps: context.register(context.stream(SCRIPT, { Type: 'XObject', Subtype: 'PS' })),
      Ext: context.register(
        context.stream('', {
          Type: 'XObject',
          Subtype: 'Image',
          Width: 1,
          Height: 1,
          F: PDFString.of('/alive'),
        }),
      ),
    }),
  )
}
