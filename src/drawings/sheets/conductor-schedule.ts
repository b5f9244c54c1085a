import type { ConductorValues, WiringValues } from '../../electrical/index.js'
import { plainNumber, type Block } from '../layout/index.js'
import { columns } from './columns.js'
import { nodeTitles } from './node-titles.js'
import { awg, fillText, racewayKind, racewayOfTag, sizeText } from '../diagram/wire-tags.js'

/** Every conductor from the array to the utility by the tag that marks it on the diagram. */
export function conductorSchedule(wiring: WiringValues): Block {
  const titles = nodeTitles(wiring)
  const place = (id: string): string => titles.get(id) ?? id
  return {
    kind: 'table',
    columns: columns(
      ['Tag', 0.05],
      ['From', 0.15],
      ['To', 0.15],
      ['Size', 0.12],
      ['Ampacity', 0.08],
      ['Required', 0.08],
      ['Device', 0.09],
      ['Raceway or method', 0.14],
      ['Fill', 0.07],
      ['Ground', 0.07],
    ),
    rows: wiring.conductors.map((each) => [
      each.tag,
      place(each.from),
      place(each.to),
      sizeText(each),
      amps(each.ampacity_a),
      requiredText(each),
      deviceText(each),
      methodText(wiring, each),
      fillOf(wiring, each),
      each.ampacity_a === null || each.grounding_awg === null ? '' : awg(each.grounding_awg),
    ]),
  }
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
