import type { BoxValues, RacewayValues, WiringValues } from '../../electrical/index.js'
import type { Need } from './need.js'
import { idPart } from './take-off-job.js'

const box = (item: string, name: string, quantity: number, why: string): Need => ({
  item,
  general: 'box',
  name,
  group: 'raceway',
  unit: 'each',
  quantity,
  why,
})

/**
 * Boxes as the project states them; where it states none, one at the beginning of every way from the array, and wherever
 * two segments of a way meet.
 */
export function takeBoxes(wiring: WiringValues): Need[] {
  const kinds = new Map(wiring.circuits.map((circuit) => [circuit.id, circuit.kind]))
  const runs = new Map<string, RacewayValues[]>()
  for (const raceway of wiring.raceways) runs.set(raceway.run, [...(runs.get(raceway.run) ?? []), raceway])
  const usual = [...runs].flatMap(([run, segments]): Need[] => {
    const enclosed = segments.filter(({ form }) => form !== 'open')
    const [first] = enclosed
    if (first === undefined) return []
    const atArray = first.circuits.some((id) => kinds.get(id) === 'ac_branch' || kinds.get(id) === 'dc_string')
    const stated = (segment: RacewayValues | undefined): boolean =>
      segment !== undefined && wiring.boxes.some(({ after_segment: after }) => after === segment.id)
    const firstStated =
      wiring.boxes.some(({ run: of, after_segment: after }) => of === run && after === null) ||
      segments.slice(0, segments.indexOf(first)).some(stated)
    const between = enclosed.slice(0, -1).filter((segment) => !stated(segment)).length
    const why = `of run ${run} (wire: values.raceways)`
    return [
      box(
        'box.array',
        'Junction box at the array, outdoor, with flashing',
        atArray && !firstStated ? 1 : 0,
        `where the raceway begins ${why}`,
      ),
      box('box.pull', 'Pull box or conduit body', between, `${between} between the segments ${why}`),
    ]
  })
  return [...usual, ...wiring.boxes.map(statedBox)]
}

function statedBox(stated: BoxValues): Need {
  const [item, name] = itemOf(stated)
  return box(item, name, 1, `1 at ${stated.id} (wire: values.boxes)`)
}

function itemOf({ kind, standard_box: standard, volume_in3: volumeIn3 }: BoxValues): [string, string] {
  if (kind === 'conduit_body') return ['conduit-body', 'Conduit body with cover']
  if (standard !== null) return [`box.${idPart(standard.replaceAll('/', '-'))}`, `Metal box ${standard}, with cover`]
  return volumeIn3 === null
    ? ['box.pull', 'Pull box or conduit body']
    : [`box.marked-${volumeIn3}`, `Box marked ${volumeIn3} in3 or more, with cover`]
}
