import { paperHtml, type PageBlock } from '../pages/index.js'

/** What the page of a watched fleet shows, as texts. */
export interface WatchPage {
  readonly title: string
  readonly below: string
  readonly columns: readonly string[]
  readonly rows: readonly (readonly string[])[]
  /** What is wrong and what to look at, a line each. */
  readonly details: readonly string[]
}

/** One page that needs no network and no script; every text is escaped, and the page follows light and dark screens. */
export function watchHtml({ title, below, columns, rows, details }: WatchPage): string {
  const blocks: PageBlock[] = [
    { kind: 'title', text: title, below },
    {
      kind: 'box',
      tone: 'warning',
      title: 'Before anybody goes near a system',
      lines: [
        'Smell of burning, smoke, water in an enclosure, or an error of ground, insulation or arc: stop, do not climb, switch off at the labelled place, call an electrician.',
      ],
    },
    {
      kind: 'table',
      columns: columns.map((heading, at) => ({
        heading,
        share: at === 5 ? 3 : 1,
        align: at === 3 || at > 5 ? 'right' : 'left',
        bold: at === 0,
      })),
      rows,
    },
    ...(details.length === 0
      ? []
      : [
          { kind: 'heading', text: 'What is wrong, and what to look at' } as const,
          { kind: 'list', items: details } as const,
        ]),
  ]
  return paperHtml({
    title,
    language: 'en-US',
    author: '',
    subject: 'measured production against what these days should have given',
    date: '',
    blocks,
    foot: 'Output: measured over expected of the same days at present. Lost: next twelve months as it is now against mended, by the tariff. Estimates, not bills.',
    pageWords: () => '',
  })
}
