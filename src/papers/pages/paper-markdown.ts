import { cleanText, markdownLine } from '../../report/index.js'
import type { PageBlock, PageTable, Paper } from './page-block.js'

/** A paper as GitHub-flavoured Markdown; lines to write on stay as underscores. */
export function paperMarkdown({ blocks, stamp }: Paper): string {
  const head = stamp === undefined ? [] : [`**${markdownLine(stamp)}**`]
  return `${[...head, ...blocks.map(blockText)].filter((each) => each !== '').join('\n\n')}\n`
}

function blockText(block: PageBlock): string {
  switch (block.kind) {
    case 'title':
      return [`# ${markdownLine(block.text)}`, ...(block.below === undefined ? [] : [lines(block.below)])].join('\n\n')
    case 'heading':
      return `${'#'.repeat(block.level ?? 2)} ${markdownLine(block.text)}`
    case 'text':
      return block.bold === true ? `**${markdownLine(block.text)}**` : lines(block.text)
    case 'list':
      return block.items.map((item, index) => `${signOf(block.mark, index)} ${markdownLine(item)}`).join('\n')
    case 'facts':
      return block.facts.map(([name, value]) => `- **${markdownLine(name)}:** ${markdownLine(value)}`).join('\n')
    case 'table':
      return table(block)
    case 'figure':
      return [
        `*${markdownLine(block.caption ?? block.says)}*`,
        ...(block.data === undefined ? [] : [table(block.data)]),
      ].join('\n\n')
    case 'box':
      return [
        ...(block.title === undefined ? [] : [`**${markdownLine(block.title)}**`]),
        ...block.lines.map(markdownLine),
      ]
        .map((each) => `> ${each}`)
        .join('\n>\n')
    case 'blanks':
      return block.rows.map((row) => row.map((each) => `${markdownLine(each)}: ${BLANK}`).join(' ')).join('\n\n')
    case 'signatures':
      return block.people
        .map(
          ({ label, name }) =>
            `${markdownLine(label)}${name === undefined ? '' : ` (${markdownLine(name)})`}: ${BLANK} ${markdownLine(block.dateLabel)}: ${BLANK}`,
        )
        .join('\n\n')
    case 'page-break':
      return ''
  }
}

const BLANK = '\\_'.repeat(16)

function signOf(mark: 'dots' | 'numbers' | 'boxes' | undefined, index: number): string {
  return mark === 'numbers' ? `${index + 1}.` : mark === 'boxes' ? '- [ ]' : '-'
}

function table({ columns, rows }: PageTable): string {
  const rule = columns.map(({ align }) => (align === 'right' ? '---:' : align === 'center' ? ':---:' : '---'))
  return [
    columns.map(({ heading }) => markdownLine(heading)),
    rule,
    ...rows.map((row) => columns.map((_, at) => markdownLine(row[at] ?? ''))),
  ]
    .map((row) => `| ${row.join(' | ')} |`)
    .join('\n')
}

const lines = (text: string): string => cleanText(text).split('\n').map(markdownLine).join('\n\n')
