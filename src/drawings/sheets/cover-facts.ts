import { type WiringValues } from '../../electrical/index.js'
import { landingPanel } from '../../project/facts.js'
import type { Project } from '../../project/index.js'
import { systemSize } from '../system-size.js'
import type { PacketInput } from '../inputs.js'
import { counted, plainNumber } from '../layout/index.js'
import { nodeTitle } from '../node-title.js'
import { landingTitle } from './one-line-landing.js'
import { serviceWords } from '../diagram/service-words.js'
import { rafterDocuments } from './rafter-documents.js'

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

export function scopeText(input: PacketInput): string {
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

export function projectFacts(input: PacketInput): [string, string][] {
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
        : `${wiring.values.panel.rule}, ${wiring.values.edition} ${wiring.values.panel.section}: ${allowedText(wiring.values.panel)}`,
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

/** Storeys, occupancy and type of construction, as far as they are stated. */
function buildingWords({ existing_house: house }: Project): string | undefined {
  const words = [
    house?.storeys === undefined ? undefined : counted(house.storeys, 'storey'),
    house?.occupancy === undefined ? undefined : `occupancy ${house.occupancy}`,
    house?.construction_type === undefined ? undefined : `construction type ${house.construction_type}`,
  ].filter((each) => each !== undefined)
  return words.length === 0 ? undefined : words.join(', ')
}

/** The current of the inverters with its limit; on a tap the parts on the way set limits of their own. */
function allowedText({ inverter_a: current, max_inverter_a: most }: WiringValues['panel']): string {
  return Number.isFinite(most)
    ? `${plainNumber(current)} A of ${plainNumber(most, 1)} A allowed`
    : `${plainNumber(current)} A; limits of each part: sheet E-602`
}
