import { existingHouseChecks, type WiringValues } from '../../electrical/index.js'
import { isUnconfirmed } from '../unconfirmed.js'
import { landingPanel } from '../../project/facts.js'
import type { Project } from '../../project/index.js'
import { systemSize } from '../system-size.js'
import type { PacketInput } from '../inputs.js'
import { counted, flowBlocks, label, line, plainNumber, TYPE_PT, type Block, type SheetDraft } from '../layout/index.js'
import { blockHeightPt, onLayer, wrapText, xy, type Primitive } from '../model/index.js'
import { nodeTitle } from '../node-title.js'
import { equipmentRows } from './equipment-rows.js'
import { sheetSource } from '../sheet-source.js'
import { continued, type SheetJob } from './job.js'
import { landingTitle } from './one-line-landing.js'
import { serviceWords } from '../diagram/service-words.js'
import { rafterDocuments } from './rafter-documents.js'
import { vicinityBlocks } from './vicinity.js'

/** Sheet G-001: what the packet is about. `index` lists the sheets that follow. */
export function coverSheets(job: SheetJob, index: readonly (readonly [id: string, title: string])[]): SheetDraft[] {
  const { input } = job
  const { body } = job.stationery
  const columns = body.width > 600 ? 3 : 2
  const titleLines = wrapText(input.project.title, TYPE_PT.title, 'bold', (body.width - 18 * (columns - 1)) / columns)
  const blocks: Block[] = [
    {
      kind: 'figure',
      heightPt: blockHeightPt(titleLines.length, TYPE_PT.title) + 22,
      draw: (x, y) => [
        label(x, y, 'PERMIT DRAWINGS: PHOTOVOLTAIC SYSTEM', { face: 'bold', color: 'grey' }),
        label(x, y + 14, titleLines.join('\n'), { sizePt: TYPE_PT.title, face: 'bold' }),
      ],
    },
    { kind: 'heading', text: 'Scope of work' },
    { kind: 'text', text: scopeText(input) },
    ...draftBlocks(input),
    { kind: 'heading', text: 'Project data' },
    { kind: 'facts', facts: projectFacts(input) },
    { kind: 'heading', text: 'Equipment' },
    {
      kind: 'table',
      columns: [
        { heading: 'Item', share: 0.2 },
        { heading: 'No.', share: 0.15 },
        { heading: 'Name', share: 0.21 },
        { heading: 'Ratings', share: 0.44 },
      ],
      rows: equipmentRows(input).map((row) => row.slice(0, 4)),
    },
    ...houseBlocks(input),
    ...vicinityBlocks(job),
    { kind: 'heading', text: 'Sheet index' },
    {
      kind: 'table',
      columns: [
        { heading: 'Sheet', share: 0.35, bold: true },
        { heading: 'Title', share: 0.65 },
      ],
      rows: indexRows(index),
    },
    ...issueBlocks(input),
    { kind: 'heading', text: 'General notes' },
    { kind: 'list', numbered: true, items: generalNotes(input) },
    { kind: 'heading', text: 'Lines and marks' },
    legend(),
  ]
  const bare = flowBlocks(blocks, body, columns)
  const withBox = flowBlocks([...blocks, ...approval()], body, columns)
  // Every sheet has room for stamps in its strip, so the box alone is not worth a sheet.
  const pages = bare.length < withBox.length ? bare : withBox
  return pages.map((paper, page) => ({
    id: continued('G-001', page),
    title: page === 0 ? 'Cover sheet' : 'Cover sheet, continued',
    // Nothing of it is to scale but the vicinity sketch.
    scale: paper.some(({ layer }) => layer === 'street') ? 'As noted' : 'None',
    paper,
  }))
}

/** The index by series: a sheet that goes on at others is one row that names the first and the last. */
function indexRows(index: readonly (readonly [id: string, title: string])[]): string[][] {
  const rows: { readonly first: string; readonly title: string; last: string }[] = []
  for (const [id, title] of index) {
    const before = rows.at(-1)
    const suffix = before === undefined ? undefined : id.slice(before.first.length)
    if (before !== undefined && id.startsWith(`${before.first}-`) && /^-\d+$/u.test(suffix ?? '')) before.last = id
    else rows.push({ first: id, last: id, title })
  }
  return rows.map(({ first, last, title }) => [first === last ? first : `${first} to ${last}`, title])
}

/** What the cover says of batteries; those that are there already count too. */
function storageText({ project, wire }: PacketInput): string {
  const storage = wire?.values.storage
  const existing = Object.values(project.electrical?.distribution?.sources ?? {}).some(({ kind }) => kind === 'storage')
  if (storage === undefined)
    return (project.storage?.count ?? 0) > 0
      ? 'With batteries that these sheets do not show'
      : existing
        ? 'No new batteries beside those that are there'
        : 'No batteries'
  const energy = storage.nameplate_kwh === null ? '' : `, ${plainNumber(storage.nameplate_kwh, 1)} kWh nameplate in all`
  const places = [...new Set(storage.places.map(({ location }) => location))].join(', ')
  const backup = {
    critical_loads_panel: ', with backup of a panel of critical loads',
    whole_house: ', with backup of the whole house',
    none: ', without backup',
  }[storage.backup?.kind ?? 'none']
  return `With energy storage: ${storage.count} x ${storage.name}${energy}${places === '' ? '' : `, ${places}`}${backup}`
}

