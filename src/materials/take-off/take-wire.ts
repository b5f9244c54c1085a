import { allCircuits, cablesIn, isAc, type RacewayValues, type WiringValues } from '../../electrical/index.js'
import type { Need } from './need.js'
import { practiceValue } from './practice.js'
import { idPart, type TakeOffJob } from './take-off-job.js'
import type { Feet } from '../../values/index.js'

type Conductor = RacewayValues['conductors'][number]

/** Every conductor of every segment by its colour, and every cable by its length, with slack at both ends. */
export function takeWire(job: TakeOffJob, wiring: WiringValues): Need[] {
  const slackFt = practiceValue(job, 'wire_slack_ft')
  const strings = new Set(
    allCircuits(wiring)
      .filter((each) => !isAc(each))
      .map((each) => each.id),
  )
  return wiring.raceways.flatMap((raceway) =>
    raceway.form === 'cable'
      ? cableNeeds(raceway, slackFt)
      : raceway.conductors.flatMap((conductor) =>
          coloursOf(conductor, strings.has(conductor.circuit)).map(([colour, count]) =>
            wireNeed(raceway, conductor, colour, count, slackFt),
          ),
        ),
  )
}

/** A cable is bought with its conductors in it. */
function cableNeeds(raceway: RacewayValues, slackFt: Feet): Need[] {
  return cablesIn(raceway).map(({ circuit, name, material }) => ({
    item: `cable.${idPart(name.replaceAll('/', '-'))}.${material}`,
    general: `cable.${idPart(raceway.type)}`,
    name: `Cable ${name}`,
    group: 'wire',
    unit: 'ft',
    quantity: raceway.length_ft + 2 * slackFt,
    why: `1 x (${raceway.length_ft} + 2 x ${slackFt}) ft in ${raceway.id} for circuit ${circuit} (wire: values.raceways)`,
  }))
}

function wireNeed(raceway: RacewayValues, conductor: Conductor, colour: string, count: number, slackFt: Feet): Need {
  const { size_awg: size, insulation, material, circuit, use } = conductor
  const bare = insulation === 'bare'
  const general = `wire.${idPart(insulation)}.${idPart(size)}.${material}`
  const unit = size.includes('kcmil') ? '' : ' AWG'
  const whose = use === 'grounding' ? 'equipment grounding' : `circuit ${circuit}`
  return {
    ...(bare ? { item: general } : { item: `${general}.${colour}`, general }),
    name: bare ? `Bare ${material} ${size}${unit}` : `${insulation} ${size}${unit} ${material}, ${colour}`,
    group: 'wire',
    unit: 'ft',
    quantity: count * (raceway.length_ft + 2 * slackFt),
    why: `${count} x (${raceway.length_ft} + 2 x ${slackFt}) ft in ${raceway.id} for ${whose} (wire: values.raceways)`,
  }
}

/**
 * Colours of the conductors of an entry, with how many of each.
 *
 * @source NEC 200.6 and 250.119 for white and green; black and red are habit of the trade
 */
function coloursOf({ use, count, insulation }: Conductor, direct: boolean): [string, number][] {
  if (insulation === 'bare') return [['bare', count]]
  if (use === 'grounding') return [['green', count]]
  if (use === 'neutral') return [['white', count]]
  if (!direct && count === 3) return ['black', 'red', 'blue'].map((colour): [string, number] => [colour, 1])
  const half = Math.ceil(count / 2)
  const pairs: [string, number][] = [
    [direct ? 'red' : 'black', half],
    [direct ? 'black' : 'red', count - half],
  ]
  return pairs.filter(([, number]) => number > 0)
}
