import type { Rule } from './rule.js'

/** What is said of rafters, their supports, ties and trusses fits together. */
export const checkFraming: Rule = (project, report) => {
  for (const [plane, framing] of Object.entries(project.structure?.framing ?? {})) {
    const at = (key: string) => ['structure', 'framing', plane, key]
    const [supports, further] = [framing.supports?.length ?? 0, framing.further_spans_ft?.length ?? 0]
    if (supports > further) {
      report(
        at('supports'),
        `${supports} support${supports === 1 ? '' : 's'} between spans, but ${further} in further_spans_ft; each support stands between two spans: state the spans above it`,
      )
    }
    if (framing.tie_height_share !== undefined && framing.ties !== 'raised_ties') {
      report(
        at('tie_height_share'),
        'says how high raised ties are, but ties is not raised_ties; set ties or leave it out',
      )
    }
    if (framing.truss !== undefined && framing.kind === 'rafter') {
      report(at('truss'), 'is of a truss, but kind is rafter; set kind or leave it out')
    }
    if (framing.ceiling_finish !== undefined && framing.ceiling_attached === false) {
      report(at('ceiling_finish'), 'says what the ceiling on the rafters is made of, but ceiling_attached is false')
    }
  }
}
