import { parseSync } from 'oxc-parser'

const SWAPS = {
  '+': '-',
  '-': '+',
  '*': '/',
  '/': '*',
  '<': '<=',
  '<=': '<',
  '>': '>=',
  '>=': '>',
  '===': '!==',
  '!==': '===',
  '&&': '||',
  '||': '&&',
}
const TURNS = { '<': '>', '<=': '>=', '>': '<', '>=': '<=' }
const CALLS = {
  max: 'min',
  min: 'max',
  floor: 'ceil',
  ceil: 'floor',
  sin: 'cos',
  cos: 'sin',
  some: 'every',
  every: 'some',
}

/** A number that is wrong by a little: a tenth more, or one more where it is small and whole. */
function wrongNumber(value) {
  if (value === 0) return '1'
  const wrong = Number.isInteger(value) && Math.abs(value) < 10 ? value + 1 : value * 1.1
  return String(Number(wrong.toPrecision(12)))
}

/** A text with one of its words left out, or its one word changed; undefined where nothing can be read in it. */
function wrongText(text) {
  const words = text.split(' ')
  if (!/[A-Za-z]{3}/.test(text)) return undefined
  if (words.length < 3) return text + 'x'
  const middle = Math.floor(words.length / 2)
  return words.filter((_, index) => index !== middle).join(' ')
}

const quote = (text) => `'${text.replaceAll('\\', '\\\\').replaceAll("'", "\\'").replaceAll('\n', '\\n')}'`

/** What each kind of node offers as small faults: pairs of kind and the edit `[start, end, text]`. */
const FAULTS = {
  BinaryExpression: (node, source) => {
    const operatorAt = source.indexOf(node.operator, node.left.end)
    const swap = (kind, operator) => ({ kind, edit: [operatorAt, operatorAt + node.operator.length, operator] })
    const text = [node.left, node.right].some(
      (side) => typeof side.value === 'string' || side.type === 'TemplateLiteral',
    )
    if (text || !(node.operator in SWAPS)) return []
    const kind = node.operator in TURNS ? 'limit' : node.operator.length === 3 ? 'condition' : 'sign'
    return [
      swap(kind, SWAPS[node.operator]),
      ...(node.operator in TURNS ? [swap('comparison', TURNS[node.operator])] : []),
    ]
  },
  LogicalExpression: (node, source) => {
    if (!(node.operator in SWAPS)) return []
    const at = source.indexOf(node.operator, node.left.end)
    return [{ kind: 'condition', edit: [at, at + 2, SWAPS[node.operator]] }]
  },
  UnaryExpression: (node) =>
    ['-', '!'].includes(node.operator)
      ? [{ kind: node.operator === '-' ? 'sign' : 'condition', edit: [node.start, node.start + 1, ''] }]
      : [],
  Literal: (node) => {
    if (typeof node.value === 'number')
      return [{ kind: 'number', edit: [node.start, node.end, wrongNumber(node.value)] }]
    if (typeof node.value === 'boolean')
      return [{ kind: 'condition', edit: [node.start, node.end, String(!node.value)] }]
    if (typeof node.value !== 'string') return []
    const wrong = wrongText(node.value)
    return wrong === undefined ? [] : [{ kind: 'words', edit: [node.start, node.end, quote(wrong)] }]
  },
  TemplateElement: (node) => {
    const wrong = node.value.raw.length < 12 ? undefined : wrongText(node.value.raw)
    // The place of the element counts its opening mark (` or }) and its closing one.
    const from = node.start + 1
    return wrong === undefined ? [] : [{ kind: 'words', edit: [from, from + node.value.raw.length, wrong] }]
  },
  ArrayExpression: (node) =>
    node.elements.length < 2
      ? []
      : node.elements.slice(0, -1).flatMap((element, index) => {
          const next = node.elements[index + 1]
          return element === null || next === null
            ? []
            : [{ kind: 'dropped entry', edit: [element.start, next.start, ''] }]
        }),
  ExpressionStatement: (node) =>
    node.expression.type === 'CallExpression' || node.expression.type === 'AssignmentExpression'
      ? [{ kind: 'dropped statement', edit: [node.start, node.end, ';'] }]
      : [],
  IfStatement: (node) => [
    { kind: 'dropped check', edit: [node.test.start, node.test.end, 'false'] },
    { kind: 'condition', edit: [node.test.start, node.test.end, 'true'] },
  ],
  ConditionalExpression: (node, source) => [
    {
      kind: 'condition',
      edit: [
        node.consequent.start,
        node.alternate.end,
        `${source.slice(node.alternate.start, node.alternate.end)} : ${source.slice(node.consequent.start, node.consequent.end)}`,
      ],
    },
  ],
  CallExpression: (node) => {
    const property = node.callee.type === 'MemberExpression' && !node.callee.computed ? node.callee.property : undefined
    const other = property === undefined ? undefined : CALLS[property.name]
    return other === undefined ? [] : [{ kind: 'function', edit: [property.start, property.end, other] }]
  },
}

/** Names under which texts are keys or addresses, not words or values that a fault could stand in. */
const SKIPPED = new Set([
  'ImportDeclaration',
  'ExportAllDeclaration',
  'TSTypeAliasDeclaration',
  'TSInterfaceDeclaration',
  'TSTypeAnnotation',
  'TSTypeParameterInstantiation',
])

function walk(node, visit) {
  if (node === null || typeof node !== 'object') return
  if (Array.isArray(node)) {
    for (const entry of node) walk(entry, visit)
    return
  }
  if (typeof node.type !== 'string' || SKIPPED.has(node.type)) return
  visit(node)
  for (const [name, child] of Object.entries(node)) {
    // A property's own key is an address; so is the file after `from`.
    if ((name === 'key' && node.computed === false) || (name === 'source' && node.type.startsWith('Export'))) continue
    walk(child, visit)
  }
}

/**
 * All small faults that a TypeScript source can be given.
 * @param {string} file path, for the parser and for the report
 * @param {string} source the file's text
 * @returns {{file: string, kind: string, line: number, edit: [number, number, string]}[]} in order of place
 */
export function findSites(file, source) {
  const { program, errors } = parseSync(file, source)
  if (errors.length > 0) throw new Error(`${file} cannot be parsed: ${errors[0].message}`)
  const sites = []
  walk(program, (node) => {
    for (const fault of FAULTS[node.type]?.(node, source) ?? []) {
      const line = source.slice(0, fault.edit[0]).split('\n').length
      sites.push({ file, kind: fault.kind, line, edit: fault.edit })
    }
  })
  return sites
}

/** The source with the fault in it. */
export const withFault = (source, { edit: [start, end, text] }) => source.slice(0, start) + text + source.slice(end)

/** The line before and after: by these an entry of the list of equivalents is recognised, wherever the line has moved. */
export function lineOf(source, site) {
  const lineAt = (text) => {
    const from = text.lastIndexOf('\n', site.edit[0] - 1) + 1
    const to = text.indexOf('\n', site.edit[0] + site.edit[2].length)
    return text.slice(from, to < 0 ? undefined : to).trim()
  }
  return { before: lineAt(source), after: lineAt(withFault(source, site)) }
}
