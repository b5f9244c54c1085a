// Makes the invented papers that the demo house appends to its packet; run it again after a change of examples/equipment.yaml:
// node examples/make-papers.mjs [FOLDER]
import { createWriteStream, mkdirSync, readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'

const require = createRequire(import.meta.url)
const PDFDocument = require('pdfkit')
const equipment = require('yaml').parse(readFileSync(new URL('equipment.yaml', import.meta.url), 'utf8'))

const date = '2026-02-20'
const house = '12 Lark Hollow, Sampletown (invented)'
const warning = 'INVENTED - DEMONSTRATION ONLY. Nobody made, sells, listed or approved anything on this page.'
const [, , folder = fileURLToPath(new URL('papers', import.meta.url))] = process.argv
mkdirSync(folder, { recursive: true })

/** A page with its title and what it says: paragraphs, or rows of a name and a value. */
function paper(file, title, lines, picture) {
  const created = new Date(`${date}T00:00:00Z`)
  const doc = new PDFDocument({
    size: 'letter',
    margin: 72,
    lang: 'en-US',
    info: { Title: `${title} (INVENTED)`, CreationDate: created, ModDate: created },
  })
  doc.pipe(createWriteStream(join(folder, file)))
  doc.font('Helvetica-Bold').fontSize(12).text(warning)
  doc.moveDown().fontSize(18).text(title)
  doc.fontSize(11).moveDown(0.5)
  for (const line of lines) {
    if (typeof line === 'string') doc.font('Helvetica').moveDown().text(line)
    else {
      const [name, value] = line
      const { y } = doc
      doc.font('Helvetica').text(name, 72, y + 5)
      doc.text(String(value), 340, y + 5)
      if (name === 'Model') doc.rect(66, y, 480, 20).stroke('#c00000')
    }
  }
  doc.x = 72
  picture?.(doc)
  doc.end()
}

/** Data sheet of one device; its model is marked, as authorities ask. */
function dataSheet(file, what, item, rows) {
  paper(file, `Data sheet: ${item.sheet.replace(' (invented)', '')}`, [
    `${what}. The model of this project is in the frame.`,
    '',
    ['Model', item.name],
    ...rows,
  ])
}

const { m410 } = equipment.modules
dataSheet('module.pdf', 'Photovoltaic module', m410, [
  ['Rated power', `${m410.pmax_w} W`],
  ['Open-circuit voltage', `${m410.voc_v} V`],
  ['Short-circuit current', `${m410.isc_a} A`],
  ['Voltage and current at rated power', `${m410.vmp_v} V, ${m410.imp_a} A`],
  ['Temperature coefficient of power', `${m410.pmax_temp_coeff_pct_per_c} % per deg C`],
  ['Temperature coefficient of open-circuit voltage', `${m410.voc_temp_coeff_pct_per_c} % per deg C`],
  ['Largest series fuse', `${m410.max_series_fuse_a} A`],
  ['Largest system voltage', `${m410.max_system_voltage_v} V`],
  ['Length, width, thickness', `${m410.length_in} x ${m410.width_in} x ${m410.thickness_in} in`],
  ['Weight', `${m410.weight_lb} lb`],
  ['Design load down, up', `${m410.design_load_down_psf} psf, ${m410.design_load_up_psf} psf`],
  ['Fire type', m410.fire_type],
  ['Listing', `${m410.listing} (invented)`],
])

const { micro366 } = equipment.inverters
dataSheet('inverter.pdf', 'Module-level inverter', micro366, [
  ['Rated output', `${micro366.ac_power_w} W at ${micro366.ac_voltage_v} V`],
  ['Rated output current', `${micro366.ac_current_a} A`],
  ['Weighted efficiency', `${micro366.weighted_efficiency_pct} %`],
  ['Largest DC power, voltage', `${micro366.max_dc_power_w} W, ${micro366.max_dc_voltage_v} V`],
  ['Tracking range', `${micro366.mppt_min_v} to ${micro366.mppt_max_v} V`],
  ['Largest short-circuit current of the input', `${micro366.max_input_isc_a} A`],
  ['Inverters on a branch', `up to ${micro366.max_per_branch}, breaker up to ${micro366.max_branch_ocpd_a} A`],
  ['Rapid shutdown', 'at the module'],
  ['Weight', `${micro366.weight_lb} lb`],
  ['Listing', `${micro366.listing} (invented)`],
])

const { rail40 } = equipment.rails
dataSheet('rail.pdf', 'Mounting rail with its clamps', rail40, [
  ['Alloy', rail40.alloy],
  ['Longest span', `${rail40.max_span_in} in`],
  ['Longest free end', `${rail40.max_cantilever_in} in`],
  ['Section modulus, strong and weak way', `${rail40.section_modulus_x_in3} in3, ${rail40.section_modulus_y_in3} in3`],
  ['Lengths', rail40.stock_lengths_in.map((each) => `${each} in`).join(', ')],
  ['Torque of the clamps', `${rail40.clamp.torque_lb_in} lb-in`],
  ['Weight', `${rail40.weight_lb_per_ft} lb per ft`],
  ['Fire class', `${rail40.fire.class} with modules of type ${rail40.fire.module_types.join(' and ')}`],
  ['Listing', rail40.fire.listing],
])

const { flashed_foot: foot } = equipment.mounts
dataSheet('mount.pdf', 'Roof mount with flashing', foot, [
  ['Capacity, uplift', `${foot.capacity_uplift_lb} lb`],
  ['Capacity, down', `${foot.capacity_down_lb} lb`],
  ['Capacity along the roof', `${foot.capacity_lateral_lb} lb`],
  [
    'Lag screw',
    `${foot.lag.count} of ${foot.lag.size} x ${foot.lag.length_in} in, lead hole ${foot.lag.lead_hole_in} in`,
  ],
  ['Torque', `${foot.torque_lb_in} lb-in`],
  ['Weight', `${foot.weight_lb} lb`],
])

paper(
  'photographs.pdf',
  'Photographs: panel label, breakers, meter',
  [
    house,
    'Three photographs of the house belong here: the label of the main panel so that its ratings can be read, its breakers with the directory, and the meter. These are drawings in their place.',
  ],
  (doc) => {
    doc.lineWidth(1)
    for (const [index, caption] of ['1. Label of the panel', '2. Breakers', '3. Meter'].entries()) {
      const x = 72 + 160 * index
      doc.rect(x, 260, 148, 180).stroke('#000000')
      doc.text(caption, x, 448, { width: 148 })
      if (index === 0)
        for (const y of [300, 330, 360, 390])
          doc
            .moveTo(x + 25, y)
            .lineTo(x + 123, y)
            .stroke()
      if (index === 1)
        for (let row = 0; row < 7; row += 1)
          for (const column of [38, 78]) doc.rect(x + column, 285 + 20 * row, 32, 14).stroke()
      if (index === 2)
        doc
          .circle(x + 74, 350, 48)
          .circle(x + 74, 350, 40)
          .stroke()
    }
  },
)
paper('association.pdf', 'Approval of the association', [
  `Dated ${date}`,
  house,
  'This page stands where the approval of an owners association, or of zoning, belongs where one is needed. The invented association of Lark Hollow has no objection to modules on the south and the west roof that lie parallel to it.',
])
paper('utility.pdf', 'Approval of the utility', [
  `Dated ${date}`,
  house,
  'This page stands where the approval number of the utility belongs. Invented number: 0000-0 of the invented Sampletown Light Cooperative, for module-level inverters behind one breaker in the main panel.',
])
paper('application.pdf', 'Application for a permit', [
  `Dated ${date}`,
  house,
  'This page stands where the application form of the building department belongs, filled in and signed by its applicant. fill-form fills such a form; its signature stays with the person.',
  '',
  ['Work', 'Photovoltaic system on the roof'],
  ['Value of work', '21,900 USD (invented)'],
  ['Applicant', 'A. Lindqvist (invented), owner'],
])
