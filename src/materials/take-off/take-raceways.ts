import { cablesIn, type RacewayValues, type WiringValues } from '../../electrical/index.js'
import { cutStock } from '../cut/cut-stock.js'
import type { CutPiece } from '../cut/cutting-problem.js'
import { recordCuts, type CutLists } from './cut-record.js'
import type { Need } from './need.js'
import { takeBoxes } from './take-boxes.js'
import { practiceValue } from './practice.js'
import { idPart, type TakeOffJob } from './take-off-job.js'
import { feetOf, inchesOf, type Inches } from '../../values/index.js'

/** Flexible conduit comes in coils. */
const FLEXIBLE = new Set(['LFNC', 'LFMC', 'FMC'])

const isRigid = ({ form, type }: RacewayValues): boolean => form === 'raceway' && !FLEXIBLE.has(type)

/** Raceways in sticks with their cuts, straps at the computed places, couplings, connectors, expansion fittings, boxes; staples and connectors of cables. */
export function takeRaceways(job: TakeOffJob, wiring: WiringValues): { needs: Need[]; cuts: CutLists } {
  const stickIn = inchesOf(practiceValue(job, 'raceway_stick_ft'))
  const kinds = new Map<string, RacewayValues[]>()
  for (const raceway of wiring.raceways.filter(isRigid)) {
    const id = kindId(raceway)
    kinds.set(id, [...(kinds.get(id) ?? []), raceway])
  }
  const cutKinds = [...kinds].map(([id, same]) => sticksOf(job, id, same, stickIn))
  return {
    needs: [
      ...cutKinds.flatMap((kind) => kind.needs),
      ...wiring.raceways.flatMap((raceway) => fittingsOf(raceway, stickIn)),
      ...takeBoxes(wiring),
    ],
    cuts: {
      entries: cutKinds.flatMap((kind) => kind.cuts.entries),
      summaries: cutKinds.flatMap((kind) => kind.cuts.summaries),
    },
  }
}

const kindId = ({ type, trade_size: size }: RacewayValues): string => `${idPart(type)}.${size ?? ''}`
const kindName = ({ type, trade_size: size }: RacewayValues): string => `${type} ${size ?? ''} in`

function sticksOf(
  job: TakeOffJob,
  id: string,
  raceways: readonly RacewayValues[],
  stickIn: Inches,
): { needs: Need[]; cuts: CutLists } {
  const pieces = raceways.flatMap((raceway): CutPiece[] => {
    const lengthIn = inchesOf(raceway.length_ft)
    const whole = Math.floor(lengthIn / stickIn + 1e-9)
    const rest = lengthIn - whole * stickIn
    return [
      ...Array.from({ length: whole }, () => ({ for: raceway.id, lengthIn: stickIn })),
      ...(rest > 1e-6 ? [{ for: raceway.id, lengthIn: rest }] : []),
    ]
  })
  const kerfIn = practiceValue(job, 'kerf_in')
  const item = `raceway.${id}`
  const plan = cutStock(pieces, [{ lengthIn: stickIn }], kerfIn)
  const [first] = raceways
  const feet = raceways.reduce((sum, raceway) => sum + raceway.length_ft, 0)
  const need: Need = {
    item,
    name: `${first === undefined ? id : kindName(first)}, stick of ${feetOf(stickIn)} ft`,
    group: 'raceway',
    unit: 'stick',
    quantity: plan.sticks.length,
    why: `cut list of ${feet} ft in ${raceways.map((raceway) => raceway.id).join(', ')} (wire: values.raceways)`,
  }
  return { needs: [need], cuts: recordCuts(job, item, plan, kerfIn, () => item) }
}

function fittingsOf(raceway: RacewayValues, stickIn: Inches): Need[] {
  const from = (key = ''): string => `${raceway.id} (wire: values.raceways${key})`
  if (raceway.type === 'none')
    return [
      {
        item: 'cable-clip',
        name: 'Clip for leads at frame or rail, sunlight resistant',
        group: 'wire',
        unit: 'each',
        quantity: raceway.straps,
        why: `${raceway.straps} at the computed places of ${from('.strap_positions_ft')}`,
      },
    ]
  if (raceway.form === 'cable') return cableFittings(raceway)
  const id = kindId(raceway)
  const kind = kindName(raceway)
  const each = (item: string, name: string, quantity: number, why: string): Need => ({
    item: `${item}.${id}`,
    name,
    group: 'raceway',
    unit: 'each',
    quantity,
    why,
  })
  const rigid = isRigid(raceway)
  const couplings = rigid ? Math.ceil(inchesOf(raceway.length_ft) / stickIn - 1e-9) - 1 : 0
  const flexible: Need[] = rigid
    ? []
    : [
        {
          item: `raceway.${id}`,
          name: kind,
          group: 'raceway',
          unit: 'ft',
          quantity: raceway.length_ft,
          why: `${raceway.length_ft} ft in ${from('.length_ft')}`,
        },
      ]
  return [
    ...flexible,
    each(
      'strap',
      `Strap for ${kind}`,
      raceway.straps,
      `${raceway.straps} at the computed places of ${from('.strap_positions_ft')}`,
    ),
    each('coupling', `Coupling for ${kind}`, couplings, `${couplings} between the sticks of ${from('.length_ft')}`),
    each('connector', `Connector for ${kind}`, 2, `2 at the ends of ${from()}`),
    each(
      'expansion-fitting',
      `Expansion fitting for ${kind}`,
      raceway.expansion_fitting ? 1 : 0,
      `1 for the change of length of ${from('.length_change_in')}`,
    ),
  ]
}

/** Staples and connectors of the cables of a segment; cables that lie apart are each held. */
function cableFittings(raceway: RacewayValues): Need[] {
  const cables = cablesIn(raceway).length
  const id = idPart(raceway.type)
  const each = (item: string, name: string, quantity: number, why: string): Need => ({
    item: `${item}.${id}`,
    name: `${name} for ${raceway.type} cable`,
    group: 'wire',
    unit: 'each',
    quantity,
    why: `${why} (wire: values.raceways)`,
  })
  return [
    each(
      'cable-support',
      'Staple or strap',
      raceway.straps * cables,
      `${raceway.straps} for each of ${cables} cables at the computed places of ${raceway.id}`,
    ),
    each('cable-connector', 'Connector', 2 * cables, `2 at the ends of each of ${cables} cables of ${raceway.id}`),
  ]
}
