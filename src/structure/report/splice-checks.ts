import type { Source, Worksheet } from '../../worksheet/index.js'
import type { PartCheck, SpliceValue } from '../model/index.js'
import type { RailKit, SplicedRail } from '../planes/index.js'
import { feetOf } from '../../values/index.js'

const STATICS: Source = { document: 'Statics of the continuous rail over its mounts', standing: 'read' }

/** Moment and shear at the joints of a rail against what the sheet says that they take. */
export function splicePartChecks({ joints, strength, loaded }: SplicedRail, kit: RailKit): PartCheck[] {
  const { sheet } = kit.rail.product
  const basis = {
    source: { document: sheet ?? `sheet of rail ${kit.rail.id}`, standing: 'project file' as const },
    fix: 'Put the mounts closer together, use a stock length that puts the joint elsewhere, or use a stronger joint.',
  }
  const checks: PartCheck[] = []
  for (const { xIn, momentLbIn, shearLb } of joints) {
    const where = `${loaded.line.id} at ${feetOf(xIn).toFixed(2)} ft`
    const add = (name: string, demand: number, capacity: number | undefined, unit: string, key: string): void => {
      const path = `${kit.rail.at}.splice.${key}`
      if (capacity !== undefined) checks.push({ name, demand, capacity, unit, where, path, ...basis })
    }
    add('splice moment', momentLbIn, strength.momentLbIn, 'lb-in', 'moment_lb_in')
    add('splice shear', shearLb, strength.shearLb, 'lb', 'shear_lb')
  }
  return checks
}

/** Joints of a rail as values. */
export function spliceValues({ joints, strength, loaded }: SplicedRail): SpliceValue[] {
  const { momentLbIn: moment, shearLb: shear } = strength
  return joints.map((joint) => {
    const ratios = [
      ...(moment === undefined ? [] : [joint.momentLbIn / moment]),
      ...(shear === undefined ? [] : [joint.shearLb / shear]),
    ]
    return {
      rail: loaded.line.id,
      x_in: joint.xIn,
      moment_lb_in: joint.momentLbIn,
      shear_lb: joint.shearLb,
      moment_capacity_lb_in: moment ?? null,
      shear_capacity_lb: shear ?? null,
      ratio: ratios.length === 0 ? null : Math.max(...ratios),
      method: moment === undefined ? 'hinge' : 'moment splice',
    }
  })
}

/** Says what the joints are taken to be, and which of their checks could not be made. */
export function reportSplices(rails: readonly SplicedRail[], kit: RailKit, worksheet: Worksheet): void {
  const joints = rails.flatMap((rail) => rail.joints)
  if (joints.length === 0) return
  const { splice } = kit.rail.product
  const path = `${kit.rail.at}.splice`
  if (splice?.moment_lb_in === undefined && splice?.hinge === undefined) {
    worksheet.assume({
      path: `${path}.moment_lb_in`,
      value: 0,
      unit: 'lb-in',
      why: 'the sheet states no moment that a joint of the rail takes, so each joint is a hinge, put where the moment is next to nothing',
      source: STATICS,
    })
  }
  if (splice?.shear_lb === undefined) {
    worksheet.find({
      severity: 'warning',
      id: 'structure.splice-shear-not-checked',
      message: `the sheet of the rail does not state the shear that a joint takes; at the ${joints.length} joint${joints.length === 1 ? '' : 's'} it is up to ${Math.max(...joints.map((joint) => joint.shearLb)).toFixed(0)} lb`,
      where: `${path}.shear_lb`,
      fix: 'Add the allowable shear of the joint from its data sheet.',
    })
  }
  const [first, ...others] = joints
  if (first === undefined) return
  const worst = others.reduce((a, b) => (b.momentLbIn > a.momentLbIn ? b : a), first)
  const limit = rails.find((rail) => rail.joints.length > 0)?.strength.momentLbIn
  worksheet.step({
    id: 'structure.splice-moment',
    says: 'Largest moment at a joint of a rail over all combinations, up and down',
    formula: limit === undefined ? 'M = 0 at a hinge; rail and mounts are solved with it' : '|M(x)| <= M_sp',
    inputs: [
      { symbol: 'x', value: worst.xIn, unit: 'in', from: 'cut of the rail from its stock lengths' },
      { symbol: 'V', value: worst.shearLb, unit: 'lb', from: 'shear at the joint' },
    ],
    result: { symbol: 'M', value: worst.momentLbIn, unit: 'lb-in' },
    ...(limit === undefined ? {} : { check: { relation: '<=' as const, limit, pass: worst.momentLbIn <= limit } }),
    source: STATICS,
    limits: 'not in the middle fifth of a span nor over a mount unless the joint is as strong as the rail',
  })
}
