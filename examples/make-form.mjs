// Makes the invented application form that the demo house fills; run it again after a change: node examples/make-form.mjs
import { writeFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { fileURLToPath } from 'node:url'

const { PDFDocument, PDFName, PDFString, rgb, StandardFonts } = createRequire(import.meta.url)('@cantoo/pdf-lib')

const pdf = await PDFDocument.create({ updateMetadata: false })
pdf.setTitle('Application for a solar permit (INVENTED)')
const { context } = pdf
const page = pdf.addPage([612, 792])
const [plain, bold] = [
  pdf.embedStandardFont(StandardFonts.Helvetica),
  pdf.embedStandardFont(StandardFonts.HelveticaBold),
]
const form = pdf.getForm()
const draw = (text, x, y, size = 9, font = plain) => page.drawText(text, { x, y, size, font })
const tooltip = (field, text) => field.acroField.dict.set(PDFName.of('TU'), PDFString.of(text))

draw('INVENTED - DEMONSTRATION ONLY', 40, 756, 9, bold)
draw('Sampletown Building Office', 40, 735, 16, bold)
draw('Application for a permit: small solar system on a dwelling', 40, 716, 12)

let y = 684
const box = (x, width, height) => ({ x, y: y - 4, width, height, borderWidth: 0.5, font: plain })
const text = (name, label, x, width, says, options = {}) => {
  draw(label, x, y + 16)
  const field = form.createTextField(name)
  field.addToPage(page, { ...box(x, width, options.height ?? 17), y: y - 4 - ((options.height ?? 17) - 17) })
  if (options.size !== undefined) field.setFontSize(options.size)
  if (options.multiline) field.enableMultiline()
  if (options.cells !== undefined) {
    field.setMaxLength(options.cells)
    field.enableCombing()
  }
  if (options.required) field.enableRequired()
  if (options.readOnly) field.enableReadOnly()
  if (says !== undefined) tooltip(field, says)
  return field
}
const next = (step = 38) => (y -= step)

text('owner.name', 'Owner', 40, 250, 'Name of the owner of the house', { required: true })
text('owner.phone', 'Telephone', 310, 260, 'Telephone of the owner')
next()
text('site.address', 'Address of the work', 40, 250, undefined, { required: true, size: 10 })
text('site.zip', 'ZIP code', 310, 120, 'Five digits', { cells: 5 })
next()
text('system.dc', 'DC rating, kW', 40, 100, 'Rated power of all modules', { required: true })
text('system.ac', 'AC rating, kW', 160, 100, 'Rated power of all inverters', { required: true })
text('system.modules', 'Number of modules', 280, 100, undefined, { required: true })
text('system.energy', 'Energy a year, kWh', 400, 170)
next()
text('system.equipment', 'Modules and inverters', 40, 530, 'Number, maker and model', {
  multiline: true,
  height: 44,
  size: 10,
})
next(66)

draw('Electrical code', 40, y + 16)
const code = form.createDropdown('codes.electrical')
code.addOptions(['2017', '2020', '2023'])
code.addToPage(page, box(40, 100, 17))
text('panel.bus', 'Main panel busbar, A', 160, 100)
text('panel.main', 'Main breaker, A', 280, 100)
draw('Work that is part of it', 400, y + 16)
const work = form.createOptionList('work.kinds')
work.addOptions(['Roof', 'Wiring', 'Service'])
work.enableMultiselect()
work.addToPage(page, { ...box(400, 170, 44), y: y - 31 })
work.setFontSize(9)
next(58)

draw('Where are the modules?', 40, y + 16)
const where = form.createRadioGroup('system.place')
for (const [index, label] of ['On the roof', 'On the ground'].entries()) {
  where.addOptionToPage(label, page, { ...box(40 + 110 * index, 11, 11), borderWidth: 0.7 })
  draw(label, 56 + 110 * index, y - 1)
}
/** A box whose state has a name of its own, as forms have them. */
const tick = (name, label, x, state, says) => {
  const field = form.createCheckBox(name)
  field.addToPage(page, { x, y: y - 4, width: 11, height: 11, borderWidth: 0.7 })
  const [widget] = field.acroField.getWidgets()
  for (const kind of ['N', 'D']) {
    const looks = widget.dict.lookup(PDFName.of('AP')).lookup(PDFName.of(kind))
    const on = looks.get(PDFName.of('Yes'))
    looks.delete(PDFName.of('Yes'))
    looks.set(PDFName.of(state), on)
  }
  draw(label, x + 16, y - 1)
  if (says !== undefined) tooltip(field, says)
}
tick('owner.does_the_work', 'The owner does the work', 280, 'Owner')
tick('battery', 'With a battery', 440, 'On')
next(42)

text('remarks', 'Remarks', 40, 530, undefined, { multiline: true, height: 36, size: 9 })
next(72)
tick('declaration', 'I declare that all of this is true.', 40, 'Yes', 'Declaration of the owner')
next(40)
draw('Signature of the owner', 40, y + 18)
const signature = context.obj({
  Type: 'Annot',
  Subtype: 'Widget',
  FT: 'Sig',
  T: PDFString.of('owner.signature'),
  TU: PDFString.of('Signature of the owner'),
  Rect: [40, y - 4, 290, y + 15],
  F: 4,
  P: page.ref,
})
const ref = context.register(signature)
page.node.addAnnot(ref)
form.acroForm.addField(ref)
page.drawRectangle({ x: 40, y: y - 4, width: 250, height: 19, borderWidth: 0.5, borderColor: rgb(0, 0, 0) })
text('owner.date', 'Date', 310, 120)
next(50)
draw('Of the office', 40, y + 30, 10, bold)
text('office.permit_number', 'Permit number', 40, 250, 'Filled by the office')
text('office.fee', 'Fee, USD', 310, 120, 'Filled by the office')

const bytes = await pdf.save({ useObjectStreams: true, updateFieldAppearances: true })
writeFileSync(fileURLToPath(new URL('forms/sampletown-application.pdf', import.meta.url)), bytes)
