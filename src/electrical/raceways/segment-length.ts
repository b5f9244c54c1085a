import type { WiringSegment } from '../../project/facts.js'
import { drawnRouteFt, drawnWay, type DrawnLength } from '../../scene/index.js'
import { StageError } from '../../worksheet/index.js'
import { isShared, positive, type Circuit, type Job } from '../system/index.js'
import type { RacewaySegment } from './raceway-segment.js'
import type { Feet } from '../../values/index.js'

/** From this share of the drawn length downwards a stated one deserves a warning. */
const LEAST_SHARE = 0.9
/** From this share upwards it deserves a word. */
const MOST_SHARE = 1.5

/**
 * Length of a segment, ft: as stated, or of the drawn way where it says `drawn`. A stated length is compared with the
 * drawn way where one is known.
 *
 * @param alone Whether no other segment lies on a roof, so that the one drawn raceway on a plane must be its way.
 * @throws StageError when no way is drawn, or the length is not above zero.
 */
export function segmentLengthFt(job: Job, stated: WiringSegment, where: string, alone: boolean): Feet {
  const way = drawnWay(job.project, stated.drawn, alone && stated.location === 'roof')
  if (typeof way === 'object' && way.on === 'roof' && stated.location !== 'roof' && stated.location !== 'array')
    throw new StageError(
      `${where}.drawn`,
      `a segment at '${stated.location}' does not lie on a roof plane`,
      'Name points of site_plan.raceway_route, or correct location',
    )
  if (stated.length_ft === 'drawn') return drawnLengthFt(job, way, where)
  const lengthFt = positive(stated.length_ft, `${where}.length_ft`, 'the length')
  if (typeof way === 'object') compare(job, lengthFt, way, where)
  else if (stated.drawn !== undefined) throw new StageError(`${where}.drawn`, way, 'Draw it, or delete drawn')
  return lengthFt
}

function drawnLengthFt(job: Job, way: DrawnLength | string, where: string): Feet {
  if (typeof way === 'string')
    throw new StageError(
      `${where}.length_ft`,
      `the length is to be taken from the drawings, but ${way}`,
      'State length_ft in feet; or draw the way and name it under drawn: roof_plane, or from_point and to_point (with vertical_ft, or height_ft of the points)',
    )
  positive(way.lengthFt, `${where}.length_ft`, 'the drawn length')
  job.worksheet.note({
    id: `wire.${where.replace('electrical.runs.', '').replace('.segments.', '.')}.drawn-length`,
    says: `Length of the drawn line (${way.from}); bends, slack and conductors inside boxes are not in it`,
    formula: 'L = sum of the straight pieces + up and down',
    inputs: [
      { symbol: 'line', value: way.lineFt, unit: 'ft', from: way.from },
      { symbol: 'up and down', value: way.verticalFt, unit: 'ft', from: way.verticalFrom },
    ],
    result: { symbol: 'L', value: way.lengthFt, unit: 'ft' },
    source: { document: 'geometry of the drawings', standing: 'common practice, no source' },
  })
  return way.lengthFt
}

function compare(job: Job, lengthFt: Feet, way: DrawnLength, where: string): void {
  const tell = `${where} is stated as ${lengthFt.toFixed(1)} ft, its drawn way (${way.from}) is ${way.lengthFt.toFixed(1)} ft`
  if (lengthFt < LEAST_SHARE * way.lengthFt)
    job.worksheet.find({
      severity: 'warning',
      id: 'wire.length-below-drawn',
      message: `${tell}; voltage, straps and material would be reckoned too small`,
      where: `${where}.length_ft`,
      source: { document: 'geometry of the drawings', standing: 'common practice, no source' },
      fix: 'Measure again, or state length_ft: drawn',
    })
  else if (lengthFt > MOST_SHARE * way.lengthFt)
    job.worksheet.find({
      severity: 'note',
      id: 'wire.length-above-drawn',
      message: `${tell}; more than half as long again`,
      where: `${where}.length_ft`,
      source: { document: 'geometry of the drawings', standing: 'common practice, no source' },
      fix: 'Measure again, or draw the way as it will be laid',
    })
}

/**
 * Compares the way of each circuit with the line that the site plan draws from the array to the panel. That line is level,
 * so what climbs or falls is not in it and the longest way must be at least as long.
 */
export function checkDrawnRoute(job: Job, circuits: readonly Circuit[], segments: readonly RacewaySegment[]): void {
  const routeFt = drawnRouteFt(job.project)
  if (routeFt === undefined) return
  const ways = circuits
    .filter((circuit) => !isShared(circuit))
    .map((circuit) =>
      segments
        .filter((segment) => segment.circuits.some((each) => each === circuit || isShared(each)))
        .reduce((sum, { stated }) => sum + stated.length_ft, 0),
    )
  const longestFt = Math.max(0, ...ways)
  if (longestFt === 0 || longestFt >= LEAST_SHARE * routeFt) return
  job.worksheet.find({
    severity: 'warning',
    id: 'wire.length-below-drawn',
    message: `the segments of the longest way from the array to the panel are ${longestFt.toFixed(1)} ft together, the line on the site plan is ${routeFt.toFixed(1)} ft without what climbs or falls; voltage, straps and material would be reckoned too small`,
    where: 'site_plan.raceway_route',
    source: { document: 'geometry of the drawings', standing: 'common practice, no source' },
    fix: 'Measure the segments again, or correct the line',
  })
}
