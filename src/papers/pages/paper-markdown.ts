import { cleanLine, cleanText } from '../../report/index.js'
import type { PageBlock, PageTable, Paper } from './page-block.js'

/** A paper as GitHub-flavoured Markdown; lines to write on stay as underscores. */
export function paperMarkdown({ blocks, stamp }: Paper): string {
  const head = stamp === undefined ? [] : [`**${clean(stamp)}**`]
  return `${[...head, ...blocks.map(blockText)].filter((each) => each !== '').join('\n\n')}\n`
}

function blockText(block: PageBlock): string {
  switch (block.kind) {
    case 'title':
      return [`# ${clean(block.text)}`, ...(block.below === undefined ? [] : [lines(block.below)])].join('\n\n')
    case 'heading':
      return `${'#'.repeat(block.level ?? 2)} ${clean(block.text)}`
    case 'text':
      return block.bold === true ? `**${clean(block.text)}**` : lines(block.text)
    case 'list':
      return block.items.map((item, index) => `${signOf(block.mark, index)} ${clean(item)}`).join('\n')
    case 'facts':
      return block.facts.map(([name, value]) => `- **${clean(name)}:** ${clean(value)}`).join('\n')
    case 'table':
      return table(block)
    case 'figure':
      return [`*${clean(block.caption ?? block.says)}*`, ...(block.data === undefined ? [] : [table(block.data)])].join(
        '\n\n',
      )
    case 'box':
      return [...(block.title === undefined ? [] : [`**${clean(block.title)}**`]), ...block.lines.map(clean)]
        .map((each) => `> ${each}`)
        .join('\n>\n')
    case 'blanks':
      return block.rows.map((row) => row.map((each) => `${clean(each)}: ${BLANK}`).join(' ')).join('\n\n')
    case 'signatures':
      return block.people
        .map(
          ({ label, name }) =>
            `${clean(label)}${name === undefined ? '' : ` (${clean(name)})`}: ${BLANK} ${clean(block.dateLabel)}: ${BLANK}`,
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
    columns.map(({ heading }) => clean(heading)),
    rule,
    ...rows.map((row) => columns.map((_, at) => clean(row[at] ?? ''))),
  ]
    .map((row) => `| ${row.join(' | ')} |`)
    .join('\n')
}

const lines = (text: string): string => cleanText(text).split('\n').map(clean).join('\n\n')

/** A name of the project must not become markup, and cannot break a line. */
function clean(text: string): string {
  return cleanLine(text)
    .replaceAll(/[\\`*[\]<>|]/gu, '\\$&')
    .replaceAll(/(?<![\p{L}\p{N}])_(?!_)|_(?![\p{L}\p{N}_])/gu, '\\_')
    .replaceAll(/^(?<sign>[#+-]|\d+\.)/gu, '\\$<sign>')
}
