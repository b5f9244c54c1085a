import { inCapitals } from '../model/index.js'
import { isAc } from '../../electrical/index.js'
import { own } from '../../values/index.js'
import { labelTitle } from '../node-title.js'
import { pvOutputA } from '../pv-output.js'
import type { LabelFacts } from './label-facts.js'
import { landingPanel, placeTitle, servicePanels, sourcesThrough, type LabelPlace } from './label-places.js'

/**
 * What a label says beside or instead of a phrase of the code: ratings, places, names. Our words, as the section only
 * prescribes the content.
 *
 * @param place Where it goes, for a label that says something else at each place.
 */
export function contentWords(id: string, facts: LabelFacts, place?: LabelPlace): string | undefined {
  switch (id) {
    case 'PV_DISC':
      return 'PV SYSTEM DISCONNECT'
    case 'DC_SOURCE':
      return dcSource(facts)
    case 'AC_POI':
      return `POWER SOURCE: PHOTOVOLTAIC\nRATED AC OUTPUT CURRENT ${pvOutputA(facts.wiring).toFixed(1)} A\nNOMINAL AC VOLTAGE ${facts.project.electrical?.service?.voltage_v ?? 240} V`
    case 'RSD_PLACARD':
      return `RAPID SHUTDOWN SWITCH: ${initiatorPlace(facts)}`
    case 'DIRECTORY':
      return directory(facts)
    case 'SOURCES_PRESENT':
      return sourcesPresent(facts, place)
    case 'ESS_DISC':
      return storageDisconnect(facts)
    case 'ESS_SHUTDOWN':
      return 'EMERGENCY SHUTDOWN OF THE ENERGY STORAGE SYSTEM'
    case 'STANDBY_SIGN':
      return standbySign(facts)
    case 'PCS':
      return powerControl(facts)
    case 'DISC_PURPOSE':
      return `PV SYSTEM BREAKER ${[...new Set(pvBreakers(facts).flatMap(({ breaker_a: rating }) => (rating === null ? [] : [`${rating} A`])))].join(', ')}`
    case 'MULTI_RSD':
      return `PLAN VIEW OF THE ROOF (SHEET A-101), DOTTED LINE ROUND THE MODULES THAT STAY ENERGIZED AFTER RAPID SHUTDOWN: ARRAY ${inCapitals(stringArrays(facts).join(', ').replaceAll('_', ' '))}`
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
  const panel = locationOf(servicePanels(facts)[0], facts)
  const shutdown = facts.project.electrical?.rapid_shutdown
  if (shutdown?.initiator === 'service_disconnect') return withPlace('SERVICE DISCONNECT', panel)
  if (shutdown?.initiator === 'pv_disconnect') {
    const [first] = disconnectPlaces(facts)
    return first === undefined
      ? (tapDevice(facts) ??
          withPlace(`PV SYSTEM BREAKER IN THE ${landingTitle(facts)}`, locationOf(landingPanel(facts), facts)))
      : `PV SYSTEM DISCONNECT, ${first}`
  }
  return shutdown?.initiator_outdoors === true ? 'SEPARATE SWITCH, OUTDOORS' : 'SEPARATE SWITCH'
}

const withPlace = (what: string, place: string | undefined): string =>
  place === undefined ? what : `${what}, ${inCapitals(place)}`

/** What parts a system on a feeder tap: not a breaker in a panel, but the device at the end of the tap. */
function tapDevice({ project }: LabelFacts): string | undefined {
  const { kind, at = '' } = project.electrical?.connection ?? {}
  return kind === 'feeder_tap'
    ? `OVERCURRENT DEVICE AT THE END OF FEEDER TAP ${inCapitals(at.replaceAll('_', ' '))}`
    : undefined
}

/** Panels, disconnects and older sources, one a line. */
function directory(facts: LabelFacts): string {
  const service = servicePanels(facts).map((place) =>
    withPlace(`SERVICE DISCONNECT: ${titleOf(place, facts)}`, locationOf(place, facts)),
  )
  const others = disconnectPlaces(facts).map((place) => `PV SYSTEM DISCONNECT: ${place}`)
  const inPanel = facts.longForm ? landingTitle(facts) : 'THIS PANEL'
  const pv =
    others.length > 0 ? others : [`PV SYSTEM DISCONNECT: ${tapDevice(facts) ?? `BACKFED BREAKER IN ${inPanel}`}`]
  return ['LOCATION OF POWER SOURCE DISCONNECTS', ...service, ...pv, ...existingSources(facts)].join('\n')
}

/** Sources that are there already, with the part that they land on. */
function existingSources({ wiring }: LabelFacts): string[] {
  return wiring.distribution
    .filter(({ kind }) => kind === 'source')
    .map((source) => {
      const on = wiring.distribution.find(({ id }) => id === source.parent)
      const place =
        on === undefined || on.kind === 'service' ? 'AHEAD OF THE SERVICE DISCONNECT' : `ON ${labelTitle(on)}`
      return `${labelTitle(source)}: DISCONNECT ${place}`
    })
}

function titleOf(place: LabelPlace, facts: LabelFacts): string {
  if (place !== 'main_panel') {
    const title = placeTitle(place, facts.wiring)
    return labelTitle({ id: '', name: title })
  }
  return inCapitals(facts.project.electrical?.panel?.name ?? 'main panel')
}

const landingTitle = (facts: LabelFacts): string =>
  facts.longForm ? titleOf(landingPanel(facts), facts) : 'MAIN PANEL'

function locationOf(place: LabelPlace | undefined, { project }: LabelFacts): string | undefined {
  const { panel, distribution } = project.electrical ?? {}
  if (place === 'main_panel') return panel?.location
  return own(distribution?.panels, place?.slice('panel:'.length))?.location
}

const COUNT_WORDS = ['', '', 'TWO', 'THREE', 'FOUR', 'FIVE', 'SIX']

/** What feeds a panel: the utility and every source whose current passes its busbar. */
function sourcesPresent(facts: LabelFacts, place: LabelPlace | undefined): string {
  const ids = place?.startsWith('panel:') === true ? sourcesThrough(facts, place.slice('panel:'.length)) : ['pv']
  const names = ids.map((id) => {
    const node = facts.wiring.distribution.find((each) => each.id === id)
    return id === 'pv' || node === undefined ? 'PHOTOVOLTAIC SYSTEM' : labelTitle(node)
  })
  const all = ['UTILITY', ...names]
  const last = all.at(-1) ?? ''
  const number = COUNT_WORDS[all.length] ?? String(all.length)
  return `THIS PANEL IS SUPPLIED BY ${number} SOURCES:\n${all.slice(0, -1).join(', ')} AND ${last}`
}

/** What 2017 prescribes beside the name: values of the maker are written in at the unit. */
function storageDisconnect({ edition, wiring }: LabelFacts): string | undefined {
  if (edition !== 'NEC 2017') return undefined
  const volts = wiring.storage?.circuits[0]?.voltage_v
  return `ENERGY STORAGE SYSTEM DISCONNECT\nNOMINAL VOLTAGE ${volts === undefined ? '______' : volts} V\nMAXIMUM SHORT-CIRCUIT CURRENT ______ A\nCLEARING TIME ______ s   DATE ______`
}

/** Type and place of the storage that backs the house up. */
function standbySign({ wiring }: LabelFacts): string | undefined {
  const { storage } = wiring
  if (storage === undefined) return undefined
  const places = [...new Set(storage.places.map(({ location }) => inCapitals(location)))]
  return `OPTIONAL STANDBY SOURCE: ENERGY STORAGE SYSTEM (BATTERY)\nLOCATION: ${places.length === 0 ? '______' : places.join(', ')}`
}

/** What a power control system controls, and its setting. */
function powerControl({ project, wiring }: LabelFacts): string | undefined {
  const control = project.electrical?.power_control ?? storageControl(project)
  if (control === undefined) return undefined
  const others = wiring.distribution
    .filter(
      ({ kind, id, parent }) =>
        kind === 'source' && parent !== 'service' && control.uncontrolled?.includes(id) !== true,
    )
    .map(labelTitle)
  return `POWER CONTROL SYSTEM CONTROLS THE OUTPUT OF SOURCES ON THIS PANEL\nMAXIMUM SETTING ${control.setting_a} A\nCONTROLLED: ${[...(control.uncontrolled?.includes('pv') === true ? [] : ['PHOTOVOLTAIC SYSTEM']), ...others].join(', ')}`
}

/** The power control system of the storage in the form of the other: what it is not said to control is not controlled. */
function storageControl({
  storage,
  electrical,
}: LabelFacts['project']): { readonly setting_a: number; readonly uncontrolled: readonly string[] } | undefined {
  const control = storage?.installation?.power_control
  if (control === undefined) return undefined
  const others = ['pv', ...Object.keys(electrical?.distribution?.sources ?? {})]
  return { setting_a: control.setting_a, uncontrolled: others.filter((id) => control.controls?.includes(id) !== true) }
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
  return inCapitals(
    [...(tellsPlace || location === undefined ? [words] : []), ...(location === undefined ? [] : [location])].join(
      ', ',
    ),
  )
}
