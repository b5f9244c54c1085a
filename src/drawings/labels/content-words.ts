import { isAc } from '../../electrical/index.js'
import { landingPanel, panelName, servicePanel } from '../../project/facts.js'
import { own } from '../../values/index.js'
import type { LabelFacts } from './label-facts.js'

/**
 * What a label says beside or instead of a phrase of the code: ratings, places, names. Our words, as the section only
 * prescribes the content.
 */
export function contentWords(id: string, facts: LabelFacts): string | undefined {
  switch (id) {
    case 'PV_DISC':
      return 'PV SYSTEM DISCONNECT'
    case 'DC_SOURCE':
      return dcSource(facts)
    case 'AC_POI':
      return `POWER SOURCE: PHOTOVOLTAIC\nRATED AC OUTPUT CURRENT ${facts.wiring.panel.inverter_a.toFixed(1)} A\nNOMINAL AC VOLTAGE ${facts.project.electrical?.service?.voltage_v ?? 240} V`
    case 'RSD_PLACARD':
      return `RAPID SHUTDOWN SWITCH: ${initiatorPlace(facts)}`
    case 'DIRECTORY':
      return directory(facts)
    case 'SOURCES_PRESENT':
      return 'THIS PANEL IS SUPPLIED BY TWO SOURCES:\nUTILITY AND PHOTOVOLTAIC SYSTEM'
    case 'DISC_PURPOSE':
      return `PV SYSTEM BREAKER ${[...new Set(pvBreakers(facts).flatMap(({ breaker_a: rating }) => (rating === null ? [] : [`${rating} A`])))].join(', ')}`
    case 'MULTI_RSD':
      return `PLAN VIEW OF THE ROOF (SHEET A-101), DOTTED LINE ROUND THE MODULES THAT STAY ENERGIZED AFTER RAPID SHUTDOWN: ARRAY ${stringArrays(facts).join(', ').replaceAll('_', ' ').toUpperCase()}`
    default:
      return undefined
  }
}

/** Circuits with a PV breaker in the main panel. */
export function pvBreakers(facts: LabelFacts) {
  return facts.wiring.circuits.filter((circuit) => (facts.hasCombiner ? circuit.id === 'output' : isAc(circuit)))
}

function stringArrays(facts: LabelFacts): string[] {
  return Object.entries(facts.project.arrays).flatMap(([id, array]) => (array.strings === undefined ? [] : [id]))
}

function dcSource(facts: LabelFacts): string | undefined {
  const { strings, circuits } = facts.wiring
  const groups = circuits.filter((each) => !isAc(each))
  if (groups.length === 0) return undefined
  const highest = Math.ceil(Math.max(...strings.map((each) => each.voc_cold_v)))
  const current = Math.max(...groups.map((each) => each.continuous_a))
  if (facts.edition === 'NEC 2020' || facts.edition === 'NEC 2023' || facts.edition === 'NEC 2026')
    return `MAXIMUM DC VOLTAGE OF PV SYSTEM ${highest} V`
  const least = `MAXIMUM VOLTAGE ${highest} V DC\nMAXIMUM CIRCUIT CURRENT ${current.toFixed(1)} A`
  if (facts.edition === 'NEC 2017') return least
  const modules = groups
    .flatMap((circuit) => Object.keys(circuit.modules))
    .flatMap((id) => own(facts.project.equipment.modules, own(facts.project.arrays, id)?.module) ?? [])
  const operatingV = Math.max(...groups.map((each) => each.voltage_v))
  const operatingA = Math.max(...modules.map((module) => module.imp_a ?? 0))
  return `RATED MAXIMUM POWER-POINT CURRENT ${operatingA.toFixed(1)} A\nRATED MAXIMUM POWER-POINT VOLTAGE ${operatingV.toFixed(0)} V\n${least}`
}

/** What the phrase of the placard calls the rapid shutdown switch, by its place. */
function initiatorPlace(facts: LabelFacts): string {
  const { electrical } = facts.project
  const shutdown = electrical?.rapid_shutdown
  if (shutdown?.initiator === 'service_disconnect')
    return withPlace('SERVICE DISCONNECT', servicePanel(electrical).stated?.location)
  if (shutdown?.initiator === 'pv_disconnect') {
    const [first] = disconnectPlaces(facts)
    return first === undefined ? `PV SYSTEM ${devicePlace(facts, 'BREAKER')}` : `PV SYSTEM DISCONNECT, ${first}`
  }
  return shutdown?.initiator_outdoors === true ? 'SEPARATE SWITCH, OUTDOORS' : 'SEPARATE SWITCH'
}

/** Where the PV breaker is, or the device at the end of a tap; the only panel is the main panel, whatever it is called. */
function devicePlace({ project: { electrical } }: LabelFacts, breaker: string): string {
  const { kind, at = '' } = electrical?.connection ?? {}
  if (kind === 'feeder_tap') return `DEVICE AT THE END OF TAP ${at.replaceAll('_', ' ').toUpperCase()}`
  const landing = landingPanel(electrical)
  const panel = landing.where === 'electrical.panel' ? 'THE MAIN PANEL' : `PANEL ${panelName(landing).toUpperCase()}`
  return withPlace(`${breaker} IN ${panel}`, landing.stated?.location)
}

const withPlace = (what: string, place: string | undefined): string =>
  place === undefined ? what : `${what}, ${place.toUpperCase()}`

function directory(facts: LabelFacts): string {
  const { electrical } = facts.project
  const panel = servicePanel(electrical)
  const service = withPlace(`SERVICE DISCONNECT: ${panelName(panel).toUpperCase()}`, panel.stated?.location)
  const others = disconnectPlaces(facts).map((place) => `PV SYSTEM DISCONNECT: ${place}`)
  const isHere = landingPanel(electrical).id === panel.id && electrical?.connection?.kind !== 'feeder_tap'
  const device = isHere ? 'BACKFED BREAKER IN THIS PANEL' : devicePlace(facts, 'BACKFED BREAKER')
  const pv = others.length > 0 ? others : [`PV SYSTEM DISCONNECT: ${device}`]
  return ['LOCATION OF POWER SOURCE DISCONNECTS', service, ...pv].join('\n')
}

function disconnectPlaces({ project, supplySide }: LabelFacts): string[] {
  const stated = Object.entries(project.electrical?.disconnects ?? {})
    .filter(([, each]) => each.kind === 'pv_system')
    .map(([id, each]) => placeOf(id, each.location))
  return stated.length === 0 && supplySide ? ['AHEAD OF THE SERVICE DISCONNECT'] : stated
}

/** Where a disconnect is, in the words of its id and location; an id such as `pv` tells no place. */
function placeOf(id: string, location: string | undefined): string {
  const words = id.split('_').join(' ')
  const tellsPlace = !/^(?:pv|system|disconnect| )+$/u.test(words)
  return [...(tellsPlace || location === undefined ? [words] : []), ...(location === undefined ? [] : [location])]
    .join(', ')
    .toUpperCase()
}
