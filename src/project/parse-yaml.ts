import { Composer, Lexer, LineCounter, Parser, type Document } from 'yaml'
import { DEEPEST_YAML, MOST_YAML_MARKS } from './budgets.js'
import { MADE_UP_TAGS } from './made-up-tag.js'
import type { Problem } from './problem.js'
import { positionOf, type YamlFile } from './yaml-file.js'
import { toData } from './yaml-data.js'
import { sayYamlError } from './yaml-messages.js'

type Tokens = ReturnType<Parser['next']>

/** The first documents of a text, two at most, and where it is nested too deep to go on. */
function composeDocuments(
  text: string,
  lineCounter: LineCounter,
): {
  readonly documents: readonly Document.Parsed[]
  readonly tooDeepAt: number | undefined
  readonly tooManyAt: number | undefined
} {
  const parser = new Parser(lineCounter.addNewLine)
  let tooDeepAt: number | undefined
  let tooManyAt: number | undefined
  let marks = 0

  function* tokens(): Tokens {
    lineCounter.addNewLine(0)
    for (const lexeme of new Lexer().lex(text)) {
      marks += 1
      if (marks > MOST_YAML_MARKS) {
        tooManyAt = parser.offset
        return
      }
      yield* parser.next(lexeme)
      if (parser.stack.length > DEEPEST_YAML) {
        tooDeepAt = parser.offset
        return
      }
    }
    yield* parser.end()
  }

  // Duplicate keys are found in toData: the library's own search takes quadratic time.
  const composer = new Composer({
    lineCounter,
    prettyErrors: false,
    uniqueKeys: false,
    logLevel: 'error',
    customTags: MADE_UP_TAGS,
  })
  const documents: Document.Parsed[] = []
  for (const document of composer.compose(tokens(), true, text.length)) {
    documents.push(document)
    if (tooDeepAt !== undefined || tooManyAt !== undefined || documents.length > 1) break
  }
  return { documents, tooDeepAt, tooManyAt }
}

/** Reads one YAML document. What is wrong with the text as YAML comes back as problems; then the data are not to be used. */
export function parseYaml(file: string, text: string): YamlFile & { readonly problems: readonly Problem[] } {
  const lineCounter = new LineCounter()
  const { documents, tooDeepAt, tooManyAt } = composeDocuments(text, lineCounter)
  const [document, second] = documents
  const yamlFile: YamlFile = { file, text, document, lineCounter, data: undefined, madeUp: [] }
  const at = (offset: number, message: string, length = 1, path = ''): Problem => ({
    file,
    ...positionOf(yamlFile, offset),
    length,
    path,
    message,
  })

  if (tooDeepAt !== undefined) {
    return {
      ...yamlFile,
      problems: [at(tooDeepAt, `nested more than ${DEEPEST_YAML} levels deep; a project file needs about 8`)],
    }
  }
  if (tooManyAt !== undefined) {
    const says = `holds more than ${MOST_YAML_MARKS} marks of YAML (brackets, colons, breaks of lines); a whole job has about 5000: split it or take out what is not of this house`
    return { ...yamlFile, problems: [at(tooManyAt, says)] }
  }
  if (document === undefined) return { ...yamlFile, problems: [{ file, path: '', message: EMPTY }] }
  const errors = [...document.errors, ...document.warnings]
  if (errors.length > 0) {
    const problems = errors.map((error) => at(error.pos[0], sayYamlError(error), error.pos[1] - error.pos[0]))
    return { ...yamlFile, problems: firstOfEachLine(problems) }
  }
  if (second !== undefined) {
    const message = "a second document starts here; a project file holds one: remove the '---' line or split the file"
    return { ...yamlFile, problems: [at(second.range[0], message, 3)] }
  }
  const directive = document.directives.yaml
  if (directive.explicit && directive.version !== '1.2') {
    const message = `YAML ${directive.version} is asked for; this file is read as YAML 1.2: remove the %YAML line`
    return { ...yamlFile, problems: [at(text.indexOf('%YAML'), message, 5)] }
  }
  const { data, complaints, madeUp } = toData(document)
  if (complaints.length > 0) {
    return { ...yamlFile, problems: complaints.map((c) => at(c.offset, c.message, c.length, c.path)) }
  }
  if (data === null) return { ...yamlFile, problems: [{ file, path: '', message: EMPTY }] }
  return { ...yamlFile, data, madeUp, problems: [] }
}

const EMPTY = "is empty; 'gablewatt new-project' writes a file to start from"

/** One mistake often makes the parser stumble several times on a line. */
function firstOfEachLine(problems: readonly Problem[]): Problem[] {
  const lines = new Set<number>()
  return problems
    .toSorted((a, b) => (a.line ?? 0) - (b.line ?? 0) || (a.column ?? 0) - (b.column ?? 0))
    .filter(({ line = 0 }) => !lines.has(line) && lines.add(line))
}
