import { rapidShutdownRules } from '../tables/nec/index.js'
import type { CircuitValues, PanelValues, RacewayValues, SegmentValues, WiringValues } from './system/index.js'

/** Something of one edition before it is set beside the others. */
export interface EditionTrait {
  readonly what: string
  readonly where: string
  readonly value: string | null
}

/** All that a person buys, fixes, or is allowed by the wiring of one edition. */
export function traitsOf(values: WiringValues): EditionTrait[] {
  return [
    ...panelTraits('main panel', values.panel),
    ...(values.combiner === null ? [] : panelTraits('combiner', values.combiner)),
    ...values.circuits.flatMap(circuitTraits),
    ...values.raceways.flatMap(racewayTraits),
    ...groundingTraits(values),
    ...values.strings.map(({ id, complies, min_modules: least, max_modules: most }): EditionTrait => ({
      what: 'string',
      where: id,
      value: `${complies ? 'passes' : 'FAILS'}, ${least} to ${most} modules allowed`,
    })),
    ...shutdownTraits(values.edition),
  ]
}

const amperes = (value: number): string => `${Number(value.toFixed(1))} A`

function panelTraits(where: string, panel: PanelValues): EditionTrait[] {
  return [
    {
      what: 'connection',
      where,
      value: panel.complies ? 'allowed' : 'NOT allowed',
    },
    { what: 'connection takes inverters up to', where, value: amperes(panel.max_inverter_a) },
  ]
}

function circuitTraits({ id, breaker_a: device, segments }: CircuitValues): EditionTrait[] {
  return [
    { what: 'overcurrent device', where: id, value: device === null ? 'none' : `${device} A` },
    ...segments.flatMap((segment) => segmentTraits(id, segment)),
  ]
}

function segmentTraits(circuit: string, segment: SegmentValues): EditionTrait[] {
  const { id, size_awg: size, material, insulation, named } = segment
  const where = id.startsWith(`${circuit}.`) ? id : `${circuit} in ${id}`
  const verdict = named === null ? '' : named.complies ? ', as named' : `, the named ${named.size_awg} ${named.reason}`
  return [{ what: 'conductor', where, value: `${sizeWords(size)} ${material} ${insulation}${verdict}` }]
}

function racewayTraits({
  id,
  type,
  trade_size: size,
  expansion_fitting: fitting,
  straps,
}: RacewayValues): EditionTrait[] {
  return [
    { what: 'raceway', where: id, value: `${type} ${size ?? ''}`.trim() },
    { what: 'raceway supports', where: id, value: `${straps}` },
    { what: 'raceway expansion fitting', where: id, value: fitting ? 'needed' : 'none' },
  ]
}

function groundingTraits({
  grounding: { equipment, array, electrode, supply_side_bonding_awg: bonding },
}: WiringValues): EditionTrait[] {
  return [
    ...equipment.map(({ raceway, size_awg: size }) => ({
      what: 'grounding conductor',
      where: raceway,
      value: sizeWords(size),
    })),
    { what: 'grounding electrode', where: 'array', value: electrode.required ? 'required' : 'not required' },
    { what: 'grounding conductor along the array', where: 'array', value: sizeWords(array.size_awg) },
    {
      what: 'grounding: supply-side bonding jumper',
      where: 'PV disconnect',
      value: bonding === null ? null : sizeWords(bonding),
    },
  ]
}

function shutdownTraits(edition: string): EditionTrait[] {
  const rule = rapidShutdownRules.find((each) => each.edition === edition)
  const inside = rule?.insideVoltage === undefined ? undefined : `${rule.insideVoltage.limitV} V`
  const traits: readonly (readonly [what: string, value: string | undefined])[] = [
    ['beyond the boundary', rule && `${rule.outsideLimit} in ${rule.timeS} s`],
    ['inside the boundary, at each module', inside],
    ['initiator', rule && (rule.initiatorOutdoors ? 'outdoors, readily accessible' : 'place not ruled')],
  ]
  return traits.map(([what, value]) => ({ what: `rapid shutdown ${what}`, where: 'array', value: value ?? 'no rule' }))
}

const sizeWords = (size: string): string => (size.includes('kcmil') ? size : `${size} AWG`)
