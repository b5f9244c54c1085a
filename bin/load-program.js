const { createHash } = require('node:crypto')
const { readFileSync } = require('node:fs')
const path = require('node:path')
const { pathToFileURL } = require('node:url')
const { setFlagsFromString } = require('node:v8')
const { Script } = require('node:vm')

/** The bundle, one function in plain ASCII. */
const PROGRAM = path.join(__dirname, '../dist/program/main.cjs')
/** Compiled form of the program, made by the build: its seal, then what the engine keeps. */
const COMPILED = path.join(__dirname, '../dist/program/main.cache')
const SEAL_BYTES = 32

// The engine waits three times as long as by itself before it compiles a function anew for speed. A command that ends within
// half a second spends more on that than it wins; reading the demo's YAML alone had a dozen functions compiled, some twice.
// Set for the build and for every start alike, since the engine takes no compiled form that was made under other settings.
setFlagsFromString('--interrupt-budget=400000')

/**
 * Loads the bundled command line with its compiled form, which saves a third of the time of a start.
 *
 * @returns {{ main: (args: string[], tool: string) => Promise<number>, work: () => Promise<void>, workOnForeign: () => Promise<void> } | undefined}
 *   undefined when the program is not built.
 */
function loadProgram() {
  let program
  try {
    program = readFileSync(PROGRAM)
  } catch (error) {
    if (error.code === 'ENOENT') return undefined
    throw error
  }
  return runProgram(program, compiledForm(program))
}

/**
 * The compiled form of exactly this program. The engine itself compares only the length of the program and trusts the
 * rest, so that a damaged or older form would run and give wrong figures.
 *
 * @param {Uint8Array} program Bytes of the program.
 * @returns {Uint8Array | undefined} undefined when there is none, or when it is damaged, or of another program, version of
 *   Node or processor: the program is then compiled from its text.
 */
function compiledForm(program) {
  let kept
  try {
    kept = readFileSync(COMPILED)
  } catch {
    return undefined
  }
  const form = kept.subarray(SEAL_BYTES)
  return kept.subarray(0, SEAL_BYTES).equals(sealOf(program, form)) ? form : undefined
}

/** SHA-256 over all that a compiled form depends on, and over the form. */
function sealOf(program, form) {
  return createHash('sha256')
    .update(`${process.version} ${process.platform} ${process.arch} ${program.length}\n`)
    .update(program)
    .update(form)
    .digest()
}

/**
 * Runs the text of the program.
 *
 * @param {Uint8Array} program Bytes of the program.
 * @param {Uint8Array | undefined} cachedData Its compiled form.
 */
function runProgram(program, cachedData) {
  const script = new Script(program.latin1Slice(), { filename: PROGRAM, cachedData })
  const module = { exports: {} }
  script.runInThisContext()(module.exports, require, module, pathToFileURL(PROGRAM).href)
  const { main, work, workOnForeign } = module.exports
  return { main, work, workOnForeign, script }
}

module.exports = { COMPILED, PROGRAM, compiledForm, loadProgram, runProgram, sealOf }
