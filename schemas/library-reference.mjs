/** Prints a Markdown reference of the library, made from the built types and their comments: `npm run reference:library > library.md`. */
import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'

const root = fileURLToPath(new URL('..', import.meta.url))
if (!existsSync(`${root}dist/index.d.ts`)) throw new Error('the types are not built: run `npm run build` first')
const entry = readFileSync(`${root}src/index.ts`, 'utf8')
const lines = [
  '# Reference: the library',
  '',
  "`import { estimateYield } from 'gablewatt'`. A stage is a pure function from a project, and earlier results, to a `Result`; `loadProject`, `preparePacket` and `runFleet` read files. Made from the types that the package carries.",
  '',
]
for (const [, names = '', folder = ''] of entry.matchAll(
  /^export (?:type )?\{([^}]*)\} from '\.\/([a-z/-]+)\/index\.js'/gmu,
)) {
  const files = readdirSync(`${root}dist/${folder}`, { recursive: true, encoding: 'utf8' }).filter((name) =>
    name.endsWith('.d.ts'),
  )
  const texts = files.map((name) => readFileSync(`${root}dist/${folder}/${name}`, 'utf8'))
  if (!lines.includes(`## ${folder}`)) lines.push(`## ${folder}`, '')
  for (const name of names.split(',').map((one) => one.replace(/^\s*type\s/u, '').trim())) {
    if (name !== '') describe(name, texts)
  }
}
process.stdout.write(`${lines.join('\n')}\n`)

function describe(name, texts) {
  const head = new RegExp(`^export (?:declare )?(?:abstract )?(?:function|class|interface|type|const) ${name}\\b`, 'mu')
  const text = texts.find((one) => head.test(one))
  if (text === undefined) throw new Error(`${name} is exported, but no declaration of it was found`)
  const at = head.exec(text).index
  const comment = /\/\*\*(?:(?!\*\/)[^])*\*\/\s*$/u.exec(text.slice(0, at))?.[0] ?? ''
  const { says, tags } = readComment(comment)
  lines.push(`### ${name}`, '')
  if (says !== '') lines.push(says, '')
  lines.push('```ts', declarationAt(text, at), '```', '')
  if (tags.length > 0) lines.push(...tags, '')
}

/** The text of a declaration, up to the semicolon or brace that ends it. */
function declarationAt(text, at) {
  let depth = 0
  for (let i = at; i < text.length; i += 1) {
    if ('({['.includes(text[i])) depth += 1
    if (')}]'.includes(text[i])) depth -= 1
    if (depth > 0 || (text[i] !== ';' && !(text[i] === '}' && text[i + 1] === '\n'))) continue
    return text
      .slice(at, i + 1)
      .replace(/^export (?:declare )?/u, '')
      .replace(/^ *#private;\n/mu, '')
  }
  throw new Error('a declaration without an end')
}

function readComment(comment) {
  const plain = comment
    .replace(/^\/\*\*\s?|\s*\*\/\s*$/gu, '')
    .split('\n')
    .map((line) => line.replace(/^\s*\*? ?/u, '').trimEnd())
  const [says = '', ...tagged] = plain.join('\n').split(/^@/mu)
  return {
    says: says.replaceAll('\n\n', '\r').replaceAll('\n', ' ').replaceAll('\r', '\n\n').trim(),
    tags: tagged.map((tag) => tagLine(tag.replaceAll(/\s+/gu, ' ').trim())),
  }
}

function tagLine(tag) {
  const [name = ''] = tag.split(' ', 1)
  const rest = tag.slice(name.length + 1)
  return `- ${name[0]?.toUpperCase() ?? ''}${name.slice(1)}: ${name === 'example' ? `\`${rest}\`` : rest}`
}
