import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { fileURLToPath } from 'node:url'
import { Script } from 'node:vm'

const PROGRAM = new URL('../dist/program/main.cjs', import.meta.url)
/** Compiled form of the program, made by the build; another version of Node rejects it and compiles anew. */
export const CACHE = new URL('../dist/program/main.cache', import.meta.url)

/**
 * Loads the bundled command line with its compiled form, which saves a third of the time of a start.
 *
 * @returns {{ main: (args: string[], tool: string) => Promise<number>, script: Script } | undefined} undefined when the
 *   program is not built.
 */
export function loadProgram() {
  const source = readIfThere(PROGRAM, 'utf8')
  if (source === undefined) return undefined
  const script = new Script(`(function (exports, require, module, __importMetaUrl) {${source}\n})`, {
    filename: fileURLToPath(PROGRAM),
    cachedData: readIfThere(CACHE),
  })
  const module = { exports: {} }
  script.runInThisContext()(module.exports, createRequire(PROGRAM), module, PROGRAM.href)
  return { main: module.exports.main, script }
}

function readIfThere(url, encoding) {
  try {
    return readFileSync(url, encoding)
  } catch (error) {
    if (error.code === 'ENOENT') return undefined
    throw error
  }
}
