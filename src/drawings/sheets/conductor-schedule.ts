import type { ConductorValues, WiringValues } from '../../electrical/index.js'
import { plainNumber, type Block } from '../layout/index.js'
import { columns } from './columns.js'
import { nodeTitles } from './node-titles.js'
import { awg, fillText, isTrunk, racewayKind, racewayOfTag, sizeText } from '../diagram/wire-tags.js'

/** Every conductor from the array to the utility by the tag that marks it on the diagram. */
export function conductorSchedule(wiring: WiringValues): Block {
  const titles = nodeTitles(wiring)
  const place = (id: string): string => titles.get(id) ?? id
  return {
    kind: 'table',
    columns: columns(
      ['Tag', 0.04],
      ['From', 0.125],
      ['To', 0.125],
      ['Number', 0.066],
      ['Size', 0.082],
      ['Insulation', 0.082],
      ['Ground', 0.066],
      ['Raceway or method', 0.12],
      ['Fill', 0.078],
      ['Ampacity', 0.076],
      ['Required', 0.08],
      ['Device', 0.06],
    ),
    rows: wiring.conductors.map((each) => [
      each.tag,
      place(each.from),
      place(each.to),
      countText(each),
      sizeText(each),
      each.insulation ?? (each.count.lines === 0 || isTrunk(each) ? '' : 'not stated'),
      groundText(each),
      methodText(wiring, each),
      fillOf(wiring, each),
      amps(each.ampacity_a),
      requiredText(each),
      deviceText(each),
    ]),
  }
}

/** `2`, or `2 + N` with a neutral; a conductor of grounding and bonding is one alone. */
function countText({ count: { lines, neutral } }: ConductorValues): string {
  if (lines === 0) return '1'
  return neutral === 0 ? String(lines) : `${lines} + N`
}

/** Ground beside the conductors of a circuit; a bare or bonding conductor has none. */
function groundText({ ampacity_a: ampacity, grounding_awg: ground, count }: ConductorValues): string {
  if (ampacity === null) return ''
  return ground === null || count.ground === 0 ? 'none' : awg(ground)
}

/** A feeder or a service whose load nobody states carries nothing that is known. */
function requiredText({ required_a: required }: ConductorValues): string {
  return required === 0 ? 'load not stated' : amps(required)
}

function deviceText({ ocpd_a: device, ocpd_size_ok: fits }: ConductorValues): string {
  if (device === null) return ''
  return `${plainNumber(device)} A${fits === false ? ', too large' : ''}`
}

function methodText(wiring: WiringValues, conductor: ConductorValues): string {
  const raceway = racewayOfTag(wiring, conductor)
  if (raceway === undefined) return conductor.method
  return raceway.form === 'cable' ? `${raceway.type} cable` : racewayKind(raceway)
}

function fillOf(wiring: WiringValues, conductor: ConductorValues): string {
  const raceway = racewayOfTag(wiring, conductor)
  return raceway === undefined ? '' : fillText(raceway)
}

const amps = (value: number | null): string => (value === null ? '' : `${plainNumber(value, 1)} A`)
