import { own } from '../../values/index.js'
import type { AppendedDocument } from '../inputs.js'
import { documentSheets } from '../sheets/document-index.js'
import { expeditedReview } from './expedited.js'
import { allOn, missing, notApplicable, present, type AuditFacts, type Judge, type Verdict } from './verdict.js'

/** Points that papers of other people meet. */
export const PAPER_POINTS: Readonly<Record<string, Judge>> = {
  'sheet-modules': (facts) =>
    sheetFor(
      facts,
      'modules',
      Object.values(facts.input.project.arrays).map(({ module }) => module),
    ),
  'sheet-inverters': (facts) => {
    const { arrays, inverter_units: units, equipment } = facts.input.project
    const used = [
      ...Object.values(arrays).flatMap(({ inverter }) => inverter ?? []),
      ...Object.values(units ?? {}).map(({ inverter }) => inverter),
    ].filter((id) => own(equipment.inverters, id) !== undefined)
    if (used.length === 0) return notApplicable('AC modules: their sheet is that of the module')
    return sheetFor(facts, 'inverters', used)
  },
  'sheet-optimisers': (facts) => {
    const used = (facts.input.wire?.values.strings ?? []).flatMap(({ optimiser }) => optimiser?.id ?? [])
    return used.length === 0 ? notApplicable('no DC converters') : sheetFor(facts, 'optimisers', used)
  },
  'sheet-rails': (facts) => {
    const { rail } = facts.input.project.structure ?? {}
    return rail === undefined ? missing('rail: not stated') : sheetFor(facts, 'rails', [rail])
  },
  'sheet-mounts': (facts) => {
    const { mount } = facts.input.project.structure ?? {}
    return mount === undefined ? missing('mount: not stated') : sheetFor(facts, 'mounts', [mount])
  },
  'rack-listing': (facts) => {
    const { equipment, structure } = facts.input.project
    const rail = own(equipment.rails, structure?.rail)
    if (rail?.fire?.class === undefined)
      return missing('fire class of rack and module: not stated (equipment.rails.*.fire)')
    return allOn(facts, 'S', [
      ['class', `${rail.fire.class} with modules of fire type`],
      ['listing', rail.fire.listing],
    ])
  },
  photographs: (facts) => ofKind(facts, 'photograph', 'photographs of panel label, breakers and meter'),
  eligibility: ({ input }) => {
    const review = expeditedReview(input)
    if (review === undefined)
      return notApplicable('no limits of a short review are stated (expedited in the file of the authority)')
    return present(['audit'], review.verdict)
  },
  association: (facts) => whereAsked(facts, 'hoa_approval', 'approval of an association or of zoning'),
  'utility-approval': (facts) => whereAsked(facts, 'utility_approval', 'approval of the utility'),
  application: (facts) => ofKind(facts, 'form', 'application form'),
}

const fileOf = ({ path, title }: AppendedDocument): string => title ?? path.split('/').at(-1) ?? path

/** Sheets that some documents take in the packet. */
function boundAs({ input }: AuditFacts, isMeant: (document: AppendedDocument) => boolean): [string, string][] {
  const rows = documentSheets(input.documents)
  return input.documents.flatMap((document, index): [string, string][] =>
    isMeant(document) ? [[rows[index]?.[0] ?? '', fileOf(document)]] : [],
  )
}

function sheetFor(facts: AuditFacts, kind: string, used: readonly string[]): Verdict {
  const needed = [...new Set(used)].map((id) => `${kind}.${id}`)
  const found = needed.map((item) => [item, boundAs(facts, ({ items }) => items?.includes(item) === true)] as const)
  const lacking = found.filter(([, bound]) => bound.length === 0).map(([item]) => item)
  if (lacking.length > 0)
    return missing(`${lacking.join(', ')}: no document says that it is its sheet (documents, items)`)
  const bound = found.flatMap(([, each]) => each)
  return present(
    bound.map(([sheet]) => sheet),
    bound.map(([, name]) => name).join(', '),
  )
}

function ofKind(facts: AuditFacts, kind: NonNullable<AppendedDocument['kind']>, what: string): Verdict {
  const bound = boundAs(facts, (document) => document.kind === kind)
  if (bound.length === 0) return missing(`${what}: no document of kind ${kind}`)
  return present(
    bound.map(([sheet]) => sheet),
    bound.map(([, name]) => name).join(', '),
  )
}

/** A paper that only some ask for: without one it is left to the person, and the audit says so. */
function whereAsked(facts: AuditFacts, kind: NonNullable<AppendedDocument['kind']>, what: string): Verdict {
  const bound = boundAs(facts, (document) => document.kind === kind)
  if (bound.length > 0)
    return present(
      bound.map(([sheet]) => sheet),
      bound.map(([, name]) => name).join(', '),
    )
  return missing(`${what}: no document of kind ${kind}; ask whether it is needed here`)
}
