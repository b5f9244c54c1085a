import { beforeAll, describe, expect, test } from 'vitest'
import type { RequiredLabel } from '../../src/drawings/index.js'
import type { WiringValues } from '../../src/electrical/index.js'
import type { WorkPlanValues } from '../../src/fieldwork/index.js'
import { runHouse } from '../../src/house/index.js'
import type { Project } from '../../src/project/index.js'
import type { MountValues } from '../../src/structure/index.js'
import type { Finding } from '../../src/worksheet/index.js'
import { microHouse, stringHouse } from '../drawings/demo-packet.js'

/** What the plan of a house says, and the stages that its numbers come from. */
interface Read {
  readonly project: Project
  readonly values: WorkPlanValues
  readonly findings: readonly Finding[]
  readonly mounts: MountValues
  readonly wiring: WiringValues
  readonly labels: readonly RequiredLabel[]
}

async function read(project: Project): Promise<Read> {
  const house = runHouse({ project }, { wishes: { cellC: 25 } })
  const { values, findings } = await house.work()
  return {
    project,
    values,
    findings,
    mounts: (await house.mounts()).values,
    wiring: (await house.wire()).values,
    labels: await house.labels(),
  }
}

const stepOf = ({ values }: Pick<Read, 'values'>, id: string) => {
  const step = values.steps.find((each) => each.id === id)
  if (step === undefined) throw new Error(`no step ${id}`)
  return step
}
const lines = (from: Pick<Read, 'values'>, id: string): [says: string, source: string][] =>
  stepOf(from, id).tasks.map(({ says, source }) => [says, source])

/** A length as a tape shows it, worked out here from sixteenths. */
function onTape(lengthIn: number, round: (value: number) => number = Math.round): string {
  const units = round(lengthIn * 16)
  const [feet, whole] = [Math.floor(units / 192), Math.floor((units % 192) / 16)]
  const part = [1, 2, 4, 8]
    .map((by) => [(units % 16) / by, 16 / by] as const)
    .findLast(([over]) => Number.isInteger(over))
  const fraction = units % 16 === 0 || part === undefined ? '' : `${part[0]}/${part[1]}`
  const inches = fraction === '' ? `${whole}` : whole === 0 ? fraction : `${whole}-${fraction}`
  return feet === 0 ? `${inches} in` : `${feet} ft ${inches} in`
}

const PRACTICE = 'common practice, no source'
const MAKER = "maker's instructions"
const COMMISSIONING = 'IEC 62446-1, tests of commissioning (from memory, unverified)'
const STRINGS =
  'IEC 62446-1, by an instrument maker’s poster and trainer notes: polarity, Voc, Isc, 5 % (secondary source)'
const INSULATION =
  'IEC 62446-1, insulation resistance, by an instrument maker’s poster and manual; 0.5 Mohm from memory (secondary source)'
const MANUAL = 'inverter manuals, waiting time, order of switches; the manual governs (from memory, unverified)'
const DEAD = 'NFPA 70E, 2018, 120.5, live-dead-live on every conductor (secondary source)'
const LOCKED = '29 CFR 1926.416, .417 and 1910.333(b), lock-out and tagging of circuits (from memory, unverified)'
const FALLS =
  '29 CFR 1926.501, (b)(1), (b)(11) and (b)(13); setting modules is no roofing work (9th Cir. 2019), so (b)(10) is not used (secondary source)'
const LADDER = '29 CFR 1926.1053, (b)(1) and (b)(5)(i) (secondary source)'
const GRID = 'IEEE 1547 and UL 1741, reconnection after the grid comes back (from memory, unverified)'
const TORQUE = 'NEC, 110.14(D), since 2017 (from memory, unverified)'
const MOUNT = 'Flashed foot sheet rev 3 (invented)'
const UTILITY = 'Sampletown Light Cooperative (invented)'
const SUPPORT = 'NEC, 2020, 344.30, 352.30, 356.30, 358.30'
const BONDED = 'NEC, 2020, 690.43, 690.45'
/** Sections of NEC 2020. @source California Electrical Code 2022 (690, 110 to 358); 705 by secondary sources */
const NEC = (section: string): string => `NEC, 2020, ${section}`
const torque = (what: string): string =>
  `torque of ${what}: as the maker states; write it here: ______ (the equipment file has none)`

