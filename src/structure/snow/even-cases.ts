import { ICE_DAM, PARTIAL_SHARE } from '../../tables/asce7/index.js'
import type { Feet } from '../../values/index.js'
import { evenSnow, type SnowPiece } from './snow-case.js'
import { slopedRoofSnowPsf } from './snow-load.js'
import { balancedInput, groundInput, type BaseSnow, type SnowOnPlane, type WorkedSnow } from './snow-on-plane.js'
import { minimumSnowPsf, rainOnSnowPsf } from './uniform-snow.js'

/** The balanced case: at the stated level, with the uniform load of low slopes and the local minimum as its least. */
export function balancedCase(on: SnowOnPlane): WorkedSnow {
  const { snow, plane, depthFt } = on
  return {
    kind: 'balanced',
    snowCase: evenSnow('balanced', depthFt, slopedRoofSnowPsf(snow, 'other') * on.mapsOverStated),
    says: `Balanced snow on the covering of plane ${plane}`,
    formula: 'ps = larger of Cs pf, the minimum for low slopes and the local minimum',
    inputs: [
      { symbol: 'slope', value: snow.tiltDeg, unit: 'deg', from: `roof_planes.${plane}` },
      { symbol: 'pg', value: snow.groundPsf * on.mapsOverStated, unit: 'psf', from: 'structure.snow.ground_psf' },
      { symbol: 'Ct', value: snow.thermalFactor, unit: '', from: 'structure.snow' },
    ],
    place: '7.3, 7.4',
  }
}

/** The uniform load of a low slope, and rain on balanced snow. */
export function lowSlopeCases(on: SnowOnPlane, base: BaseSnow): WorkedSnow[] {
  const { snow, plane, depthFt } = on
  const minimumPsf = minimumSnowPsf(base.edition, base.groundPsf, snow.tiltDeg)
  const rainPsf = rainOnSnowPsf(base.edition, base.groundPsf, snow.tiltDeg, depthFt)
  const slope = { symbol: 'slope', value: snow.tiltDeg, unit: 'deg', from: `roof_planes.${plane}` }
  const minimum: WorkedSnow = {
    kind: 'minimum',
    snowCase: evenSnow('minimum of low slopes', depthFt, minimumPsf),
    says: `Separate uniform snow of a slope below 15 degrees, plane ${plane}`,
    formula: base.edition === 'ASCE 7-22' ? 'pm = pg, at most 30 psf' : 'pm = pg, at most 20 psf',
    inputs: [groundInput(base), slope],
    place: '7.3.4',
    limits: 'not together with drifts, unbalanced or sliding snow',
  }
  const rain: WorkedSnow = {
    kind: 'rain on snow',
    snowCase: evenSnow('rain on snow', depthFt, base.balancedPsf + rainPsf),
    says: `Rain on the balanced snow of plane ${plane}`,
    formula: `p = ps + ${rainPsf} psf, slope below W / 50`,
    inputs: [balancedInput(base, on), slope, { symbol: 'W', value: depthFt, unit: 'ft', from: `roof_planes.${plane}` }],
    place: '7.10',
    limits: 'balanced snow alone',
  }
  return [...(minimumPsf > 0 ? [minimum] : []), ...(rainPsf > 0 ? [rain] : [])]
}

/** Twice the flat-roof snow on the overhang of a warm roof, and none above. */
export function iceDamCases(on: SnowOnPlane, base: BaseSnow): WorkedSnow[] {
  const overhangFt = Math.min(on.overhangFt, on.depthFt)
  if (!on.iceDams || overhangFt <= 0) return []
  const psf = ICE_DAM.factor * base.flatPsf
  const pieces: SnowPiece[] = [{ fromFt: 0, toFt: overhangFt, fromPsf: psf, toPsf: psf }]
  if (on.depthFt > overhangFt) pieces.push({ fromFt: overhangFt, toFt: on.depthFt, fromPsf: 0, toPsf: 0 })
  const worked: WorkedSnow = {
    kind: 'ice dam',
    snowCase: { name: 'ice dam on the eave', pieces },
    says: `Snow behind an ice dam on the eave overhang of plane ${on.plane}, with dead load alone`,
    formula: 'p = 2 pf on the overhang, none above',
    inputs: [
      { symbol: 'pf', value: base.flatPsf, unit: 'psf', from: 'structure.flat-roof-snow' },
      {
        symbol: 'overhang',
        value: overhangFt,
        unit: 'ft',
        from: `structure.framing.${on.plane}.eave_overhang_in`,
      },
    ],
    place: '7.4.5',
    standing: 'from memory',
    limits: 'warm roofs: unventilated below R 30, ventilated below R 20; R not stated counts as warm',
  }
  return [worked]
}

/** Full and half snow on the spans of rafters that run through, where unbalanced snow does not cover it. */
export function partialCases(on: SnowOnPlane, base: BaseSnow): WorkedSnow[] {
  const { spansFt, plane } = on
  if (spansFt.length < 2) return []
  const count = spansFt.length
  const all = spansFt.map((_, index) => index)
  const patterns = [
    { name: 'full on the first span', full: [0] },
    { name: 'full on the last span', full: [count - 1] },
    { name: 'half on the first span', full: all.slice(1) },
    { name: 'half on the last span', full: all.slice(0, -1) },
    ...(count > 2
      ? all.slice(1).map((index) => ({ name: `full on spans ${index} and ${index + 1}`, full: [index - 1, index] }))
      : []),
  ]
  return patterns.map(({ name, full }) => ({
    kind: 'partial',
    snowCase: { name: `partial, ${name}`, pieces: spanPieces(on, base.balancedPsf, full) },
    says: `Part of the balanced snow gone from spans of the rafters of plane ${plane}, ${name}, half of it on the others`,
    formula: 'p = ps or 0.5 ps by span',
    inputs: [balancedInput(base, on)],
    place: '7.5',
  }))
}

/** Pieces by span: the overhang goes with the first span, what is above the last with the last. */
function spanPieces(on: SnowOnPlane, psf: number, full: readonly number[]): SnowPiece[] {
  let fromFt: Feet = 0
  let endFt: Feet = on.overhangFt
  return on.spansFt.flatMap((spanFt, index) => {
    endFt += spanFt
    const toFt = index === on.spansFt.length - 1 ? on.depthFt : Math.min(endFt, on.depthFt)
    const share = full.includes(index) ? psf : PARTIAL_SHARE * psf
    const piece = { fromFt, toFt, fromPsf: share, toPsf: share }
    fromFt = toFt
    return piece.toFt > piece.fromFt ? [piece] : []
  })
}
