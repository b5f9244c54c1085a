import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { parseAst } from 'vitest/node'

/** A place of the sources that makes a finding. */
export interface FindingSite {
  readonly file: string
  /** The id as it is written. */
  readonly written: string
  /** All ids that it can make, undefined where the code does not show them. */
  readonly ids: readonly string[] | undefined
}

/** What this reader needs of a syntax tree. */
interface Node {
  readonly type: string
  readonly start: number
  readonly end: number
  readonly [key: string]: unknown
}
type Place = readonly Node[]

/**
 * Reads every source and finds each object with `id`, `message` and one of `severity` and `where`. The ids are followed
 * through conditionals, templates, constants, destructured tables and the arguments of functions in the same file.
 */
export function findingSites(folder: string): FindingSite[] {
  return readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((file) => file.endsWith('.ts') && !file.endsWith('.d.ts') && !file.startsWith('tables'))
    .toSorted((a, b) => a.localeCompare(b))
    .flatMap((file) => sitesOf(file, readFileSync(join(folder, file), 'utf8')))
}

/** The same for the text of one file. */
export function sitesOf(file: string, text: string): FindingSite[] {
  const tree = parseAst(text, { lang: 'ts' }) as unknown as Node
  const sites: FindingSite[] = []
  walk(tree, [], (node, parents) => {
    if (node.type !== 'ObjectExpression') return
    const id = propertyOf(node, 'id')
    if (id === undefined || propertyOf(node, 'message') === undefined) return
    if (propertyOf(node, 'severity') === undefined && propertyOf(node, 'where') === undefined) return
    sites.push({ file, written: text.slice(id.start, id.end), ids: textsOf(id, [...parents, node], tree) })
  })
  return sites
}

function textsOf(node: Node, place: Place, tree: Node): readonly string[] | undefined {
  switch (node.type) {
    case 'Literal':
      return typeof node['value'] === 'string' ? [node['value']] : undefined
    case 'TSAsExpression':
    case 'TSSatisfiesExpression':
      return textsOf(node['expression'] as Node, place, tree)
    case 'ConditionalExpression':
      return union([node['consequent'], node['alternate']] as Node[], place, tree)
    case 'TemplateLiteral':
      return templateTexts(node, place, tree)
    case 'Identifier':
      return nameTexts(node['name'] as string, place, tree)
    default:
      return undefined
  }
}

function union(nodes: readonly (Node | null)[], place: Place, tree: Node): readonly string[] | undefined {
  const all = nodes.map((node) => (node === null ? undefined : textsOf(node, place, tree)))
  return all.some((texts) => texts === undefined) || all.length === 0 ? undefined : [...new Set(all.flat() as string[])]
}

function templateTexts(node: Node, place: Place, tree: Node): readonly string[] | undefined {
  const quasis = (node['quasis'] as Node[]).map((quasi) => (quasi['value'] as { cooked: string }).cooked)
  let texts: readonly string[] = [quasis[0] ?? '']
  for (const [index, expression] of (node['expressions'] as Node[]).entries()) {
    const inner = textsOf(expression, place, tree)
    if (inner === undefined) return undefined
    texts = texts.flatMap((text) => inner.map((one) => `${text}${one}${quasis[index + 1] ?? ''}`))
  }
  return texts
}

/** Follows a name to the nearest thing that binds it: a parameter, an item of a table, or a constant. */
function nameTexts(name: string, place: Place, tree: Node): readonly string[] | undefined {
  for (let depth = place.length - 1; depth >= 0; depth--) {
    const scope = place[depth] as Node
    const outer = place.slice(0, depth)
    if (scope.type === 'ForOfStatement') {
      const [declared] = ((scope['left'] as Node)['declarations'] as Node[] | undefined) ?? []
      const column = declared === undefined ? -1 : columnOf(declared['id'] as Node, name)
      if (column >= 0) return columnTexts(scope['right'] as Node, column, outer, tree)
    }
    if (scope.type === 'ArrowFunctionExpression' || scope.type === 'FunctionDeclaration') {
      const parameters = scope['params'] as Node[]
      const index = parameters.findIndex((one) => one.type === 'Identifier' && one['name'] === name)
      if (index >= 0) return argumentTexts(scope, index, outer, tree)
      const column = parameters[0] === undefined ? -1 : columnOf(parameters[0], name)
      if (column >= 0) return columnTexts(mappedOf(outer), column, outer, tree)
    }
    const constant = constantIn(scope, name)
    if (constant !== undefined) return textsOf(constant, place.slice(0, depth + 1), tree)
  }
  return undefined
}

