import { describe, expect, it } from 'vitest'
import type { Project } from '../../src/project/index.js'
import { spaceMounts } from '../../src/structure/index.js'
import { block, demoArrangement, demoProject, rectangle } from './demo-house.js'

const letter = { id: 'letter', file: 'letter.pdf', title: 'Letter about the rafters (invented)', date: '2026-02-20' }

/** The demo house under heavy snow, whose rafters fail without an engineer. */
function house(framing: object = { rafters_verified_by: 'letter' }): Project {
  const project = demoProject()
  const s = project.structure ?? {}
  return {
    ...project,
    documents: [letter],
    structure: {
      ...s,
      mount_layout: 'aligned',
      snow: { ...s.snow, ground_psf: 50 },
      framing: { south: { ...s.framing?.['south'], ...framing } },
    },
  }
}

const solve = (project: Project, documents?: ReadonlySet<string>) =>
  spaceMounts(project, demoArrangement(), { spacingIn: 48, ...(documents === undefined ? {} : { documents }) })
const rafters = ({ findings }: ReturnType<typeof solve>) =>
  findings.filter(({ id }) => id.startsWith('structure.rafter-bending')).map(({ id, severity }) => `${id} ${severity}`)

describe('a failed check of the rafters', () => {
  it('is an error', () => {
    expect(rafters(solve(house({}))).toSorted()).toEqual(['structure.rafter-bending-strength error'])
  })

  it('is a note that names title and date of the document when its file is there', () => {
    const result = solve(house(), new Set(['letter']))
    expect(rafters(result).every((one) => one.endsWith('note'))).toBe(true)
    const finding = result.findings.find(({ id }) => id === 'structure.rafter-bending-strength')
    expect(finding?.message).toMatch(/covered by Letter about the rafters \(invented\), 2026-02-20$/)
    expect(result.findings.filter(({ severity }) => severity === 'error')).toEqual([])
  })

  it('stands when the file of the document is missing, and a warning says why', () => {
    for (const documents of [undefined, new Set<string>(), new Set(['another'])]) {
      const result = solve(house(), documents)
      expect(rafters(result)).toContain('structure.rafter-bending-strength error')
      const missing = result.findings.find(({ id }) => id === 'structure.rafter-document-missing')
      expect(missing?.severity).toBe('warning')
      expect(missing?.message).toMatch(/is not there as a PDF at 'letter\.pdf'/)
    }
  })

  it('stands when the file is there and of no use: a message of its own tells why, and nothing is called missing', () => {
    const { findings } = spaceMounts(house(), demoArrangement(), {
      spacingIn: 48,
      documents: new Set<string>(),
      documentTroubles: new Map([['letter', 'it is 120.0 MB large; at most 100.0 MB is read']]),
    })
    const told = findings.filter(({ id }) => id.startsWith('structure.rafter-document'))
    expect(told.map(({ id, severity }) => `${id} ${severity}`)).toEqual(['structure.rafter-document-unusable warning'])
    expect(told[0]?.message).toMatch(
      /2026-02-20, file 'letter\.pdf'\) cannot be used: it is 120\.0 MB large; at most 100\.0 MB is read; so it clears no check$/,
    )
    expect(told[0]?.fix).toMatch(/too large is printed to a new PDF/)
    expect(findings.map(({ id, severity }) => `${id} ${severity}`)).toContain('structure.rafter-bending-strength error')
    // With the same roof the file may be mended between two runs.
    expect(rafters(solve(house(), new Set(['letter']))).every((one) => one.endsWith('note'))).toBe(true)
  })

  it('of a plane without a document is not hidden by a worse one that a document covers', () => {
    const project = house()
    const framing = project.structure?.framing?.['south'] ?? {}
    const { rafters_verified_by: _, ...bare } = framing
    const both: Project = {
      ...project,
      roof_planes: { ...project.roof_planes, west: { azimuth_deg: 270, tilt_deg: 22 } },
      structure: {
        ...project.structure,
        framing: { south: { ...framing, existing_dead_psf: 12 }, west: { ...bare, existing_dead_psf: 10 } },
      },
    }
    const modules = [
      ...demoArrangement().modules,
      ...block(2, 6, 12, 2.2, 'west').map((m) => ({ ...m, id: `w${m.id}`, block: 'west' })),
    ]
    const planes = [rectangle('south', 48, 16, 22), rectangle('west', 48, 16, 22)]
    const { findings, values } = spaceMounts(
      both,
      { planes, modules },
      { spacingIn: 48, documents: new Set(['letter']) },
    )
    const increase = findings.filter(({ id }) => id === 'structure.rafter-bending-strength')
    expect(increase.map(({ severity, where }) => `${severity} ${where}`).toSorted()).toEqual([
      'error structure.framing.west',
      'note structure.framing.south',
    ])
    expect(values.checks.find(({ name }) => name === 'rafter bending strength')?.where).toMatch(/^south/)
  })
})
