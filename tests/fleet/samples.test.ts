import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { fileJobs, sharedClimateYield } from '../../src/fleet/index.js'
import { loadProject } from '../../src/project/index.js'
import { estimateYield } from '../../src/yield/index.js'

const fleet = new URL('../../examples/fleet', import.meta.url).pathname
const projects = fileJobs([fleet], [])

describe('the sample projects', () => {
  test('are at least two dozen, each with a purpose of its own in its first line', () => {
    const purposes = projects.map(({ path }) => readFileSync(path, 'utf8').split('\n')[0] ?? '')
    expect(projects.length).toBeGreaterThanOrEqual(24)
    for (const purpose of purposes) expect(purpose).toMatch(/^# \S.{15,}\.$/u)
    expect(new Set(purposes).size).toBe(purposes.length)
  })

  test('are invented, and say so', () => {
    for (const { path } of projects) expect(loadProject({ path }).project.title).toContain('(invented)')
    expect(readFileSync(join(fleet, 'equipment.yaml'), 'utf8')).toContain('INVENTED')
  })

  test('cover the editions, roofs, connections and tariffs', () => {
    const text = projects.map(({ path }) => readFileSync(path, 'utf8')).join('\n')
    for (const part of [
      'NEC 2011',
      'NEC 2014',
      'NEC 2017',
      'NEC 2020',
      'NEC 2023',
      'ASCE 7-10',
      'ASCE 7-16',
      'ASCE 7-22',
    ])
      expect(text).toContain(part)
    for (const shape of ['rectangle', 'hip', 'triangle', 'l_shape', 'polygon'])
      expect(text).toContain(`shape: ${shape}`)
    for (const part of [
      'kind: load_side_breaker',
      'kind: supply_side',
      'net_metering',
      'net_billing',
      'buy_all_sell_all',
    ])
      expect(text).toContain(part)
    expect(readdirSync(fleet)).toContain('baseline.json')
  })
})

describe('the shared climate', () => {
  test('gives the estimate of a house alone to the last word, also for the second house of a place', () => {
    const shared = sharedClimateYield()
    for (const name of ['columbus-chimney', 'omaha-station', 'duluth-snow', 'raleigh-east-west']) {
      const path = join(fleet, `${name}.yaml`)
      for (const overrides of [[], ['losses.dirt_pct=4'], ['model.solar_constant_w_m2=1350']]) {
        const { project, files } = loadProject({ path, overrides })
        expect(shared(project, files), `${name} ${overrides.join()}`).toEqual(estimateYield(project, files))
      }
    }
  })

  test('also with an hourly weather file', () => {
    const path = new URL('../../examples/harbor-point.yaml', import.meta.url).pathname
    const { project, files } = loadProject({ path })
    const shared = sharedClimateYield()
    shared(project, files)
    expect(shared(project, files)).toEqual(estimateYield(project, files))
  })
})
