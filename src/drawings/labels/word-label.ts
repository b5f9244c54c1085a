import { own } from '../../values/index.js'
import { caution, name, placardText, plain, red, warning, yellowTitle, type LabelPart } from './label-style.js'
import type { LabelFacts, LabelPlace } from './required-labels.js'

interface Words {
  readonly parts: readonly LabelPart[]
  readonly widthIn: number
  readonly places: readonly LabelPlace[]
  readonly count: number
}

/**
 * Words of one label for the project, or undefined when the project does not need it.
 * Signal words are the code's; the rest says what the section asks for, and the authority may want other words.
 */
export function wordLabel(id: string, facts: LabelFacts): Words | undefined {
  const disconnect: LabelPlace = facts.hasDisconnect || facts.supplySide ? 'pv_disconnect' : 'main_panel'
  switch (id) {
    case 'PV_DISC':
      return words([name('PV SYSTEM DISCONNECT')], 4, [disconnect])
    case 'LINE_LOAD':
      if (!facts.strings) return undefined
      return words(
        warning('ELECTRIC SHOCK HAZARD. TERMINALS ON THE LINE AND LOAD SIDES MAY BE ENERGIZED IN THE OPEN POSITION.'),
        4,
        ['dc_disconnect'],
      )
    case 'DC_RACEWAY':
      return facts.strings ? words(dcRaceway(facts), 5.2, ['dc_raceway'], racewayCount(facts)) : undefined
    case 'DC_SOURCE':
      return facts.strings ? words([plain(dcSource(facts))], 4, ['dc_disconnect']) : undefined
    case 'AC_POI':
      return words(
        [
          plain(
            `POWER SOURCE: PHOTOVOLTAIC\nRATED AC OUTPUT CURRENT ${facts.wiring.panel.inverter_a.toFixed(1)} A\nNOMINAL AC VOLTAGE 240 V`,
          ),
        ],
        4,
        [disconnect],
      )
    case 'RSD_PLACARD':
      return words(shutdownPlacard(facts), 5.2, ['main_panel'])
    case 'RSD_SWITCH':
      return words([red('RAPID SHUTDOWN SWITCH FOR SOLAR PV SYSTEM')], 5.2, [disconnect])
    case 'DIRECTORY':
      return words(
        directory(facts),
        5.2,
        facts.hasDisconnect ? ['main_panel', 'pv_disconnect'] : ['main_panel'],
        facts.hasDisconnect ? 2 : 1,
      )
    case 'BACKFED_BREAKER': {
      const text = relocation(facts)
      return text === undefined ? undefined : words(warning(text), 4, ['main_panel'])
    }
    case 'SUM_RULE': {
      const places = sumRulePlaces(facts)
      const text =
        'THIS EQUIPMENT FED BY MULTIPLE SOURCES. TOTAL RATING OF ALL OVERCURRENT DEVICES EXCLUDING MAIN SUPPLY OVERCURRENT DEVICE SHALL NOT EXCEED AMPACITY OF BUSBAR.'
      return places.length === 0 ? undefined : words(warning(text), 4, places, places.length)
    }
    case 'SOURCES_PRESENT':
      return facts.supplySide
        ? undefined
        : words([plain('THIS PANEL IS SUPPLIED BY TWO SOURCES:\nUTILITY AND PHOTOVOLTAIC SYSTEM')], 4, ['main_panel'])
    case 'GFP_WARNING':
      if (!facts.strings) return undefined
      return words(
        warning(
          'ELECTRIC SHOCK HAZARD. IF A GROUND FAULT IS INDICATED, NORMALLY GROUNDED CONDUCTORS MAY BE UNGROUNDED AND ENERGIZED.',
        ),
        4,
        ['inverter'],
      )
    case 'DISC_PURPOSE':
      return purpose(facts)
    default:
      return undefined
  }
}

function words(parts: readonly LabelPart[], widthIn: number, places: readonly LabelPlace[], count = 1): Words {
  return { parts, widthIn, places, count }
}

function dcRaceway(facts: LabelFacts): LabelPart[] {
  const early = facts.edition === 'NEC 2011' || facts.edition === 'NEC 2014' || facts.edition === 'NEC 2017'
  return [red(early ? 'WARNING: PHOTOVOLTAIC POWER SOURCE' : 'PHOTOVOLTAIC POWER SOURCE')]
}

/** One for each 10 ft begun of every raceway with direct current in it. */
function racewayCount(facts: LabelFacts): number {
  const strings = new Set(
    facts.wiring.circuits.filter((circuit) => circuit.kind === 'dc_string').map((circuit) => circuit.id),
  )
  const ways = facts.wiring.raceways.filter(
    (raceway) => raceway.type !== 'none' && raceway.circuits.some((id) => strings.has(id)),
  )
  return Math.max(
    1,
    ways.reduce((sum, raceway) => sum + Math.ceil(raceway.length_ft / 10) + 1, 0),
  )
}

