import { formatQuantity, formatSource } from '../../worksheet/index.js'
import { EDITION_NOT_READ } from '../../tables/nec/index.js'
import type { PacketInput } from '../inputs.js'
import { counted, flowBlocks, type Block, type SheetDraft, type TableColumn } from '../layout/index.js'
import { labelsToAsk } from '../labels/required-labels.js'
import { continued, type SheetJob } from '../sheets/job.js'
import { isUnread, provenanceOf, type Provenance, type SourceUse } from './provenance.js'
import { whoConfirms } from './who-confirms.js'

const table = (
  columns: readonly (readonly [heading: string, share: number])[],
  rows: readonly (readonly string[])[],
): Block => ({
  kind: 'table',
  columns: columns.map(([heading, share], index): TableColumn => ({
    heading,
    share,
    ...(index === 0 ? { bold: true } : {}),
  })),
  rows,
})

/**
 * Sheets P-001 and following, for the preparer and not for the authority: what is to be confirmed and with whom, what was
 * taken for granted, what the checks say, and every source with how far it was read.
 *
 * @param more Parts that follow the list of what to confirm, such as the audit.
 */
export function preparerSheets(job: SheetJob, more: readonly Block[] = []): SheetDraft[] {
  const { input, stationery } = job
  const told = provenanceOf(input)
  const blocks: Block[] = [
    { kind: 'heading', text: 'For the preparer: keep it, do not file it' },
    {
      kind: 'text',
      text: 'The sheets cite rules only. How far each rule was read, what was taken for granted and what is to be confirmed before filing stands here.',
    },
    ...confirmBlocks(input, told),
    ...more,
    ...assumptionBlocks(told),
    ...findingBlocks(told),
    ...labelBlocks(told),

    ...remarkBlocks(told),
    ...sourceBlocks(told),
  ]
  return flowBlocks(blocks, stationery.body).map((paper, page) => ({
    id: continued('P-001', page),
    title: page === 0 ? "Preparer's report" : "Preparer's report, continued",
    scale: 'None',
    paper,
  }))
}

/** What to ask before filing, one row for each who can answer. */
function confirmBlocks(input: PacketInput, { sources, findings }: Provenance): Block[] {
  const groups = new Map<string, SourceUse[]>()
  for (const each of sources.filter(({ source }) => isUnread(source))) {
    const who = whoConfirms(each.source)
    groups.set(who, [...(groups.get(who) ?? []), each])
  }
  const wiring = input.wire?.values
  const asked = wiring === undefined ? [] : labelsToAsk(input.project, wiring)
  const edition = input.project.codes?.electrical
  const rows: (readonly string[])[] = [
    ...(edition === undefined
      ? []
      : [['the building department', `That ${edition} is the edition it has adopted, and its local amendments.`]]),
    ...(edition === EDITION_NOT_READ
      ? [
          [
            'the building department, with the adopted edition at hand',
            `Sections and numbers of ${EDITION_NOT_READ} are from secondary sources only; its text was not read, and the words of labels are those of NEC 2023, unconfirmed.`,
          ],
        ]
      : []),
    ...(input.project.site.overhead_lines === undefined || input.project.site.overhead_lines === 'none'
      ? []
      : [
          [
            'the utility and the building department',
            'Heights that overhead lines need; those on C-101 are from memory of NEC 230.24.',
          ],
        ]),
    ...asked.map(({ when, phrases, source }) => [
      'the building department',
      `Whether this is so: ${when}. If so, a label is due: ${phrases.join('; ')} [${source}].`,
    ]),
    ...[...groups].map(([who, uses]) => [
      who,
      `${counted(uses.length, 'source')} below that nobody read in the original: ${uses.map(({ named }) => named).join('; ')}.`,
    ]),
    ...findings
      .filter(({ severity, fix }) => severity !== 'note' && fix !== undefined)
      .map(({ fix = '', where }) => ['the preparer', `${where === '' ? '' : `${where}: `}${fix}`]),
  ]
  return [
    { kind: 'heading', text: 'To confirm before filing' },
    table(
      [
        ['With', 0.22],
        ['What', 0.78],
      ],
      rows,
    ),
  ]
}

function assumptionBlocks({ assumptions }: Provenance): Block[] {
  return [
    { kind: 'heading', text: 'Assumptions: values that the project does not state' },
    assumptions.length === 0
      ? { kind: 'text', text: 'None: every value that the sheets need is stated.' }
      : table(
          [
            ['Key', 0.26],
            ['Value', 0.12],
            ['Why', 0.37],
            ['Source', 0.25],
          ],
          assumptions.map(({ path, value, unit, why, source }) => [
            path,
            formatQuantity(value, unit),
            why,
            formatSource(source),
          ]),
        ),
  ]
}

const SEVERITY = { error: 'FAILS', warning: 'warning', note: 'note' } as const

function findingBlocks({ findings }: Provenance): Block[] {
  return [
    { kind: 'heading', text: 'What the checks say' },
    findings.length === 0
      ? { kind: 'text', text: 'Nothing: no check fails and none warns.' }
      : table(
          [
            ['Kind', 0.08],
            ['Message', 0.42],
            ['Key', 0.17],
            ['Way out', 0.18],
            ['Source', 0.15],
          ],
          findings.map(({ severity, message, where, fix, source }) => [
            SEVERITY[severity],
            message,
            where,
            fix ?? '',
            source === undefined ? '' : formatSource(source),
          ]),
        ),
  ]
}

function labelBlocks({ labels }: Provenance): Block[] {
  if (labels.length === 0) return []
  return [
    { kind: 'heading', text: 'Labels: whose words and looks they are' },
    table(
      [
        ['No.', 0.06],
        ['Words', 0.34],
        ['Make', 0.3],
        ['Wording and source', 0.3],
      ],
      labels.map(({ number, text, look, wording, source }) => [String(number), text, look, `${wording}; ${source}`]),
    ),
  ]
}

function remarkBlocks({ remarks }: Provenance): Block[] {
  if (remarks.length === 0) return []
  return [
    { kind: 'heading', text: 'Limits of the methods' },
    table(
      [
        ['Step', 0.4],
        ['Limit', 0.6],
      ],
      remarks.map(({ about, text }) => [about, text]),
    ),
  ]
}

function sourceBlocks({ sources }: Provenance): Block[] {
  return [
    { kind: 'heading', text: 'Sources and how far they were read' },
    table(
      [
        ['Source', 0.36],
        ['Standing', 0.16],
        ['What rests on it', 0.48],
      ],
      sources.map((each) => [each.named, each.source.standing, usesText(each)]),
    ),
  ]
}

/** Uses in words; of a source that many steps cite, how many more. */
function usesText({ uses }: SourceUse): string {
  const shown = uses.slice(0, 4)
  const more = uses.length - shown.length
  return `${shown.join('; ')}${more === 0 ? '' : `; and ${counted(more, 'more place')}`}`
}