describe.each([
  ['module-level inverters in the panel', microHouse, false],
  ['strings on the supply side', stringHouse, true],
] as const)('the plan of %s', (_, make, strings) => {
  let plan: Read
  beforeAll(async () => {
    plan = await read(make())
  }, 120_000)

  /** Id, title, whether somebody inspects, what is live, the cautions, and where the work stops until somebody has acted. */
  const steps: readonly (readonly [
    id: string,
    title: string,
    state: string,
    cautions: readonly string[],
    stop: string | null,
  ])[] = [
    [
      'before.utility',
      'Apply to the utility',
      'not_proved_dead',
      ['authority'],
      'order nothing before the utility has agreed in writing',
    ],
    [
      'before.permit',
      'Get the permit',
      'not_proved_dead',
      ['authority'],
      'no work on the roof before the permit is issued',
    ],
    ['before.house', 'Bring the house up to what the permit asks', 'not_proved_dead', ['authority'], null],
    [
      'before.materials',
      'Check the material against the plan',
      'not_proved_dead',
      [],
      'what is missing or other than approved is settled now, not on the roof',
    ],
    [
      'before.safety',
      'Weather, fall protection, ladder and rescue',
      'not_proved_dead',
      ['height'],
      'nobody steps on the roof before all of these are checked, and again each day',
    ],
    ['before.lock-out', 'Lock out', 'not_proved_dead', ['live-conductors', 'electrician'], null],
    [
      'before.prove-dead',
      'Prove that there is no voltage',
      'not_proved_dead',
      ['live-conductors', 'electrician'],
      'no cover comes off and no wire is touched before the absence of voltage is proved',
    ],
    [
      'before.look',
      'Look at the roof before drilling',
      'dead',
      ['structural-engineer'],
      'what differs from the drawings goes back to the planning, and to an engineer where wood is hurt',
    ],
    [
      'roof.layout',
      'Lay out and drill the lead holes',
      'dead',
      ['height', 'structural-engineer'],
      'a second person checks three mounts of each plane against the table before the first hole',
    ],
    ['roof.mounts', 'Set the mounts', 'dead', ['height'], null],
    ['roof.rails', 'Fix and join the rails', 'dead', ['height'], null],
    ['roof.bonding', 'Bond the array', 'dead', [], null],
    ['roof.raceway', 'Run raceways, boxes and straps', 'dead', ['height', 'live-conductors'], null],
    [
      'roof.rough-inspection',
      'Rough inspection',
      'dead',
      ['authority'],
      'nothing is covered by modules before the inspector has signed',
    ],
    ['equipment.inverters', 'Set the inverters', 'dead', ['height', 'live-conductors'], null],
    [
      'equipment.modules',
      'Lay the modules',
      'open_strings_live',
      ['height', 'live-conductors'],
      'a module makes voltage as soon as there is light: from here on every lead is live',
    ],
    [
      'equipment.terminations',
      'Make the terminations',
      strings ? 'open_strings_live' : 'dead',
      ['live-conductors', 'electrician'],
      'a licensed electrician makes or checks the connection in the panel or ahead of it',
    ],
    ['equipment.labels', 'Fix the labels', strings ? 'open_strings_live' : 'dead', [], null],
    [
      'test.dead',
      'Test what is dead',
      strings ? 'open_strings_live' : 'dead',
      ['live-conductors', 'electrician'],
      'what is off is found and put right before anything is joined',
    ],
    ...(strings
      ? ([
          [
            'test.strings',
            'Test the open strings',
            'open_strings_live',
            ['live-conductors', 'electrician'],
            'a string that reads otherwise is found and put right before any string is joined',
          ],
          [
            'test.close-strings',
            'Close the strings: the last connection',
            'open_strings_live',
            ['live-conductors', 'electrician'],
            'the DC switch and the AC stay off and locked until the permission of the utility',
          ],
        ] as const)
      : []),
    [
      'finish.final-inspection',
      'Final inspection',
      strings ? 'closed_strings_off' : 'dead',
      ['authority'],
      'the system stays off: the inspector signs first, then the utility permits',
    ],
    [
      'finish.permission',
      'Permission of the utility',
      strings ? 'closed_strings_off' : 'dead',
      ['authority'],
      'switching on before the written permission is forbidden by the utility, even for a test that it has not agreed to',
    ],
    [
      'on.tests',
      'Switch on and test',
      'on_after_permission',
      ['live-conductors', 'electrician'],
      'a reading that is off: switch off, lock, find it',
    ],
    ['finish.first-week', 'Check of the first week', 'on_after_permission', [], null],
  ]

  test('has these steps in this order, with what is live, the cautions and the stops', () => {
    expect(plan.values.steps.map(({ id, title, state, cautions, stop }) => [id, title, state, cautions, stop])).toEqual(
      steps,
    )
    expect(plan.values.steps.filter(({ kind }) => kind === 'inspection').map(({ id }) => id)).toEqual([
      'roof.rough-inspection',
      'finish.final-inspection',
    ])
  })

  test('has the tools of each step', () => {
    const tools: Readonly<Record<string, readonly string[]>> = {
      'before.materials': ['the approved drawings', 'the data sheets'],
      'before.safety': [
        'harness, rope and anchor rated for falls, or guardrail or net',
        'ladder that stands 3 ft above the eave, tied off',
        'covers for skylights and holes',
        'helmet, gloves, safety glasses',
      ],
      'before.lock-out': ['padlock and tag'],
      'before.prove-dead': ['voltage tester for the service voltage, proved on a known live point before and after'],
      'before.look': ['flashlight', 'tape', 'moisture meter or awl'],
      'roof.layout': ['chalk line', 'tape', 'stud finder or hammer and attic helper', 'drill with a stop on the bit'],
      'roof.mounts': ['flat bar', 'sealant of the maker', 'socket wrench; no impact driver for the last turns'],
      'roof.rails': ['saw with a guide, deburring tool', 'torque wrench', 'string line'],
      'roof.bonding': ['torque wrench', 'continuity tester'],
      'roof.raceway': ['bender or heater', 'reamer', 'level', 'fish tape'],
      'equipment.inverters': ['torque wrench', 'the map for serial numbers'],
      'equipment.modules': ['torque wrench', 'two people a module', 'clips for leads'],
      'equipment.terminations': ['calibrated torque tool', 'voltage tester'],
      'equipment.labels': ['cleaner for the ground', 'the sheet of labels'],
      'test.dead': ['low-ohm meter', 'insulation tester', 'the approved drawings'],
      'test.strings': [
        'DC voltmeter rated for the string voltage',
        'insulation tester with the voltages below',
        'irradiance meter, thermometer on the back of a module',
      ],
      'test.close-strings': ['DC voltmeter and DC clamp meter rated for the string voltage'],
      'on.tests': [
        'clamp meter, voltmeter rated for the system',
        'irradiance meter, thermometer on the back of a module',
        'clock',
      ],
    }
    for (const step of plan.values.steps) expect([step.id, step.tools]).toEqual([step.id, tools[step.id] ?? []])
  })

  test('has the quantities of the stages', () => {
    const { mounts, wiring, labels } = plan
    const { counts } = mounts
    const each = (what: string, count: number, unit = '') => ({ what, count, unit })
    const wanted: Readonly<Record<string, readonly ReturnType<typeof each>[]>> = {
      'before.materials': [
        each('modules Invented M410, array south', 15),
        each('mounts', mounts.mounts.length),
        each('lag screws', mounts.mounts.length),
        each(
          'pieces of rail',
          mounts.rails.reduce((sum, rail) => sum + rail.pieces_in.length, 0),
        ),
        each(
          'rail splices',
          mounts.rails.reduce((sum, rail) => sum + rail.splices_in.length, 0),
        ),
        each('circuits', wiring.circuits.length),
        each('raceways', wiring.raceways.length),
      ],
      'roof.layout': [each('lead holes', counts.lag_screws)],
      'roof.mounts': [
        each('Invented flashed foot', mounts.mounts.length),
        each('lag screws 5/16 x 5 in', mounts.mounts.length),
      ],
      'roof.rails': [
        each('rails', mounts.rails.length),
        each('pieces', counts.rail_pieces),
        each('splices', counts.splices),
      ],
      'roof.raceway': wiring.raceways.flatMap((raceway) => [
        each(
          raceway.trade_size === null ? `none, ${raceway.id}` : `EMT ${raceway.trade_size} in, ${raceway.id}`,
          raceway.length_ft,
          'ft',
        ),
        each(`strap, ${raceway.id}`, raceway.strap_positions_ft.length),
      ]),
      'equipment.inverters': strings
        ? [each('Invented string 6000, garage', 1)]
        : [each('Invented micro 366, array south', 15)],
      'equipment.modules': [each('modules, array south', 15)],
      'equipment.labels': labels.map(({ number, id, count }) => each(`label ${number} (${id})`, count)),
    }
    for (const step of plan.values.steps) expect([step.id, step.quantities]).toEqual([step.id, wanted[step.id] ?? []])
  })

  test('before the roof: utility, permit, material, safety, lock-out', () => {
    expect(lines(plan, 'before.utility')).toEqual([
      [`send the interconnection application to ${UTILITY} with the one-line diagram and the data sheets`, ''],
      ['keep its written answer: it says whether a disconnect, a meter change or a production limit is wanted', ''],
    ])
    expect(lines(plan, 'before.permit')).toEqual([
      [
        'hand the packet in at Sampletown Building Office (invented) and ask which inspections it wants, and how they are called for',
        '',
      ],
      ['have the approved set and the permit card at the house on every day of work', ''],
    ])
    // The project states nothing of the house as it is, so that all of it is looked at.
    expect(lines(plan, 'before.house')?.map(([says]) => says?.split(':')[0])).toEqual([
      'Smoke alarms',
      'Carbon monoxide alarms',
      'Grounding electrode system',
      'Working space at the panel',
      'Outdoor emergency disconnect',
    ])
    expect(lines(plan, 'before.materials')).toEqual([
      ['names, ratings and listings on the boxes are those of the drawings; a substitute needs a new approval', ''],
      ['no module has a cracked glass, a bent frame or a damaged lead; note serial numbers by place on the roof', ''],
      [
        'instructions of every product are at hand: their torques, gaps and orders of work are part of its listing',
        MAKER,
      ],
    ])
    // Eave at 10 ft: L = 10 / sqrt(1 - 1/16) = 10.328 ft, foot 2.582 ft out, 13/10 x 10.328 = 13.43 ft long, rounded up.
    expect(lines(plan, 'before.safety')).toEqual([
      [
        'nobody is on the roof, and who is comes down, with wind over 25 mph, rain, wet or frosted covering, ice or lightning; forecast read for the hours of the work',
        'practice, wind, wet, frost (from memory, unverified)',
      ],
      [
        'everybody 6 ft or more above a lower level has a guardrail, a net or personal fall arrest; nothing less stands in for these when modules are set. State plans may ask for more',
        FALLS,
      ],
      ['steeper than 4 in 12 (south): guardrail with toeboard, net or personal fall arrest', FALLS],
      [
        'anchors hold 5,000 lb for each person on them, or a qualified person has designed them with factor 2; a module rail or its foot is none',
        '29 CFR 1926.502, (d)(15) (secondary source)',
      ],
      [
        'rescue is planned before anybody ties off: who brings a person hanging in a harness down at once and with what; address and emergency number written at the ladder; nobody works alone',
        '29 CFR 1926.502, (d)(20), prompt rescue (from memory, unverified)',
      ],
      [
        'ladder on level ground, undamaged: foot out by a quarter of its working length (1:4), rails 3 ft above the eave, tied at the top',
        LADDER,
      ],
      [
        'south: eave at 10 ft, so 10.3 ft of working length, foot 2.6 ft out, ladder at least 13.5 ft long without its overlap',
        LADDER,
      ],
      [
        'face the ladder with a hand on it; loads are hoisted, not carried up; rails that do not conduct near live parts',
        '29 CFR 1926.1053, (b)(20)-(22) (secondary source)',
      ],
      [
        'skylights that the drawings lack and holes 6 ft or more above a floor: covered for 2 times the weight of people, tools and material on them at one time, fixed against shifting, marked HOLE or COVER; else guardrail or fall arrest',
        '29 CFR 1926.501 and .502, 501(b)(4), 502(i)(2)-(4) (secondary source)',
      ],
      [
        'overhead lines are found first: ladder, rail, raceway and people keep 10 ft away (up to 50 kV, more above); where that cannot be, the utility covers or cuts them. The project does not say whether there are any (site.overhead_lines): look before anything is carried',
        '29 CFR 1926 subparts K and CC, 1910.333(c)(3), 10 ft up to 50 kV (from memory, unverified)',
      ],
      ['the ground below is roped off; tools on the roof are tied', PRACTICE],
    ])
    expect(lines(plan, 'before.lock-out')).toEqual([
      [
        'every source that can feed this place is found: utility, generator, battery, any PV that is there already; each is opened and seen open',
        DEAD,
      ],
      [
        'the breaker, space or disconnect that takes the PV circuit is off, locked and tagged; only who set the lock takes it off',
        LOCKED,
      ],
      strings
        ? [
            `the connection ahead of the main is made only with the service cut by ${UTILITY} itself, time agreed in writing; no main breaker makes that place dead`,
            LOCKED,
          ]
        : [
            'the main breaker is off and locked before work in the panel; its line side stays live with the main off: the guard over those lugs stays on, nobody reaches there',
            LOCKED,
          ],
      [
        'an inverter that has run is left the minutes that its manual states (often 5) before its cover comes off',
        MANUAL,
      ],
    ])
    expect(lines(plan, 'before.prove-dead')).toEqual([
      [
        'after the lock-out and before anything is touched: tester on a known live point, then every conductor to every other, to neutral and to ground, then the live point again; all must read none',
        DEAD,
      ],
      [
        'again each time that work begins anew, and in the panel with the cover off before the first wire is touched',
        DEAD,
      ],
      [
        'modules in light are never dead, and a cover on them is no lock: parts that hang on them count as live',
        PRACTICE,
      ],
    ])
    expect(lines(plan, 'before.look')).toEqual([
      [
        'south: rafters 2x6 at 24 in, first at 11 in from the left end of the eave: found so from the attic',
        'project file',
      ],
      ['wood is dry, sound and unsplit; covering lies flat and will last as long as the array', PRACTICE],
      ['1 roof plane: vents, chimneys and skylights stand where the drawings have them', ''],
    ])
  })

  test('on the roof: the lengths, screws and joints of the mounts', () => {
    const { mounts, wiring } = plan
    const spans = new Map<string, string[]>()
    for (const [zone, span] of Object.entries(mounts.max_span_in)) {
      const says = `${onTape(span, (value) => Math.floor(value + 1e-6))} apart (${mounts.max_span_governs[zone]} governs)`
      spans.set(says, [...(spans.get(says) ?? []), zone])
    }
    expect(spans.size).toBeGreaterThan(1)
    expect(lines(plan, 'roof.layout')).toEqual([
      [
        'snap the rails and mark every mount of the table below, each from the left end of the eave and from the eave up',
        '',
      ],
      ...[...spans].map(([says, zones]) => [
        `wind zone ${zones.join(', ')}: mounts along a rail are nowhere more than ${says}`,
        'space-mounts',
      ]),
      [
        `each hole is within ${onTape(mounts.lag?.centring_tolerance_in ?? 0, Math.floor)} of the middle of the rafter`,
        'NDS, 2018, table 12.5.1C (secondary source)',
      ],
      [
        'drill with a bit of 0.1875 in, square to the roof; a hole that misses the wood is sealed and flashed, not used',
        MOUNT,
      ],
    ])
    expect(lines(plan, 'roof.mounts')).toEqual([
      [
        `every screw has ${mounts.lag?.thread_in_rafter_in.toFixed(2)} in of thread in the rafter; one that spins without biting is drawn and told`,
        'space-mounts',
      ],
      [
        'flashing goes under the course above, sealant as the maker shows; nothing is nailed in the way of water',
        MOUNT,
      ],
      [torque('the bolt from rail to mount'), MOUNT],
      ['covering is asphalt shingle: the mount is made for it', MOUNT],
    ])
    expect(lines(plan, 'roof.rails')).toEqual(
      mounts.rails.map((rail) => {
        const joints = rail.splices_in.map((at) => onTape(at)).join(', ')
        return [
          `${rail.id} (south): ${onTape(rail.length_in)} of ${rail.pieces_in.map((piece) => onTape(piece)).join(' + ')}${joints === '' ? '' : `, joints ${joints} from the left end of the eave`}; free ends ${onTape(rail.overhang_left_in)} left and ${onTape(rail.overhang_right_in)} right, no longer`,
          'space-mounts',
        ]
      }),
    )
    const { array } = wiring.grounding
    expect(array.unspliced).toBe(true)
    expect(lines(plan, 'roof.bonding')).toEqual([
      [`${array.size_awg} AWG ${array.material}, unspliced: ${array.note}`, BONDED],
      [
        'every rail, joint and frame is bonded with the parts that are listed for it; measured continuous end to end',
        MAKER,
      ],
    ])
    expect(plan.values.mounts).toEqual(
      mounts.mounts.map((mount) => ({
        mount: mount.id,
        plane: 'south',
        rail: mount.rail,
        rafter: mount.rafter,
        stands_on: 'rafter',
        x_in: mount.x_in,
        y_in: mount.y_in,
      })),
    )
  })

  test('raceways with their straps and what is pulled into them', () => {
    const { wiring } = plan
    const uses = { current_carrying: 'current carrying', neutral: 'neutral', grounding: 'grounding' } as const
    expect(lines(plan, 'roof.raceway')).toEqual([
      ...wiring.raceways.flatMap((raceway) => {
        const straps = raceway.strap_positions_ft.map((ft) => onTape(12 * ft))
        const wires = raceway.conductors.map((wire) => {
          const of = wire.circuit === '' ? uses[wire.use] : `${uses[wire.use]}, ${wire.circuit}`
          return `${wire.count} x ${wire.size_awg} AWG ${wire.material} ${wire.insulation} (${of})`
        })
        return [
          [
            `${raceway.id} (${raceway.location}): strap${straps.length === 1 ? '' : 's'} at ${straps.join(', ')} from its start`,
            SUPPORT,
          ],
          [`${raceway.id}: pull ${wires.join('; ')}`, NEC('Chapter 9 Table 1')],
        ]
      }),
      ...wiring.grounding.raceway_bonding.map(({ at, note }) => [
        `bond at ${at}: ${note}`,
        expect.stringMatching(/^NEC, 2020, /u),
      ]),
      ['holes through roof and wall are flashed and sealed; boxes stay open for the rough inspection', ''],
    ])
    expect(lines(plan, 'roof.rough-inspection')).toEqual([
      ['approved set and permit card lie ready, a ladder stands tied off', ''],
      [`${plan.mounts.mounts.length} mounts visible, spacing and free rail ends as drawn, flashing in place`, ''],
      ['bonding of rails complete and visible', BONDED],
      [`${wiring.raceways.length} raceways: type, size, straps and bushings visible, covers off`, SUPPORT],
      [
        'conductors of the sizes and kinds of the schedule, with their equipment grounding conductors',
        NEC('Table 250.122'),
      ],
      ['clear space in front of panel and disconnects', NEC('110.26')],
    ])
  })

  test('equipment: inverters, modules, terminations', () => {
    const { wiring } = plan
    const ac = wiring.circuits.filter(({ kind }) => kind !== 'dc_string')
    const inverters = (count: number): string => (count === 1 ? '1 inverter' : `${count} inverters`)
    expect(lines(plan, 'equipment.inverters')).toEqual([
      strings
        ? ['string inverters hang with the clearances of their sheet, out of the sun where the place allows', MAKER]
        : ['one behind each module, serial number written on the roof map before the module hides it', ''],
      ...ac
        .filter(({ kind }) => kind !== 'ac_supply_tap')
        .map(({ id, inverters: count }) => [`circuit ${id}: ${inverters(count)}, no more`, NEC('690.8(A)(1)(e)')]),
      ['open ends of trunk cables are capped and watertight before night or rain', MAKER],
    ])
    expect(lines(plan, 'equipment.modules')).toEqual([
      ['Invented M410: clamps 10 to 20 in from the corners of the long side', 'M410 sheet rev 2 (invented)'],
      [
        'no modules are stacked on the roof: each goes from the hoist to its place and is clamped before the next comes up',
        PRACTICE,
      ],
      ...(strings
        ? [
            [
              'each string is joined from module to module, but both its ends stay open, capped and marked plus and minus until the last connection',
              COMMISSIONING,
            ],
          ]
        : []),
      ['begin at the lower row; leads are clipped so that none touches the roof', NEC('690.31(C)(1) 24 in')],
      ['connectors of one make only, pushed until they click; none is opened under load', MAKER],
      [torque('the clamps'), MAKER],
      ['pathways and setbacks of the drawings are free when 15 modules lie', ''],
    ])
    // 15 inverters of 1.53 A are 22.95 A; the string inverter gives 25 A.
    expect(lines(plan, 'equipment.terminations')).toEqual([
      ['lock-out in place, absence of voltage proved again at the place of work', DEAD],
      ...wiring.circuits
        .filter(({ breaker_a: breaker }) => breaker !== null)
        .map(({ id, breaker_a: breaker }) => [`${id}: breaker ${breaker} A, terminals used at 75 C`, NEC('110.14(C)')]),
      strings
        ? [
            'panel: rule supply side holds with 25 A of inverters; breaker where the drawings have it',
            NEC('705.11 (secondary source)'),
          ]
        : [
            'panel: rule 120 percent holds with 22.95 A of inverters; breaker where the drawings have it',
            NEC('705.12(B)(3) (secondary source)'),
          ],
      ['each terminal is tightened with a torque tool to the number on the equipment', TORQUE],
      [torque('the terminals in the panel'), TORQUE],
      ...(strings
        ? [
            [
              'the DC run is landed at the inverter with its DC switch off, while its other end is open at the array; no string is joined to it yet',
              COMMISSIONING,
            ],
          ]
        : []),
    ])
  })

  test('labels: each with its count, places, words, look and source, along raceways each place', () => {
    const { labels } = plan
    expect(lines(plan, 'equipment.labels')).toEqual(
      labels.flatMap((label) => [
        [
          `label ${label.number}, ${label.count} at ${label.places.map((place) => place.split('_').join(' ')).join(', ')}: ${label.text} (${label.look}; ${label.wording})`,
          label.source,
        ],
        ...label.along.map(({ raceway, atFt }) => [
          `label ${label.number} on ${raceway}: at ${atFt.map((ft) => onTape(12 * ft)).join(', ')} from its start, and on the cover of the box where it begins`,
          label.source,
        ]),
      ]),
    )
  })

  test('tests with everything off', () => {
    expect(lines(plan, 'test.dead')).toEqual([
      [
        'look at everything: as drawn, torque marks on every screw, labels in place, no bare or pinched lead',
        COMMISSIONING,
      ],
      [
        'AC circuits from the breaker (off, locked) to the inverters (unplugged, or as their manual has it): insulation, continuity, each conductor on its terminal, breaker of the drawn rating',
        COMMISSIONING,
      ],
      [
        'bonding continuous from the grounding bar to each rail, frame and inverter: low-ohm meter with at least 200 mA, resistance of the leads taken off; 1 ohm at most is usual, aim at 0.1 ohm more than the wire (the standard fixes no value); read: ______',
        COMMISSIONING,
      ],
      ...(strings
        ? [
            [
              'DC run from the array to the inverter, open at the array and with the DC switch off: continuity and polarity by its marks, insulation to ground and to the raceway',
              COMMISSIONING,
            ],
          ]
        : []),
    ])
  })

  test('inspection, permission, tests with the system on', () => {
    const { wiring, labels } = plan
    expect(lines(plan, 'finish.final-inspection')).toEqual([
      [`${labels.reduce((sum, { count }) => sum + count, 0)} labels in place, printed, lasting`, NEC('690.13, 690.15')],
      strings
        ? ['the connection: 705.11', NEC('705.11 (secondary source)')]
        : [
            'the connection: WARNING: POWER SOURCE OUTPUT CONNECTION DO NOT RELOCATE THIS OVERCURRENT DEVICE',
            NEC('705.12(B)(3) (secondary source)'),
          ],
      ['disconnects within reach, lockable where the code asks, named as drawn', NEC('690.13, 690.15')],
      [
        `rapid shutdown: switch, labels and wiring are shown with the system off. Whoever wants to see it at work before permission needs the written consent of ${UTILITY} to this test; afterwards off and locked again`,
        NEC('690.12'),
      ],
      ['covers on, unused openings closed, directories filled in, working space free', NEC('110.26')],
      ['the written record of torques, readings and serial numbers is handed over', COMMISSIONING],
    ])
    expect(lines(plan, 'finish.permission')).toEqual([
      [`send the signed card to ${UTILITY}; wait for its written permission to operate`, PRACTICE],
      [
        'everything stays off and locked; a test before the permission only with the written consent of the utility',
        PRACTICE,
      ],
    ])
    const ac = wiring.circuits.filter(({ kind }) => kind !== 'dc_string')
    const boundary = '1 ft from array in all directions, or more than 3 ft from point of entry into building'
    // 13.02 A at the maximum power point: 10.416 A at 800 W/m2. 5 % round 240 V: 228 to 252 V.
    expect(lines(plan, 'on.tests')).toEqual([
      [
        `switch on: ${strings ? 'DC switch, then ' : ''}AC breaker and disconnect (where the inverter manual has another order, the manual governs); feeding begins after the wait, usually 300 s`,
        MANUAL,
      ],
      [
        'AC between the lines: 228 to 252 V, each to neutral half of it; read: ______',
        'ANSI C84.1, range A, 5 % round the nominal voltage (from memory, unverified)',
      ],
      ...(strings
        ? [
            ['operating current of each string with a DC clamp; like strings within 5 %', STRINGS],
            ...[1, 2].map((number) => [
              `string ${number} of array south: about 13.02 A x G / 1000 W/m2, 10.42 A at 800 W/m2, less where the inverter limits; read: ______ A at ______ W/m2`,
              STRINGS,
            ]),
          ]
        : [
            [
              'module-level inverters: no DC string tests; the DC voltage of each unit is read from the monitoring, units side by side alike',
              COMMISSIONING,
            ],
            ['module Invented M410: no unit above the 37.4 V open at 25 C cells; read: ______', COMMISSIONING],
          ]),
      ...ac.map(({ id, continuous_a: current }) => [
        `circuit ${id}: at full sun no more than ${(Math.round(current * 10) / 10).toFixed(1)} A; read: ______`,
        NEC('690.8(A)(1)(e)'),
      ]),
      [
        'open the AC breaker or disconnect: every inverter stops within 2 s; closed again, it comes back only after its wait (usually 300 s)',
        GRID,
      ],
      strings
        ? [
            `rapid shutdown: turn its switch; DC conductors beyond the boundary (${boundary}) at 30 V or less within 30 s, measured at the inverter’s DC terminals; inside the boundary: PV hazard control system (UL 3741); or 80 V; or 8 ft rule; read: ______`,
            NEC('690.12'),
          ]
        : [
            `rapid shutdown: turn its switch; the AC of the array is dead within 30 s, beyond the boundary (${boundary}) 30 V or less; controlled conductors = PV dc circuits AND inverter output circuits from inverters inside the boundary (690.12(A)(2)); read: ______`,
            NEC('690.12'),
          ],
      [
        '10 min of steady light above 400 W/m2: AC power against light in the expected band, meter turns the right way, monitoring shows it; power: ______ W at ______ W/m2',
        COMMISSIONING,
      ],
      [
        strings
          ? 'order of switching off, written down for the owner: AC (or the shutdown switch) first, then DC, unless the manual has it otherwise; no DC connector is parted under load; with a faulty inverter clamp meter first, its DC switch only below 0.5 A'
          : 'order of switching off, written down for the owner: AC breaker or the shutdown switch; no connector is parted under load',
        MANUAL,
      ],
    ])
    const weeks = plan.values.first_week.toSorted((a, b) => a.expected_kwh - b.expected_kwh)
    const [dark, bright] = [weeks[0], weeks.at(-1)]
    expect(lines(plan, 'finish.first-week')).toEqual([
      [
        `seven days give ${dark?.p10_kwh.toFixed(0)} to ${dark?.p90_kwh.toFixed(0)} kWh in the darkest month and ${bright?.p10_kwh.toFixed(0)} to ${bright?.p90_kwh.toFixed(0)} kWh in the brightest in four of five cases; the table has every month`,
        'estimate-yield',
      ],
      ['every module or string reports, and those side by side read alike at noon', ''],
      ['look at all raceways and fittings from the ground after the first hard rain; look for stains in the attic', ''],
      ['run review-output with the readings of the week; one dull week is no fault', ''],
    ])
    for (const { p10_kwh: low, expected_kwh: middle, p90_kwh: high } of weeks) {
      expect(low).toBeLessThan(middle)
      expect(middle).toBeLessThan(high)
    }
    expect(plan.values.first_week.map(({ month }) => month)).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12])
  })

  test.runIf(strings)('tests of the open strings, with the voltages and currents of their modules', () => {
    // 8 and 7 modules of 37.4 V and 13.87 A; 5 % of 299.2 V is 14.96 V, less than half a module of 18.7 V.
    const care: [string, string][] = [
      [
        'rated gloves, meter and leads for at least 1000 V DC CAT III; one string at a time; every other end stays capped',
        PRACTICE,
      ],
      [
        'modules with shutdown units: an open string reads the units’ own low voltage; the figures below, and the insulation test, hold only as the maker of the units allows them',
        MAKER,
      ],
      ['polarity of every string at its open ends, before anything is joined', STRINGS],
    ]
    const isc =
      '13.87 A x G / 1000 W/m2 (coefficient of Isc not stated, so not corrected for temperature), 11.10 A at 800 W/m2 and 25 C; read: ______ A at ______ W/m2'
    const insulated = (voltage: string): string =>
      `1.25 x Voc is ${voltage} V, so test with 500 V; never above the 1000 V of the modules, nor of connectors or anything left connected; at least 1 Mohm; read: ______`
    expect(lines(plan, 'test.strings')).toEqual([
      ...care,
      [
        'string 1 of array south: 299.2 V open at 25 C cells, right from 284.2 to 314.2 V (a module missing would read 261.8 V); read: ______',
        STRINGS,
      ],
      [
        'string 2 of array south: 261.8 V open at 25 C cells, right from 248.7 to 274.9 V (a module missing would read 224.4 V); read: ______',
        STRINGS,
      ],
      ['strings of like modules in like sun lie within 5 % of each other; steady sun, one after the other', STRINGS],
      [
        'short-circuit current only with a device made for it (never by joining connectors); without one this is left to the operating current after permission. Like strings within 5 %; light and cell temperature noted',
        STRINGS,
      ],
      [`string 1 of array south: ${isc}`, STRINGS],
      [`string 2 of array south: ${isc}`, STRINGS],
      [
        'insulation of each string with inverter, surge devices and shutdown transmitters off it: negative to ground, then positive to ground (or both joined by a device made for it, to ground); nobody touches the array; the string is discharged after each test. A wet array reads lower, and a low reading wet is a failure too',
        INSULATION,
      ],
      [`string 1 of array south: ${insulated('374.0')}`, INSULATION],
      [`string 2 of array south: ${insulated('327.3')}`, INSULATION],
    ])
    expect(lines(plan, 'test.close-strings')).toEqual([
      ['DC switch of the inverter off and locked, AC off and locked', COMMISSIONING],
      [
        'only now are the ends of each string joined to their run, one string at a time; fuses, where there are any, last',
        COMMISSIONING,
      ],
      [
        'polarity and voltage once more at the inverter’s open DC switch. Reversed: nothing is opened or closed under current; clamp meter first, and open only below 0.5 A',
        STRINGS,
      ],
    ])
  })
})