function scopeText(input: PacketInput): string {
  const { project, wire: wiring } = input
  const { modules, dcKw, acKw, planes } = systemSize(input)
  const onRacks = Object.values(project.arrays).some((array) => array.module_tilt_deg !== undefined)
  const site = project.site.address === undefined ? '' : ` at ${project.site.address}`
  const link =
    wiring === undefined
      ? ''
      : project.electrical?.connection?.kind === 'supply_side'
        ? ' It is connected on the supply side of the service disconnect.'
        : ` It is connected ${connectionWords(project, wiring.values)}.`
  const ac = acKw === undefined ? '' : `, ${plainNumber(acKw)} kW AC`
  return `Installation of a grid-tied photovoltaic system on the roof of a dwelling${site}: ${counted(modules, 'module')}, ${plainNumber(dcKw)} kW DC${ac}, on ${planes.length === 1 ? 'one roof plane' : `${planes.length} roof planes`} (${planes.join(', ')}), ${onRacks ? 'on racks' : 'parallel to the roof'}.${link} ${storageText(input)}, and no change of the structure of the building.`
}

/** Name of the panel whose ratings stand beside it. */
function panelTitle({ electrical }: Project, { distribution }: WiringValues): string {
  const node = distribution.find(({ id }) => id === landingPanel(electrical).id)
  return electrical?.distribution === undefined || node === undefined ? 'Main panel' : nodeTitle(node)
}

/** Where the output lands, as the diagram names it. */
function connectionWords(project: Project, wiring: WiringValues): string {
  const { connection, distribution } = project.electrical ?? {}
  if (connection?.kind === 'feeder_tap') return `to the ${landingTitle(project, wiring)} of a feeder`
  return `to the ${distribution === undefined ? 'main panel' : landingTitle(project, wiring)} by a backfed breaker`
}

/** Errors that stop a permit packet, and values that nobody confirmed; a draft lists them. */
function draftBlocks(input: PacketInput): Block[] {
  const errors = input.findings.filter((finding) => finding.severity === 'error' || isUnconfirmed(finding))
  if (!input.draft) return []
  return [
    { kind: 'heading', text: 'DRAFT: not for permit' },
    errors.length === 0
      ? { kind: 'text', text: 'Drawn as a draft; no check fails.' }
      : {
          kind: 'list',
          numbered: true,
          items: errors.map(
            (finding) =>
              `${finding.message}${finding.where === '' ? '' : ` (${finding.where})`}${finding.source === undefined ? '' : `; ${sheetSource(finding.source)}`}`,
          ),
        },
  ]
}

function projectFacts(input: PacketInput): [string, string][] {
  const { project, wire: wiring, mounts } = input
  const { codes, structure, electrical, parties } = project
  const wind = structure?.wind
  const snow = structure?.snow
  const facts: [string, string | undefined][] = [
    ['Site', project.site.address],
    ['Parcel', project.site.parcel],
    ['Building', buildingWords(project)],
    ['Owner', parties?.owner?.name],
    ['Installer', withLicense(parties?.installer)],
    ['Electrician', withLicense(parties?.electrician)],
    ['Authority', parties?.authority?.name],
    ['Utility', parties?.utility?.name],
    ['Electrical code', codes?.electrical],
    ['Residential or fire code', codes?.residential],
    ['Loads', codes?.loads],
    ['Wood', codes?.wood],
    ['Local amendments', codes?.local_amendments?.join('; ')],
    [
      'Wind',
      wind?.basic_speed_mph === undefined
        ? undefined
        : `${wind.basic_speed_mph} mph, exposure ${wind.exposure ?? 'not stated'}, mean roof height ${wind.mean_roof_height_ft ?? 'not stated'} ft`,
    ],
    ['Ground snow', snow?.ground_psf === undefined ? undefined : `${snow.ground_psf} psf`],
    [
      'Service',
      electrical?.service?.rating_a === undefined
        ? undefined
        : `${electrical.service.rating_a} A, ${serviceWords(electrical.service)}`,
    ],
    [
      wiring === undefined ? 'Main panel' : panelTitle(project, wiring.values),
      wiring === undefined || wiring.values.panel.bus_a === null
        ? undefined
        : `${wiring.values.panel.bus_a} A bus, ${wiring.values.panel.main_a ?? '?'} A main breaker`,
    ],
    [
      'Connection',
      wiring === undefined
        ? undefined
        : `${wiring.values.panel.rule}, ${wiring.values.edition} ${wiring.values.panel.section}: ${plainNumber(wiring.values.panel.inverter_a)} A of ${plainNumber(wiring.values.panel.max_inverter_a, 1)} A allowed`,
    ],
    ...rafterDocuments(input).map((text) => ['Rafters', text] as [string, string]),
    ['Added dead load', mounts === undefined ? undefined : `${plainNumber(mounts.values.added_dead_load_psf)} psf`],
  ]
  return facts.flatMap(([name, value]) => (value === undefined ? [] : [[name, value]]))
}

