import { cleanLine, cleanText, escapeMarkup } from '../../report/index.js'
import { figureHtml, wideHtml } from './figure-html.js'
import { PAGE_STYLE } from './page-css.js'
import type { PageBlock, PageTable, Paper } from './page-block.js'

/** Nothing is fetched and no script runs, whatever a name of the project holds. */
const POLICY = "default-src 'none'; style-src 'unsafe-inline'; img-src data:; base-uri 'none'; form-action 'none'"

/** A paper as one page of HTML that needs no network and no script, for screens light and dark and for printing. */
export function paperHtml({ title, language, author, blocks, logo, foot, stamp }: Paper): string {
  const head = [
    '<meta charset="utf-8">',
    `<meta http-equiv="Content-Security-Policy" content="${POLICY}">`,
    '<meta name="viewport" content="width=device-width, initial-scale=1">',
    '<meta name="color-scheme" content="light dark">',
    '<meta name="referrer" content="no-referrer">',
    ...(author === '' ? [] : [`<meta name="author" content="${line(author)}">`]),
    `<title>${line(title)}</title>`,
    `<style>${PAGE_STYLE}</style>`,
  ]
  const picture = logo === undefined ? [] : [`<img class="logo" alt="" src="${escapeMarkup(logo.dataUri)}">`]
  const body = blocks.map((block, index) => blockHtml(block, index)).filter((each) => each !== '')
  return [
    '<!doctype html>',
    `<html lang="${line(language)}">`,
    '<head>',
    ...head,
    '</head>',
    '<body>',
    '<main>',
    ...(stamp === undefined ? [] : [`<p class="stamp" dir="auto">${line(stamp)}</p>`]),
    ...picture,
    ...body,
    `<p class="foot" dir="auto">${line(foot)}</p>`,
    '</main>',
    '</body>',
    '</html>',
    '',
  ].join('\n')
}

function blockHtml(block: PageBlock, index: number): string {
  switch (block.kind) {
    case 'title':
      return [
        `<h1 dir="auto">${line(block.text)}</h1>`,
        ...(block.below === undefined ? [] : [`<p class="below" dir="auto">${lines(block.below)}</p>`]),
      ].join('\n')
    case 'heading':
      return `<h${block.level ?? 2} dir="auto">${line(block.text)}</h${block.level ?? 2}>`
    case 'text': {
      const words = block.bold === true ? `<strong>${lines(block.text)}</strong>` : lines(block.text)
      return `<p dir="auto"${sized(block.sizePt)}>${words}</p>`
    }
    case 'list':
      return listHtml(block.items, block.mark)
    case 'facts':
      return `<dl>\n${block.facts.map(([name, value]) => `<div><dt dir="auto">${line(name)}</dt><dd dir="auto">${lines(value)}</dd></div>`).join('\n')}\n</dl>`
    case 'table':
      return tableHtml(block, block.total === true)
    case 'figure':
      return figureHtml(block, `f${index}-`, tableHtml)
    case 'box':
      return [
        `<div class="box ${block.tone ?? 'plain'}" role="note"${sized(block.sizePt)}>`,
        ...(block.title === undefined ? [] : [`<p dir="auto"><strong>${line(block.title)}</strong></p>`]),
        ...block.lines.map((each) => `<p dir="auto">${lines(each)}</p>`),
        '</div>',
      ].join('\n')
    case 'blanks':
      return block.rows.map((row) => `<div class="blanks">${row.map(blank).join('')}</div>`).join('\n')
    case 'signatures':
      return block.people
        .map(({ label, name }) => {
          const below = name === undefined ? label : `${label}\n${name}`
          return `<div class="blanks sign">${blank(below)}${blank(block.dateLabel)}</div>`
        })
        .join('\n')
    case 'page-break':
      return '<div class="break"></div>'
  }
}

const blank = (text: string): string => `<p dir="auto">${lines(text)}</p>`

function listHtml(items: readonly string[], mark: 'dots' | 'numbers' | 'boxes' | undefined): string {
  const tag = mark === 'numbers' ? 'ol' : 'ul'
  const kind = mark === 'boxes' ? ' class="boxes"' : ''
  return `<${tag}${kind}>\n${items.map((item) => `<li dir="auto">${lines(item)}</li>`).join('\n')}\n</${tag}>`
}

function tableHtml({ columns, rows }: PageTable, total = false): string {
  const side = (index: number): string => (columns[index]?.align === 'right' ? ' class="right"' : '')
  const cell = (text: string, index: number): string => {
    const tag = columns[index]?.bold === true ? 'th' : 'td'
    return `<${tag}${tag === 'th' ? ' scope="row"' : ''}${side(index)} dir="auto">${lines(text)}</${tag}>`
  }
  const head = columns.map(({ heading }, index) => `<th scope="col"${side(index)} dir="auto">${line(heading)}</th>`)
  const table = [
    '<table>',
    ...(columns.some(({ heading }) => heading !== '') ? [`<thead><tr>${head.join('')}</tr></thead>`] : []),
    '<tbody>',
    ...rows.map((row, index) => {
      const isTotal = total && index === rows.length - 1
      return `<tr${isTotal ? ' class="total"' : ''}>${columns.map((_, at) => cell(row[at] ?? '', at)).join('')}</tr>`
    }),
    '</tbody>',
    '</table>',
  ].join('\n')
  return columns.length < WIDE_COLUMNS ? table : wideHtml(table, columns.map(({ heading }) => heading).join(', '))
}

/** Columns from which a table scrolls by itself on a narrow screen: no number is broken over lines. */
const WIDE_COLUMNS = 5

const sized = (sizePt: number | undefined): string => (sizePt === undefined ? '' : ` style="font-size:${sizePt}pt"`)
const line = (text: string): string => escapeMarkup(cleanLine(text))
const lines = (text: string): string => escapeMarkup(cleanText(text)).replaceAll('\n', '<br>')
