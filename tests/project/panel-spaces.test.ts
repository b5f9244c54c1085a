import { expect, it } from 'vitest'
import { checkRules } from '../../src/project/rules/index.js'
import { microProject } from '../electrical/demo.js'
import { panel, tree } from '../electrical/small-tree.js'
import { projectOf } from '../electrical/tree-project.js'

const told = (project: Parameters<typeof checkRules>[0]) =>
  checkRules(project)
    .filter(({ segments }) => segments[0] === 'electrical')
    .map(({ segments, message }) => `${segments.join('.')}: ${message}`)

it.each([
  [4, 4, []],
  [5, 4, ['electrical.panel.spaces_free: 5 free spaces are more than the 4 of spaces_total']],
])('%s free spaces of %s', (free, total, complaints) => {
  const panels = { bus_a: 200, main_a: 200, spaces_free: free, spaces_total: total }
  expect(told(microProject({ panel: panels }))).toEqual(complaints)
})

it('each panel of an installation is looked at', () => {
  const project = projectOf(tree({ panels: [panel('main', { mainA: 200 })] }))
  const main = project.electrical?.distribution?.panels['main']
  if (main === undefined) throw new Error('no panel')
  const garage = { ...main, spaces_total: 8, spaces_free: 9 }
  const changed = { ...project, electrical: { ...project.electrical, distribution: { panels: { main, garage } } } }
  expect(told(changed)).toEqual([
    'electrical.distribution.panels.garage.spaces_free: 9 free spaces are more than the 8 of spaces_total',
  ])
})