function withLicense(party: { name: string; license?: string } | undefined): string | undefined {
  return party === undefined
    ? undefined
    : [party.name, party.license].filter((each) => each !== undefined).join(', licence ')
}

/** All issues; the strip of a sheet has room for the newest only. */
function issueBlocks({ project }: PacketInput): Block[] {
  const issues = project.document?.revisions ?? []
  if (issues.length === 0) return []
  return [
    { kind: 'heading', text: 'Revisions' },
    {
      kind: 'table',
      columns: [
        { heading: 'Rev', share: 0.12, bold: true },
        { heading: 'Date', share: 0.22 },
        { heading: 'What', share: 0.66 },
      ],
      rows: issues.map(({ number, date, text }) => [number, date, text]),
    },
  ]
}

const HOUSE_STATES = {
  met: '',
  not_met: 'TO BE MENDED: ',
  not_stated: 'TO BE LOOKED AT: ',
  not_needed: 'not needed: ',
} as const

/** What the permit sets off in the house as it is; left out while the project states nothing of it. */
function houseBlocks({ project }: PacketInput): Block[] {
  if (project.existing_house === undefined) return []
  return [
    { kind: 'heading', text: 'The house as it is' },
    {
      kind: 'facts',
      facts: existingHouseChecks(project).map(({ about, state, says, source }) => [
        about,
        `${HOUSE_STATES[state]}${says}; ${sheetSource(source)}`,
      ]),
    },
  ]
}

function generalNotes(input: PacketInput): string[] {
  const edition = input.project.codes?.electrical ?? 'the adopted electrical code'
  return [
    `All work follows ${edition}, the codes named on this sheet and the local amendments; the authority having jurisdiction decides.`,
    'Equipment is listed for its use and installed as its instructions and listing say.',
    'Breakers that are backfed are suitable for it and carry no LINE or LOAD mark.',
    'Metal parts of modules, rails, boxes and raceways are bonded; fittings outdoors are rain-tight.',
    'Raceways on the roof stand clear of its surface as the conductor schedule says, and keep the fire access pathways free.',
    'Penetrations are flashed and sealed; cut roofing is made good.',
    'Work at height is secured against falls. Modules make voltage whenever there is light on them, and the line side of the main breaker stays live with the main off.',
    'A licensed electrician makes or checks the final connection where the law asks for it.',
    ...(input.documents.length === 0
      ? []
      : ['Data sheets of the makers follow the drawings, each page with its sheet number.']),
  ]
}

function legend(): Block {
  const rows: readonly (readonly [string, (x: number, y: number) => Primitive])[] = [
    ['Outline, wire', (x, y) => line(x, y, x + 30, y, { pen: 'medium' })],
    ['Cut or main outline', (x, y) => line(x, y, x + 30, y, { pen: 'heavy' })],
    ['Raceway on a plan', (x, y) => line(x, y, x + 30, y, { pen: 'heavy', dash: 'dashed' })],
    ['Equipment ground on the diagram', (x, y) => line(x, y, x + 30, y, { pen: 'thin', dash: 'dashed' })],
    ['Centre line, lot line', (x, y) => line(x, y, x + 30, y, { pen: 'thin', dash: 'center' })],
    [
      'Number of a conductor or raceway',
      (x, y) => ({ kind: 'circle', center: xy(x + 15, y), radiusPt: 5, pen: 'thin' }),
    ],
  ]
  return {
    kind: 'figure',
    heightPt: rows.length * 13,
    draw: (x, y, width) =>
      onLayer(
        'legend',
        rows.flatMap(([text, draw], index) => [
          draw(x, y + 6 + index * 13),
          label(x + 38, y + 6 + index * 13, text, { sizePt: TYPE_PT.small, valign: 'middle', maxWidthPt: width - 38 }),
        ]),
      ),
  }
}

function approval(): Block[] {
  return [
    { kind: 'heading', text: 'For the authority having jurisdiction' },
    {
      kind: 'figure',
      heightPt: 120,
      draw: (x, y, width) => [
        { kind: 'rectangle', x, y, width, height: 118, pen: 'medium' },
        label(x + 5, y + 5, 'APPROVAL', { sizePt: TYPE_PT.small, face: 'bold', color: 'grey' }),
      ],
    },
  ]
}

/** Storeys, occupancy and type of construction, as far as they are stated. */
function buildingWords({ existing_house: house }: Project): string | undefined {
  const words = [
    house?.storeys === undefined ? undefined : counted(house.storeys, 'storey'),
    house?.occupancy === undefined ? undefined : `occupancy ${house.occupancy}`,
    house?.construction_type === undefined ? undefined : `construction type ${house.construction_type}`,
  ].filter((each) => each !== undefined)
  return words.length === 0 ? undefined : words.join(', ')
}
