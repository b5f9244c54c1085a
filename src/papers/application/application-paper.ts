import type { Project } from '../../project/index.js'
import { cautionTexts } from '../../report/index.js'
import type { Finding } from '../../worksheet/index.js'
import type { PageBlock, Paper } from '../pages/index.js'
import type { ApplicationField, ApplicationValues } from './application-values.js'

const MISSING = 'MISSING'

/** The application as a paper: answers with where they come from, and lines where something is missing. */
export function applicationPaper(project: Project, values: ApplicationValues, findings: readonly Finding[]): Paper {
  const owner = project.parties?.owner?.name ?? ''
  const date = project.document?.date
  const told = findings.filter(({ id }) => id !== 'application.field-missing')
  const notes = values.fields.filter(({ note, state }) => note !== '' && state !== 'blank')
  return {
    title: `Application for interconnection: ${project.title}`,
    language: 'en-US',
    author: owner,
    subject: 'Application for interconnection of a small inverter-based system',
    date: date ?? '2000-01-01',
    foot: `${project.title}, ${date ?? 'not dated'}`,
    pageWords: (page, pages) => `page ${page} of ${pages}`,
    blocks: [
      {
        kind: 'title',
        text: 'Application for interconnection',
        below: `${project.title}\nSmall inverter-based system, to ${project.parties?.utility?.name ?? 'the utility'}`,
      },
      {
        kind: 'box',
        lines: [
          `${values.stated} answers stated, ${values.missing} missing. Answers to copy into the utility's own form or to go with it; the utility's form and rules decide. Nothing is guessed: what is marked ${MISSING} is filled in by hand, or stated under the key beside it.`,
          'The system stays off until the written permission of the utility.',
        ],
      },
      ...(told.length === 0
        ? []
        : [
            {
              kind: 'box' as const,
              title: 'To settle before this is sent',
              tone: 'warning' as const,
              lines: told.map(({ message, fix }) => `${message}${fix === undefined ? '' : `. ${fix}`}.`),
            },
          ]),
      ...sectionsOf(values),
      { kind: 'heading', text: 'Signature' },
      {
        kind: 'signatures',
        people: [{ label: 'Signature of the customer', ...(owner === '' ? {} : { name: owner }) }],
        dateLabel: 'Date',
      },
      { kind: 'heading', text: 'What goes with it' },
      {
        kind: 'table',
        columns: [
          { heading: 'Attachment', share: 0.42 },
          { heading: 'Where it is', share: 0.34 },
          { heading: 'Asked by', share: 0.24 },
        ],
        rows: values.attachments.map(({ what, state, where, asked_by: askedBy, supplied_by: who }) => [
          what,
          state === 'missing' ? `${MISSING}: ${where} (${who})` : where,
          askedBy,
        ]),
      },
      { kind: 'heading', text: 'Notes' },
      { kind: 'list', items: notes.map(({ label, note }) => `${label}: ${note}`) },
      { kind: 'heading', text: 'Times of the utility, for information' },
      {
        kind: 'table',
        columns: [
          { heading: 'Step', share: 0.6 },
          { heading: 'Federal, up to 10 kW', share: 0.2, align: 'right' },
          { heading: 'New York, up to 50 kW', share: 0.2, align: 'right' },
        ],
        rows: values.clocks.map(({ step, federal_business_days: federal, new_york_business_days: newYork, note }) => [
          note === '' ? step : `${step}: ${note}`,
          days(federal),
          days(newYork),
        ]),
      },
      {
        kind: 'text',
        text: 'Business days; federal small-generator procedures, Attachment 5, and New York standardized requirements, steps read. The utility at hand may have others.',
      },
      { kind: 'heading', text: 'Standards, for information' },
      { kind: 'list', items: values.standards.map(({ says, source }) => `${says} (${source})`) },
      { kind: 'list', items: cautionTexts(['authority', 'estimate']) },
    ],
  }
}

const days = (count: number | null): string => (count === null ? '-' : `${count} days`)

function sectionsOf({ fields }: ApplicationValues): PageBlock[] {
  return [...new Set(fields.map(({ section }) => section))].flatMap((name): PageBlock[] => [
    { kind: 'heading', text: name },
    {
      kind: 'table',
      ruled: true,
      columns: [
        { heading: 'Asked', share: 0.3 },
        { heading: 'Answer', share: 0.29, bold: true },
        { heading: 'From, or key and who supplies it', share: 0.41 },
      ],
      rows: fields.filter(({ section, state }) => section === name && state !== 'blank').map(rowOf),
    },
  ])
}

function rowOf(field: ApplicationField): readonly string[] {
  if (field.missing !== null) return [field.label, MISSING, `${field.missing}: ${field.supplied_by}`]
  return [field.label, answerText(field), field.from]
}

/** `7.32 kW ac`; '' for what is missing. */
export function answerText({ value, unit }: ApplicationField): string {
  if (value === null) return ''
  const text = typeof value === 'number' ? value.toLocaleString('en-US', { maximumFractionDigits: 3 }) : value
  return unit === '' ? text : `${text} ${unit}`
}
