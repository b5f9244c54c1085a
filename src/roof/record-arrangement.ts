import type { Source, Worksheet } from '../worksheet/index.js'
import type { ArrangedPlane } from './arrangement.js'
import type { FireAccess } from './fire-access.js'
import type { Trial } from './trial.js'
import type { SquareFeet } from '../values/index.js'

const GEOMETRY: Source = { document: 'Plane geometry (shoelace formula, cosine projection)', standing: 'read' }

/** Writes the areas, the coverage, the ridge strip and the fits of a finished layout on the worksheet. */
export function recordArrangement(
  worksheet: Worksheet,
  access: FireAccess | undefined,
  trial: Trial,
  planes: Readonly<Record<string, ArrangedPlane>>,
  roofPlanAreaFt2: SquareFeet | undefined,
): void {
  for (const plane of Object.values(planes)) {
    worksheet.step({
      id: `roof.${plane.id}.plan-area`,
      says: `Area of plane ${plane.id} seen from above`,
      formula: 'A_plan = A * cos(tilt)',
      inputs: [
        { symbol: 'A', value: plane.areaFt2, unit: 'ft2', from: `roof_planes.${plane.id}.outline` },
        { symbol: 'tilt', value: plane.tiltDeg, unit: 'deg', from: `roof_planes.${plane.id}` },
      ],
      result: { symbol: 'A_plan', value: plane.planAreaFt2, unit: 'ft2' },
      source: GEOMETRY,
    })
  }
  recordCoverage(worksheet, access, trial, roofPlanAreaFt2)
  recordStrips(worksheet, trial)
  for (const [arrayId, fit] of trial.fits) {
    worksheet.step({
      id: `roof.${arrayId}.fit`,
      says: `Modules of ${arrayId} that were placed, of those that the usable area takes`,
      formula: 'n = min(capacity, asked, coverage limit)',
      inputs: [
        { symbol: 'capacity', value: fit.capacity, unit: '', from: 'search over rows and offsets' },
        ...(fit.room === undefined
          ? []
          : [
              {
                symbol: 'room',
                value: fit.room,
                unit: '',
                from: 'the same search without regard to rafters, rows one way',
              },
            ]),
      ],
      result: { symbol: 'n', value: fit.modules.length, unit: '' },
      source: { document: 'Exact packing of rows', standing: 'common practice, no source' },
      ...(fit.room === undefined
        ? {}
        : {
            limits:
              'every rail has mounts on rafters within the spans and free ends of its sheet; wind and snow may ask for more mounts',
          }),
    })
  }
}

function recordCoverage(
  worksheet: Worksheet,
  access: FireAccess | undefined,
  trial: Trial,
  roofPlanAreaFt2: SquareFeet | undefined,
): void {
  if (roofPlanAreaFt2 === undefined) return
  const limit = access?.limitPct
  worksheet.step({
    id: 'roof.coverage',
    says: 'Share of the whole roof that modules cover, both seen from above',
    formula: 'c = A_modules / A_roof',
    inputs: [
      { symbol: 'A_modules', value: trial.planAreaFt2, unit: 'ft2', from: 'sizes and slopes of all modules' },
      { symbol: 'A_roof', value: roofPlanAreaFt2, unit: 'ft2', from: 'roof_access.total_roof_area_ft2' },
    ],
    result: { symbol: 'c', value: (100 * trial.planAreaFt2) / roofPlanAreaFt2, unit: '%' },
    source: limit?.source ?? GEOMETRY,
    ...(limit === undefined
      ? {}
      : { limits: `up to ${limit.value} % the smaller strip below the ridge holds, above it the larger` }),
  })
}

function recordStrips(worksheet: Worksheet, trial: Trial): void {
  for (const [planeId, { fire, surface }] of trial.fields) {
    if (fire === undefined || fire.exempt) continue
    if (surface.edges.some((edge) => edge.kind === 'ridge')) {
      worksheet.step({
        id: `roof.${planeId}.ridge-setback`,
        says: `Strip below the ridge of plane ${planeId} that stays free`,
        formula: 's = rule of the edition for this coverage',
        inputs: [{ symbol: 'case', value: trial.ridgeCase, unit: '', from: 'roof.coverage' }],
        result: { symbol: 's', value: fire.ridgeIn.value, unit: 'in' },
        source: fire.ridgeIn.source,
        limits: 'measured along the roof surface',
      })
    }
    if (fire.hipValleyIn.value > 0 && surface.edges.some(({ kind }) => kind === 'hip' || kind === 'valley')) {
      worksheet.assume({
        path: 'roof_access.hip_valley_setback_in',
        value: fire.hipValleyIn.value,
        unit: 'in',
        why: 'modules are taken to lie on both sides of hips and valleys; with modules on one side only the code may ask for less',
        source: fire.hipValleyIn.source,
      })
    }
  }
}
