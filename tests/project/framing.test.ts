import { describe, expect, test } from 'vitest'
import { loadText, problemsOf, STARTER } from './support.js'

const textOf = (lines: readonly string[]): string =>
  `${STARTER}\nstructure:\n  framing:\n    south:\n${lines.map((line) => `      ${line}\n`).join('')}`
const problems = (lines: readonly string[]) => problemsOf(textOf(lines))

describe('framing that cannot be', () => {
  test.each([
    [
      ['nominal_size: 2x6', 'species: Southern Pine', 'grade: Utility'],
      /structure\.framing\.south\.grade {2}'Utility' does not exist for Southern Pine of 2x6; its grades are .*No\. 1/,
    ],
    [
      ['nominal_size: 2x6', 'species: Hem-Fir', 'grade: Construction'],
      /'Construction' does not exist for Hem-Fir of 2x6/,
    ],
    [
      ['span_ft: 6', 'supports: [{ kind: purlin }]'],
      /south\.supports {2}1 support between spans, but 0 in further_spans_ft/,
    ],
    [['ties: ceiling_joists', 'tie_height_share: 0.2'], /tie_height_share {2}says how high raised ties are/],
    [['kind: rafter', 'truss: { panel_length_ft: 6 }'], /south\.truss {2}is of a truss, but kind is rafter/],
    [['ceiling_attached: false', 'ceiling_finish: plaster'], /ceiling_finish {2}says what the ceiling/],
    [['load_sharing: { share: 0.7, source: a letter }'], /load_sharing\.share/],
    [['load_sharing: { share: 0.9 }'], /load_sharing\.source/],
  ])('%j', (lines, says) => {
    const found = problems(lines)
    expect(found).toHaveLength(1)
    expect(found[0]).toMatch(says)
  })

  test.each([
    [['nominal_size: 2x4', 'species: Hem-Fir', 'grade: Construction']],
    [['nominal_size: 2x12', 'species: Hem-Fir', 'grade: Stud']],
    [['nominal_size: 2x6', 'species: Northern Species', 'grade: No. 2']],
    [['span_ft: 6', 'further_spans_ft: [7]', 'supports: [{ kind: bearing_wall }]']],
    [['kind: truss', 'truss: { panel_length_ft: 6 }']],
  ])('%j is none', (lines) => {
    expect(() => loadText(textOf(lines))).not.toThrow()
  })
})
