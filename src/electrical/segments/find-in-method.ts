import { conductorSizes, necSource, type ConductorSize } from '../../tables/nec/index.js'
import type { Job } from '../system/index.js'
import { isCable } from '../raceways/index.js'
import type { SizedSegment } from './size-segments.js'
import { conductorKind } from './whole-conductors.js'

/** Largest cable whose grounding conductor is as large as its others. */
const EQUAL_GROUND_TO: ConductorSize = '10'

/** What the wiring method of a segment asks besides ampacity. */
export function findInMethod(job: Job, sized: SizedSegment, next: SizedSegment | undefined): void {
  const { segment, conditions, contents } = sized
  if (conditions.method.form === 'raceway' && contents.verdict === undefined)
    job.worksheet.find({
      severity: 'warning',
      id: 'wire.fill-not-judged',
      message: `whether ${contents.count} conductors of ${contents.areaIn2.toFixed(4)} in2 fit ${segment.stated.raceway} ${segment.stated.trade_size ?? ''} in ${segment.id} was not judged: its inside area is in no table of this program`,
      where: `${segment.where}.inside_area_in2`,
      source: job.nec('racewayArea'),
      fix: 'Read the area in Chapter 9 Table 4 and state inside_area_in2 with inside_area_source',
    })
  if (conditions.method.form === 'cable') findInCable(job, sized)
  findJoint(job, sized, next)
}

const isLarger = (a: ConductorSize, b: ConductorSize): boolean => conductorSizes.indexOf(a) > conductorSizes.indexOf(b)

function findInCable(job: Job, { segment, conditions, circuits, ground }: SizedSegment): void {
  const { maxSize, name, article } = conditions.method
  const largest = circuits.map(({ sized }) => sized.size).reduce((a, b) => (isLarger(a, b) ? a : b))
  if (maxSize !== undefined && isLarger(largest, maxSize))
    job.worksheet.find({
      severity: 'error',
      id: 'wire.cable-size',
      message: `${segment.id} needs ${largest}, ${name} is made up to ${maxSize} AWG`,
      where: `${segment.where}.raceway`,
      source: necSource(job.edition, `${article}.104`, 'read'),
      fix: 'Use another cable or a raceway',
    })
  if (ground !== null && isLarger(largest, EQUAL_GROUND_TO))
    job.worksheet.find({
      severity: 'warning',
      id: 'wire.cable-ground',
      message: `the grounding conductor in the ${name} of ${segment.id} has to be ${ground} AWG or larger; in cables above ${EQUAL_GROUND_TO} AWG it is smaller than the others, and how large is not known here`,
      where: `${segment.where}.raceway`,
      source: job.nec('equipmentGroundSize'),
      fix: 'Read the marking of the cable',
    })
}

/** Where conductors become others, at the change to or from a cable, a box has to be. */
function findJoint(job: Job, here: SizedSegment, next: SizedSegment | undefined): void {
  if (next === undefined || next.segment.run !== here.segment.run || here.segment.stated.box !== undefined) return
  const [a, b] = [here, next].map(({ segment, conditions: { material, insulation } }) =>
    conductorKind({ segment, demand: { material }, insulation }),
  )
  if (a === b || !(isCable(here.segment.stated.raceway) || isCable(next.segment.stated.raceway))) return
  job.worksheet.find({
    severity: 'warning',
    id: 'wire.joint-without-box',
    message: `conductors change between ${here.segment.id} (${here.segment.stated.raceway}) and ${next.segment.id} (${next.segment.stated.raceway}), and the box of the splice is not stated; it was not checked`,
    where: `${here.segment.where}.box`,
    source: job.nec('boxAtJoint'),
    fix: 'State box with kind, splice: true, and its volume',
  })
}
