import { allCircuits, isAc, type WiringValues } from '../../electrical/index.js'
import { flowBlocks, plainNumber, type Block, type SheetDraft } from '../layout/index.js'
import type { PacketInput } from '../inputs.js'
import { columns } from './columns.js'
import { equipmentRows } from './equipment-rows.js'
import { continued, type SheetJob } from './job.js'
import { nodeSchedule } from './node-schedule.js'
import { awg, numberedWays } from '../diagram/wire-tags.js'

/**
 * Sheet E-602: raceways by number, circuits with their ampacities, strings, panels, grounding. The conductors by tag stand
 * once, with the one-line diagram, and so do the ratings of the equipment unless they had no room there.
 *
 * @param left The ratings that had no room with the one-line diagram.
 */
export function scheduleSheets(job: SheetJob, left: readonly Block[]): SheetDraft[] {
  const wiring = job.input.wire?.values
  if (wiring === undefined) return []
  const blocks: Block[] = [
    { kind: 'heading', text: 'Conductors and raceways' },
    racewayTable(wiring),
    { kind: 'heading', text: 'Circuits' },
    circuitTable(wiring),
    { kind: 'heading', text: 'Ampacity along each circuit' },
    ampacityTable(wiring),
    ...stringBlocks(wiring),
    { kind: 'heading', text: 'Service, panels, feeders and sources' },
    nodeSchedule(wiring),
    { kind: 'heading', text: 'Grounding and bonding' },
    groundingTable(wiring),
    ...left,
    {
      kind: 'text',
      text: `Conductors by tag${left.length === 0 ? ', and ratings of the equipment' : ''}: sheet E-601 and those that follow it.`,
    },
  ]
  return flowBlocks(blocks, job.stationery.body).map((paper, page) => ({
    id: continued('E-602', page),
    title: page === 0 ? 'Conductor and raceway schedules' : 'Conductor and raceway schedules, continued',
    scale: 'None',
    paper,
  }))
}

function racewayTable(wiring: WiringValues): Block {
  return {
    kind: 'table',
    columns: columns(
      ['No.', 0.05],
      ['Circuits', 0.17],
      ['Where', 0.18],
      ['Conductors', 0.29],
      ['Raceway', 0.14],
      ['Length', 0.07],
      ['Fill', 0.1],
    ),
    rows: numberedWays(wiring).map((way) => [
      String(way.number),
      way.circuits.join(', '),
      way.where,
      way.conductors,
      way.raceway,
      `${plainNumber(way.lengthFt, 0)} ft`,
      way.fill,
    ]),
  }
}

function circuitTable(wiring: WiringValues): Block {
  return {
    kind: 'table',
    columns: columns(
      ['Circuit', 0.16],
      ['Kind', 0.16],
      ['Inverters', 0.1],
      ['Voltage', 0.1],
      ['Rated current', 0.12],
      ['125 %', 0.1],
      ['Overcurrent device', 0.14],
      ['Voltage rise', 0.12],
    ),
    rows: allCircuits(wiring).map((circuit) => [
      circuit.id,
      circuit.kind.replaceAll('_', ' ').replace('ac ', 'AC ').replace('dc ', 'DC '),
      circuit.inverters === 0 ? '' : String(circuit.inverters),
      `${plainNumber(circuit.voltage_v, 0)} V`,
      `${plainNumber(circuit.continuous_a)} A`,
      `${plainNumber(circuit.required_a)} A`,
      circuit.breaker_a === null
        ? circuit.kind === 'ac_supply_tap'
          ? 'at their end'
          : 'none needed'
        : `${circuit.breaker_a} A${isAc(circuit) ? `, ${circuit.poles ?? 2}-pole` : ''}`,
      `${plainNumber(circuit.total_voltage_rise_pct)} of ${plainNumber(circuit.voltage_rise_limit_pct)} %`,
    ]),
  }
}

function ampacityTable(wiring: WiringValues): Block {
  return {
    kind: 'table',
    columns: columns(
      ['Circuit', 0.11],
      ['Segment', 0.13],
      ['Conductor', 0.16],
      ['Air', 0.08],
      ['Roof adder', 0.08],
      ['Correction', 0.1],
      ['Adjustment', 0.11],
      ['Ampacity', 0.09],
      ['Terminal limit', 0.09],
      ['Governs', 0.11],
    ),
    rows: allCircuits(wiring).flatMap((circuit) =>
      circuit.segments.map((segment) => [
        circuit.id,
        segment.id.replaceAll('_', ' '),
        `${awg(segment.size_awg)} ${segment.insulation}`,
        `${plainNumber(segment.ambient_c, 1)} °C`,
        segment.rooftop_adder_c === 0 ? '' : `+${plainNumber(segment.rooftop_adder_c, 1)} °C`,
        plainNumber(segment.correction),
        plainNumber(segment.adjustment),
        `${plainNumber(segment.ampacity_a, 1)} A`,
        `${plainNumber(segment.terminal_limit_a, 1)} A`,
        segment.governs.replaceAll('_', ' '),
      ]),
    ),
  }
}

function stringBlocks(wiring: WiringValues): Block[] {
  if (wiring.strings.length === 0) return []
  return [
    { kind: 'heading', text: 'DC voltages, by string or by module on its own inverter' },
    {
      kind: 'table',
      columns: columns(
        ['String or array', 0.2],
        ['Modules', 0.12],
        ['Highest, cold', 0.18],
        ['Limit', 0.16],
        ['Lowest, hot', 0.18],
        ['Modules allowed', 0.16],
      ),
      rows: wiring.strings.map((string) => [
        string.id,
        String(string.modules),
        `${plainNumber(string.voc_cold_v, 1)} V`,
        `${plainNumber(string.limit_v, 0)} V`,
        `${plainNumber(string.vmp_hot_v, 1)} V`,
        `${string.min_modules} to ${string.max_modules}`,
      ]),
    },
  ]
}

export function equipmentTable(input: PacketInput): Block {
  return {
    kind: 'table',
    columns: columns(['Item', 0.1], ['Number', 0.08], ['Name', 0.24], ['Ratings', 0.4], ['Listing and sheet', 0.18]),
    rows: equipmentRows(input),
    whole: true,
  }
}

function groundingTable(wiring: WiringValues): Block {
  const { grounding } = wiring
  const metal = (size: string, material: string): string => `${awg(size)} ${material}`
  return {
    kind: 'table',
    columns: columns(['What', 0.3], ['Conductor', 0.25], ['Note', 0.45]),
    rows: [
      ...grounding.equipment.map((each) => [
        `Equipment ground, ${each.raceway.replaceAll('_', ' ')}`,
        metal(each.size_awg, each.material),
        `by ${each.device_a} A device`,
      ]),
      [
        'Rails and module frames along the array',
        metal(grounding.array.size_awg, grounding.array.material),
        grounding.array.note,
      ],
      [
        'Electrode at the array',
        grounding.electrode.size_awg === null ? 'none' : awg(grounding.electrode.size_awg),
        grounding.electrode.note,
      ],
      ...(grounding.supply_side_bonding_awg === null
        ? []
        : [
            [
              'Supply-side bonding jumper',
              awg(grounding.supply_side_bonding_awg),
              'also the main bonding jumper and the least neutral ahead of the PV disconnect',
            ],
          ]),
      ...grounding.raceway_bonding.map((each) => [`Bond at ${each.at.replaceAll('_', ' ')}`, '', each.note]),
    ],
  }
}