function columnOf(pattern: Node, name: string): number {
  if (pattern.type !== 'ArrayPattern') return -1
  return (pattern['elements'] as (Node | null)[]).findIndex((one) => one?.type === 'Identifier' && one['name'] === name)
}

/** One column of a table `[[...], [...]]`, wherever its name leads. */
function columnTexts(table: Node | undefined, column: number, place: Place, tree: Node): readonly string[] | undefined {
  if (table === undefined) return undefined
  if (table.type === 'TSAsExpression') return columnTexts(table['expression'] as Node, column, place, tree)
  if (table.type === 'CallExpression') {
    const callee = table['callee'] as Node
    return callee.type === 'MemberExpression' ? columnTexts(callee['object'] as Node, column, place, tree) : undefined
  }
  if (table.type === 'Identifier') {
    const scope = place.findLast((one) => constantIn(one, table['name'] as string) !== undefined)
    return scope === undefined
      ? undefined
      : columnTexts(constantIn(scope, table['name'] as string), column, place, tree)
  }
  if (table.type !== 'ArrayExpression') return undefined
  const rows = table['elements'] as Node[]
  if (!rows.every((row) => row.type === 'ArrayExpression')) return undefined
  return union(
    rows.map((row) => (row['elements'] as (Node | null)[])[column] ?? null),
    place,
    tree,
  )
}

/** The list whose `.map(...)` or `.flatMap(...)` this function is given to. */
function mappedOf(place: Place): Node | undefined {
  const call = place.at(-1)
  const callee = call?.type === 'CallExpression' ? (call['callee'] as Node) : undefined
  return callee?.type === 'MemberExpression' ? (callee['object'] as Node) : undefined
}

/** What every call of a function in this file gives for one of its parameters. */
function argumentTexts(scope: Node, index: number, outer: Place, tree: Node): readonly string[] | undefined {
  const holder = outer.at(-1)
  const name =
    scope.type === 'FunctionDeclaration'
      ? (scope['id'] as Node)['name']
      : holder?.type === 'VariableDeclarator'
        ? (holder['id'] as Node)['name']
        : undefined
  if (name === undefined) return undefined
  const found: (readonly string[] | undefined)[] = []
  walk(tree, [], (node, parents) => {
    if (node.type !== 'CallExpression' || (node['callee'] as Node)['name'] !== name) return
    const argument = (node['arguments'] as Node[])[index]
    found.push(argument === undefined ? undefined : textsOf(argument, [...parents, node], tree))
  })
  return found.length === 0 || found.some((texts) => texts === undefined)
    ? undefined
    : [...new Set(found.flat() as string[])]
}

/** What `const name = ...` in this very block holds. */
function constantIn(scope: Node, name: string): Node | undefined {
  const body = scope.type === 'Program' || scope.type === 'BlockStatement' ? (scope['body'] as Node[]) : []
  return body
    .map((one) => (one.type === 'ExportNamedDeclaration' ? ((one['declaration'] as Node | null) ?? one) : one))
    .filter((one) => one.type === 'VariableDeclaration')
    .flatMap((one) => one['declarations'] as Node[])
    .filter((one) => (one['id'] as Node)['name'] === name)
    .map((one) => one['init'] as Node | null)
    .find((init) => init !== null && init !== undefined)
}

function propertyOf(object: Node, name: string): Node | undefined {
  const property = (object['properties'] as Node[]).find(
    (one) => one.type === 'Property' && (one['key'] as Node)['name'] === name,
  )
  return property?.['value'] as Node | undefined
}

function walk(value: unknown, parents: Place, visit: (node: Node, parents: Place) => void): void {
  if (Array.isArray(value)) {
    for (const item of value) walk(item, parents, visit)
    return
  }
  if (typeof value !== 'object' || value === null) return
  const isNode = typeof (value as Node).type === 'string'
  if (isNode) visit(value as Node, parents)
  const inside = isNode ? [...parents, value as Node] : parents
  for (const [key, item] of Object.entries(value)) if (key !== 'type') walk(item, inside, visit)
}
