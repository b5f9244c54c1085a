import {
  roofCombinations,
  type FramingSpec,
  type PlaneGeometry,
  type RafterInput,
  type RafterPoint,
} from '../../src/structure/index.js'
import { rectangle } from './demo-house.js'

/** Rafters of 2x6 Hem-Fir No. 2 at 16 in over 11 ft, dry and cool, one span, no overhang, no notch. */
export function framingOf(change: Partial<FramingSpec> = {}): FramingSpec {
  return {
    kind: 'rafter',
    nominalSize: '2x6',
    species: 'Hem-Fir',
    grade: 'No. 2',
    specificGravity: 0.43,
    breadthIn: 1.5,
    depthIn: 5.5,
    spacingIn: 16,
    firstOffsetIn: 8,
    spansFt: [11],
    uncounted: [],
    continuous: undefined,
    ridge: 'board',
    ties: 'ceiling_joists',
    tieHeightShare: undefined,
    seatIn: 3.5,
    notchIn: 0,
    ceiling: { attached: false, finish: undefined },
    cutRafters: [],
    loadSharing: undefined,
    truss: undefined,
    eaveOverhangIn: 0,
    rakeOverhangIn: 0,
    layersIn: 0.75,
    covering: undefined,
    existingDeadPsf: 10,
    wet: false,
    incised: false,
    temperature: 'up_to_100_f',
    temperatureFactor: 1,
    ...change,
  }
}

/** A mount on rafter 3 that brings nothing yet. */
export const point = (yIn: number, change: Partial<RafterPoint> = {}): RafterPoint => ({
  rafter: 3,
  yIn,
  deadLb: 0,
  leastDeadLb: 0,
  areaFt2: 0,
  windDownLb: 0,
  windUpLb: 0,
  ...change,
})

/** Even snow on a plane. */
export const even = (name: string, psf: number, depthFt = 100): RafterInput['snow'][number] => ({
  name,
  pieces: [{ fromFt: 0, toFt: depthFt, fromPsf: psf, toPsf: psf }],
})

/** A rafter without wind; `plane` is as deep as its spans when not given. */
export function inputOf(
  framing: FramingSpec,
  change: Partial<RafterInput> & { readonly tiltDeg?: number } = {},
): RafterInput {
  const { tiltDeg = 0, ...rest } = change
  const depthFt = framing.eaveOverhangIn / 12 + framing.spansFt.reduce((sum, span) => sum + span, 0)
  const plane: PlaneGeometry = rectangle('south', 40, depthFt / Math.cos((tiltDeg * Math.PI) / 180), tiltDeg)
  return {
    framing,
    plane,
    points: [point(1)],
    coveredIn: () => [],
    livePsf: 20,
    liveLeftOut: true,
    snow: [even('balanced', 0)],
    combinations: roofCombinations('ASCE 7-16', true),
    bareWindPsf: () => 0,
    ...rest,
  }
}
