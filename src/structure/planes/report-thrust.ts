import { RIDGE_BOARD_FROM_RISE } from '../../tables/irc/index.js'
import { radiansOf } from '../../values/index.js'
import type { Worksheet } from '../../worksheet/index.js'
import {
  type CombinationLine,
  rafterThrust,
  type RafterThrust,
  type WoodStrength,
  type WorstCheck,
} from '../rafters/index.js'
import { IRC, type RaftersToReport } from './rafters-to-report.js'

/** What wind from below asks of the joint to the wall. */
export function reportLift({ id, result }: RaftersToReport, worksheet: Worksheet): void {
  const lift = Math.max(...result.rafters.map((rafter) => rafter.upliftAtWallLb))
  if (lift < 1) return
  worksheet.find({
    severity: 'note',
    id: 'structure.rafter-uplift-tie',
    message: `plane '${id}': wind lifts the hardest rafter off the wall with ${Math.ceil(lift)} lb (0.6D + 0.6W); the joint of rafter and wall is not checked here`,
    where: `structure.framing.${id}`,
    fix: 'Look for metal ties between rafters and wall plate, and have them checked where there are only nails.',
  })
}

/** Push of the feet of the rafters, and what holds it. */
export function reportThrust(
  rafters: RaftersToReport,
  wood: WoodStrength,
  { rafter }: Pick<WorstCheck, 'rafter'>,
  worksheet: Worksheet,
): void {
  const { framing } = rafters.input
  if (framing.ridge === 'beam') return
  findRidge(rafters, worksheet)
  // Wind from below may govern bending; what pushes outwards is the hardest load downwards.
  const down = rafter.lines.filter(({ momentLbIn }) => momentLbIn > 0)
  const line = down.toSorted((x, y) => y.stressPsi / y.allowablePsi - x.stressPsi / x.allowablePsi)[0]
  if (line === undefined) return
  const thrust = rafterThrust(rafters.input, wood, rafter.spans, line)
  recordThrust(rafters, line, thrust, worksheet)
  findThrust(rafters, line, thrust, worksheet)
}

/** Ridge and ties that the code does not allow. */
function findRidge({ id, input, covered }: RaftersToReport, worksheet: Worksheet): void {
  const { framing, plane } = input
  const path = `structure.framing.${id}`
  const by = covered === undefined ? '' : `; covered by ${covered}`
  const isLow = 12 * Math.tan(radiansOf(plane.tiltDeg)) < RIDGE_BOARD_FROM_RISE - 1e-9
  if (framing.ridge === 'board' && (isLow || framing.ties === 'none')) {
    worksheet.find({
      severity: covered === undefined ? 'error' : 'note',
      id: 'structure.rafter-ridge-board',
      message: `plane '${id}': rafters on a ridge board ${isLow ? `under ${RIDGE_BOARD_FROM_RISE}:12` : 'without ties'} need a ridge beam, which is not there${by}`,
      where: `${path}.${isLow ? 'ridge' : 'ties'}`,
      source: IRC('R802.4.4'),
      fix: 'Ask a structural engineer; the walls may spread.',
    })
  }
  if (framing.ties === 'raised_ties' && (framing.tieHeightShare ?? 1) > 1 / 3) {
    worksheet.find({
      severity: covered === undefined ? 'error' : 'note',
      id: 'structure.rafter-ties-high',
      message: `plane '${id}': ties above a third of the height of the ridge, or at a height that is not stated, are not covered by the code's table${by}`,
      where: `${path}.tie_height_share`,
      source: IRC('table R802.4.1(9)', 'from memory'),
      fix: SHOW_ENGINEER,
    })
  }
}

function recordThrust(
  { id, input }: RaftersToReport,
  line: CombinationLine,
  thrust: RafterThrust,
  worksheet: Worksheet,
): void {
  worksheet.step({
    id: `structure.${id}.rafter-thrust`,
    says: `Outward push of a rafter at its foot without a ridge beam, ${line.name}`,
    formula: 'H = w L / (2 tan slope), w the even load with the same moment',
    inputs: [
      { symbol: 'L', value: thrust.spanFt, unit: 'ft', from: `structure.framing.${id}.span_ft` },
      { symbol: 'slope', value: input.plane.tiltDeg, unit: 'deg', from: `roof_planes.${id}` },
      { symbol: 'N at the heel', value: thrust.heelLb, unit: 'lb', from: 'H cos + w L sin' },
      { symbol: 'N at the ridge', value: thrust.ridgeLb, unit: 'lb', from: 'H cos' },
      { symbol: 'bending with axial force', value: thrust.interaction, unit: '', from: 'NDS 3.9.2' },
    ],
    result: { symbol: 'H', value: thrust.thrustLb, unit: 'lb' },
    source: { document: 'Statics of a pair of rafters', standing: 'read' },
    limits: 'the nails between rafter and tie are not checked; the span tables of the code leave axial force out too',
  })
}

function findThrust(
  { id, input, covered }: RaftersToReport,
  line: CombinationLine,
  thrust: RafterThrust,
  worksheet: Worksheet,
): void {
  const { framing } = input
  const path = `structure.framing.${id}`
  if (framing.ridge === undefined || framing.ties === undefined) {
    worksheet.find({
      severity: covered === undefined ? 'warning' : 'note',
      id: 'structure.rafter-thrust-not-checked',
      message: `plane '${id}': what holds the feet of the rafters is not stated; without a ridge beam each pushes outwards with ${Math.ceil(thrust.thrustLb)} lb (${line.name}), which ties have to take`,
      where: `${path}.${framing.ridge === undefined ? 'ridge' : 'ties'}`,
      source: IRC('R802.5.2'),
      fix: 'Look in the attic for ceiling joists nailed to the rafters, and state ridge and ties.',
    })
  }
  const bent = line.stressPsi / line.allowablePsi
  if (thrust.interaction <= 1 || bent > 1) return
  worksheet.find({
    severity: 'note',
    id: 'structure.rafter-axial',
    message: `plane '${id}': bending alone uses ${(100 * bent).toFixed(0)} % of the hardest rafter under ${line.name}, with its axial force ${(100 * thrust.interaction).toFixed(0)} %`,
    where: path,
    source: { document: 'NDS 2018', place: '3.9.2', standing: 'secondary' },
    fix: SHOW_ENGINEER,
  })
}

const SHOW_ENGINEER = 'Show it to a structural engineer.'
