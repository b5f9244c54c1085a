import { describe, expect, it } from 'vitest'
import { compareEditions, labelsOfEdition, sizeWire } from '../../src/electrical/index.js'
import { editions } from '../../src/tables/nec/index.js'
import { formatSource } from '../../src/worksheet/index.js'
import { context, microProject } from './demo.js'

describe('proof', () => {
  it('every source of the worksheet names the edition, and unread places stay marked', () => {
    for (const edition of editions) {
      const result = sizeWire(microProject(), { ...context(), edition })
      const code = result.worksheet.filter((step) => step.source.document === 'NEC')
      expect(code.length).toBeGreaterThan(40)
      for (const step of code) expect(step.source.edition, step.id).toBe(edition.slice(4))
    }
    const of = (edition: string, id: string) => {
      const step = sizeWire(microProject(), { ...context(), edition }).worksheet.find(
        (candidate) => candidate.id === id,
      )
      return step === undefined ? '' : formatSource(step.source)
    }
    expect(of('NEC 2017', 'wire.output.current')).toBe('NEC, 2017, 690.8(A)(3)')
    expect(of('NEC 2023', 'wire.output.current')).toBe('NEC, 2023, 690.8(A)(1)(c) (from memory, unverified)')
    expect(of('NEC 2020', 'wire.panel.rule-2')).toBe('NEC, 2020, 705.12(B)(3)(2) (secondary source)')
  })

  it('steps stand in the order of an inspection', () => {
    const steps = sizeWire(microProject(), context()).worksheet.map((step) => step.id)
    const order = [
      'wire.string.south.voc-cold',
      'wire.south_1.current',
      'wire.south_1.device',
      'wire.home.roof.temperature',
      'wire.home.roof.south_1.terminal',
      'wire.home.roof.south_1.conditions',
      'wire.home.roof.ground',
      'wire.home.roof.fill',
      'wire.home.roof.straps',
      'wire.south_1.rise',
      'wire.grounding.array',
      'wire.panel.rule-1',
      'wire.rapid-shutdown',
    ].map((id) => steps.indexOf(id))
    expect(order).not.toContain(-1)
    expect(order).toEqual(order.toSorted((a, b) => a - b))
  })

  it('compares editions and marks what differs', () => {
    const comparison = compareEditions(microProject(), ['NEC 2014', 'NEC 2023'], context())
    const of = (path: string) => comparison.differences.find((difference) => difference.path === path)?.values
    expect(of('circuits.south_1.segments.home.roof.rooftop_adder_c')).toEqual({ 'NEC 2014': 22, 'NEC 2023': 0 })
    expect(of('panel.section')).toEqual({ 'NEC 2014': '705.12(D)(2)(3)(b)', 'NEC 2023': '705.12(B)(2)' })
    expect(of('circuits.south_1.continuous_a')).toBeUndefined()
    expect(comparison.findings).toContainEqual(
      expect.objectContaining({ id: 'wire.array-electrode', editions: ['NEC 2014'] }),
    )
    expect(() => compareEditions(microProject(), ['NEC 2020', 'NEC 2029'], context())).toThrow(/NEC 2029/)
  })

  it('labels of an edition', () => {
    const of = (edition: (typeof editions)[number]) => labelsOfEdition(edition).map((label) => label.rule.id)
    expect(of('NEC 2020')).toContain('AC_POI')
    expect(of('NEC 2023')).not.toContain('AC_POI')
    expect(of('NEC 2011')).not.toContain('RSD_PLACARD')
  })
})
