import { test } from 'vitest'
import { arrangeModules } from '../../src/roof/index.js'
import { roofProject } from './roof-project.js'
test('speed', () => {
  const rect = roofProject({ outline: { shape: 'rectangle', width_ft: 40, depth_ft: 18 }, obstructions: { v: { x_ft: 12, y_ft: 9, width_ft: 1, length_ft: 1, height_ft: 1, clearance_in: 6 }, c: { x_ft: 30, y_ft: 13, width_ft: 3, length_ft: 3, height_ft: 4, clearance_in: 6 } } }, { arrangement: 'fit' }, { codes: { residential: 'IRC 2021' } })
  const ifc = { ...rect, codes: { residential: 'IFC 2012' as const } }
  const hip = roofProject({ outline: { shape: 'hip', width_ft: 40, depth_ft: 18, ridge_ft: 15 }, obstructions: rect.roof_planes['south']!.obstructions! }, { arrangement: 'fit' }, { codes: { residential: 'IRC 2021' } })
  for (const p of [rect, ifc, hip]) {
    arrangeModules(p); arrangeModules(p)
    const t = performance.now()
    for (let i = 0; i < 10; i++) arrangeModules(p)
    const r = arrangeModules(p)
    process.stderr.write(`${(performance.now() - t) / 11} ms ${r.values.modules.length} ${r.values.roofCoverageShare} ${JSON.stringify(r.findings.map((f) => f.id + ': ' + f.message), null, 1)} ${Object.values(r.values.planes)[0]!.usableShare}\n`)
  }
})
