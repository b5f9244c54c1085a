import type { ConductorValues, WiringValues } from '../../electrical/index.js'
import type { DistributionFeeder, DistributionTap } from '../../project/index.js'
import { own } from '../../values/index.js'
import type { Need } from './need.js'
import { practiceValue } from './practice.js'
import { idPart, type TakeOffJob } from './take-off-job.js'

/** A feeder or tap that is not there yet: as stated, and as it was sized. */
interface NewConductor {
  readonly what: string
  readonly where: string
  readonly stated: DistributionFeeder | DistributionTap
  readonly sized: ConductorValues
}

/** Breakers and conductors of new feeders, conductors and connectors of new taps. What is there already is not bought. */
export function takeFeeders(job: TakeOffJob, wiring: WiringValues): Need[] {
  const { feeders, taps } = newConductors(job, wiring)
  return [
    ...feeders.flatMap((feeder) => feederBreaker(feeder)),
    ...taps.map(({ what, where }): Need => ({
      item: 'tap-connector',
      name: 'Tap connector on a conductor that stays whole',
      group: 'connection',
      unit: 'each',
      quantity: 3,
      why: `two lines and neutral of ${what} (${where})`,
    })),
    ...[...feeders, ...taps].flatMap((each) => wires(job, each)),
  ]
}

/** Feeders without a stated size, and taps without one or with the PV system on them. */
function newConductors(job: TakeOffJob, { conductors }: WiringValues) {
  const { distribution, connection } = job.project.electrical ?? {}
  const rows = (letter: 'F' | 'T') => conductors.filter(({ tag }) => tag.startsWith(letter))
  const feeders = rows('F').flatMap((sized): NewConductor[] => {
    const [id = ''] = sized.circuits
    const stated = own(distribution?.feeders, id)
    if (stated === undefined || stated.size_awg !== undefined) return []
    return [{ what: `feeder ${id}`, where: `electrical.distribution.feeders.${id}`, stated, sized }]
  })
  const taps = rows('T').flatMap((sized): NewConductor[] => {
    const [id = ''] = sized.circuits
    const stated = own(distribution?.taps, id)
    const takesPv = connection?.kind === 'feeder_tap' && connection.at === id
    if (stated === undefined || (stated.size_awg !== undefined && !takesPv)) return []
    return [{ what: `tap ${id}`, where: `electrical.distribution.taps.${id}`, stated, sized }]
  })
  return { feeders, taps }
}

function feederBreaker({ what, where, stated }: NewConductor): Need[] {
  const ratingA = 'breaker_a' in stated ? stated.breaker_a : undefined
  if (ratingA === undefined) return []
  return [
    {
      item: `breaker.2p.${ratingA}a`,
      name: `Breaker, two poles, ${ratingA} A`,
      group: 'connection',
      unit: 'each',
      quantity: 1,
      why: `1 at the start of ${what}, which is new as its size is not stated (${where}.breaker_a)`,
    },
  ]
}

/** Two lines, neutral and ground; without an insulation nothing is bought, and said. */
function wires(job: TakeOffJob, { what, where, stated, sized }: NewConductor): Need[] {
  tellRaceway(job, what, where)
  const { insulation, material, length_ft: lengthFt } = stated
  if (insulation === undefined) {
    tellInsulation(job, what, where)
    return []
  }
  const slackFt = practiceValue(job, 'wire_slack_ft')
  const wire = (size: string, colour: string, count: number, use: string): Need => {
    const general = `wire.${idPart(insulation)}.${idPart(size)}.${material}`
    return {
      item: `${general}.${colour}`,
      general,
      name: `${insulation} ${size}${size.includes('kcmil') ? '' : ' AWG'} ${material}, ${colour}`,
      group: 'wire',
      unit: 'ft',
      quantity: count * sized.sets * (lengthFt + 2 * slackFt),
      why: `${count * sized.sets} x (${lengthFt} + 2 x ${slackFt}) ft, ${use} of ${what} (wire: values.conductors, ${sized.tag})`,
    }
  }
  return [
    wire(sized.size_awg, 'black', 1, 'line'),
    wire(sized.size_awg, 'red', 1, 'line'),
    wire(sized.size_awg, 'white', 1, 'neutral'),
    ...groundOf(sized).map((size) => ({
      ...wire(size, 'green', 1, 'equipment grounding'),
      item: `wire.${idPart(insulation)}.${idPart(size)}.copper.green`,
      general: `wire.${idPart(insulation)}.${idPart(size)}.copper`,
      name: `${insulation} ${size} AWG copper, green`,
    })),
  ]
}

const groundOf = ({ grounding_awg: size }: ConductorValues): string[] => (size === null ? [] : [size])

function tellInsulation(job: TakeOffJob, what: string, where: string): void {
  job.worksheet.find({
    severity: 'warning',
    id: 'materials.feeder-insulation',
    message: `the conductors of ${what}, which is new, are not counted, because their insulation is not stated`,
    where: `${where}.insulation`,
    fix: 'State the insulation to buy',
  })
}

function tellRaceway(job: TakeOffJob, what: string, where: string): void {
  job.worksheet.find({
    severity: 'warning',
    id: 'materials.feeder-raceway',
    message: `raceway, boxes and fittings of ${what}, which is new, are not counted; its conductors and devices are`,
    where,
    fix: 'Add them under materials.extra_items',
  })
}
