import { GRAVITY_INCREASE_LIMIT_PCT } from '../../tables/irc/index.js'
import type { MountValues, RafterCodePath, RafterValue } from '../model/index.js'
import type { SolvedPlane } from '../planes/index.js'

const METHOD = 'wood standard, allowable stress design, mounts as single forces'
const TABLE_LIMIT = 'residential code, deflection under the variable load'

/** Checks of the rafters of all planes, and the rule for existing buildings. */
export function rafterValues(
  planes: readonly SolvedPlane[],
): Pick<MountValues, 'rafters' | 'rafters_code_path' | 'rafter_proposals'> {
  const rafters = planes.flatMap(({ model, rafters: solved }): RafterValue[] =>
    (solved?.result.rafters ?? []).flatMap(({ number, checks }) =>
      checks.map((check) => ({
        plane: model.geometry.id,
        rafter: number,
        check: check.check,
        load_combination: check.combination,
        demand: check.demand,
        capacity: check.capacity,
        unit: check.unit,
        ratio: check.ratio,
        at_ft: check.atFt,
        method: check.check === 'deflection' ? TABLE_LIMIT : METHOD,
      })),
    ),
  )
  const proposals = planes.flatMap(({ model, proposals: own }) =>
    own.map((proposal) => ({ plane: model.geometry.id, ...proposal, needs_engineer: true as const })),
  )
  return { rafters, rafters_code_path: codePathValue(planes), rafter_proposals: proposals }
}

function codePathValue(planes: readonly SolvedPlane[]): RafterCodePath | null {
  const all = planes.flatMap(({ model, rafters }): RafterCodePath[] => {
    const path = rafters?.result.codePath
    if (path === undefined) return []
    return [
      {
        rule: `IEBC 2021 805.2: gravity load up by at most ${GRAVITY_INCREASE_LIMIT_PCT} %; says nothing about strength`,
        plane: model.geometry.id,
        rafter: path.rafter,
        change_pct: path.changePct,
        dead_change_pct: path.deadChangePct,
        combinations: path.combinations.map(({ name, changePct }) => ({ name, change_pct: changePct })),
        passes: path.passes,
      },
    ]
  })
  return all.toSorted((a, b) => b.change_pct - a.change_pct)[0] ?? null
}
