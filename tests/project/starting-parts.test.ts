import { describe, expect, it } from 'vitest'
import { designTemperatures } from '../../src/climate/index.js'
import { sizeWire } from '../../src/electrical/index.js'
import { startingFile } from '../../src/project/index.js'
import { LATER_EQUIPMENT, LATER_PARTS } from '../../src/project/starting-parts.js'
import { arrangeModules } from '../../src/roof/index.js'
import { spaceMounts } from '../../src/structure/index.js'
import { Worksheet } from '../../src/worksheet/index.js'
import { loadText } from './support.js'

const SITE = { name: 'Reno, NV', lat: 39.5, lon: -119.8, elevationFt: 4400, utcOffsetH: -8 }

/** The new file with every commented part uncommented, as an editor would do it. */
function uncommented(): string {
  const parts = new Set([...LATER_EQUIPMENT, ...LATER_PARTS].map((line) => `# ${line}`))
  return startingFile({ site: SITE })
    .split('\n')
    .map((line) => (parts.has(line) ? line.slice(2) : line))
    .join('\n')
}

describe('the commented parts of a new file', () => {
  it('are a valid project when uncommented', () => {
    const { project } = loadText(uncommented())
    expect(project.electrical).toBeDefined()
    expect(project.structure).toBeDefined()
    expect(project.tariff).toBeDefined()
  })

  it('carry wiring and mounts through, without errors', () => {
    const { project } = loadText(uncommented())
    const wiring = sizeWire(project, { designTemperatures: designTemperatures(project.site, new Worksheet()) })
    expect(wiring.findings.filter((finding) => finding.severity === 'error')).toEqual([])
    const { modules, planes } = arrangeModules(project).values
    const mounts = spaceMounts(project, { modules, planes: Object.values(planes) })
    expect(mounts.values.mounts.length).toBeGreaterThan(0)
    expect(mounts.findings.filter((finding) => finding.severity === 'error')).toEqual([])
  })
})