function dcSource(facts: LabelFacts): string {
  const { strings, circuits } = facts.wiring
  const highest = Math.ceil(Math.max(...strings.map((each) => each.voc_cold_v)))
  const current = Math.max(...circuits.filter((each) => each.kind === 'dc_string').map((each) => each.continuous_a))
  const voltage = `MAXIMUM DC VOLTAGE OF PV SYSTEM ${highest} V`
  if (facts.edition === 'NEC 2020' || facts.edition === 'NEC 2023') return voltage
  const least = `MAXIMUM VOLTAGE ${highest} V DC\nMAXIMUM CIRCUIT CURRENT ${current.toFixed(1)} A`
  if (facts.edition === 'NEC 2017') return least
  const groups = circuits.filter((each) => each.kind === 'dc_string')
  const modules = groups
    .flatMap((circuit) => Object.keys(circuit.modules))
    .flatMap((id) => own(facts.project.equipment.modules, own(facts.project.arrays, id)?.module) ?? [])
  const operatingV = Math.max(...groups.map((each) => each.voltage_v))
  const operatingA = Math.max(...modules.map((module) => module.imp_a ?? 0))
  return `RATED MAXIMUM POWER-POINT CURRENT ${operatingA.toFixed(1)} A\nRATED MAXIMUM POWER-POINT VOLTAGE ${operatingV.toFixed(0)} V\n${least}`
}

function shutdownPlacard(facts: LabelFacts): LabelPart[] {
  if (facts.edition === 'NEC 2014') return [red('PHOTOVOLTAIC SYSTEM EQUIPPED WITH RAPID SHUTDOWN')]
  const start = {
    service_disconnect: 'THE SERVICE DISCONNECT',
    pv_disconnect: 'THE PV SYSTEM DISCONNECT',
    switch: 'THE RAPID SHUTDOWN SWITCH',
  }
  const initiator = start[facts.project.electrical?.rapid_shutdown?.initiator ?? 'switch']
  return [
    yellowTitle('SOLAR PV SYSTEM IS EQUIPPED WITH RAPID SHUTDOWN'),
    placardText(
      `TURN ${initiator} TO THE "OFF" POSITION TO SHUT DOWN THE PV SYSTEM AND REDUCE SHOCK HAZARD IN THE ARRAY.`,
    ),
    { ...placardText(''), figure: 'roof' },
  ]
}

function directory(facts: LabelFacts): LabelPart[] {
  const { electrical } = facts.project
  const panel = `SERVICE DISCONNECT: ${(electrical?.panel?.name ?? 'main panel').toUpperCase()}${electrical?.panel?.location === undefined ? '' : `, ${electrical.panel.location.toUpperCase()}`}`
  const others = Object.entries(electrical?.disconnects ?? {})
    .filter(([, each]) => each.kind === 'pv_system')
    .map(([id, each]) => `PV SYSTEM DISCONNECT: ${placeOf(id, each.location)}`)
  const pv = others.length > 0 ? others : ['PV SYSTEM DISCONNECT: BACKFED BREAKER IN THIS PANEL']
  const list = plain(['LOCATION OF POWER SOURCE DISCONNECTS', panel, ...pv].join('\n'))
  const later = facts.edition === 'NEC 2020' || facts.edition === 'NEC 2023'
  return later ? [...caution('MULTIPLE SOURCES OF POWER'), list] : [list]
}

/** Words beside a backfed breaker that must keep its place, from the rule that the panel was judged by. */
/** Where a disconnect is, in the words of its id and location; an id such as `pv` tells no place. */
function placeOf(id: string, location: string | undefined): string {
  const words = id.split('_').join(' ')
  const tellsPlace = !/^(?:pv|system|disconnect| )+$/u.test(words)
  return [...(tellsPlace || location === undefined ? [words] : []), ...(location === undefined ? [] : [location])]
    .join(', ')
    .toUpperCase()
}

function relocation(facts: LabelFacts): string | undefined {
  if (facts.supplySide || !facts.wiring.panel.label.includes('RELOCATE')) return undefined
  return facts.wiring.panel.label.replaceAll(' / ', '. ').concat('.')
}

function sumRulePlaces(facts: LabelFacts): LabelPlace[] {
  const { panel, combiner } = facts.wiring
  return [
    ...(panel.label.includes('TOTAL RATING') ? (['main_panel'] as const) : []),
    ...(combiner?.label.includes('TOTAL RATING') === true ? (['combiner'] as const) : []),
  ]
}

function purpose(facts: LabelFacts): Words | undefined {
  if (facts.supplySide) return undefined
  const devices = facts.wiring.circuits.filter((circuit) =>
    facts.hasCombiner ? circuit.id === 'output' : circuit.kind !== 'dc_string',
  )
  const ratings = devices.flatMap((circuit) => (circuit.breaker_a === null ? [] : [`${circuit.breaker_a} A`]))
  return words(
    [name(`PV SYSTEM BREAKER ${[...new Set(ratings)].join(', ')}`)],
    4,
    ['main_panel'],
    Math.max(1, devices.length),
  )
}
