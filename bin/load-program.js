const { readFileSync } = require('node:fs')
const path = require('node:path')
const { pathToFileURL } = require('node:url')
const { setFlagsFromString } = require('node:v8')
const { Script } = require('node:vm')
const { crc32 } = require('node:zlib')

const FOLDER = path.join(__dirname, '../dist/program')
/** The files of the program, each an object of the name of the build and of functions: what a quick command needs, and all else. */
const FILES = ['main.cjs', 'rest.cjs']
const ENTRY = 'main.cjs'
const END_OF_SEAL = 0x0a

/**
 * Lets the engine wait three times as long as by itself before it compiles a function anew for speed. A command that ends within half
 * a second spends more on that than it wins; reading the demo's YAML alone had a dozen functions compiled, some twice. Set for the
 * build and for every start alike, since the engine takes no compiled form that was made under other settings. The engines of Node 22
 * and later have no such setting, and complain of it.
 */
function settingsOf(v8) {
  return v8.startsWith('11.') ? ['--interrupt-budget=400000'] : []
}

for (const setting of settingsOf(process.versions.v8)) setFlagsFromString(setting)

/**
 * Loads the bundled command line with its compiled form, which saves a third of the time of a start.
 *
 * @returns {{ main: (args: string[], tool: string) => Promise<number>, work: () => Promise<void>, workOnForeign: () => Promise<void> } | undefined}
 *   undefined when the program is not built.
 */
function loadProgram() {
  try {
    return runProgram((file) => {
      const text = readFileSync(path.join(FOLDER, file))
      return { text, form: compiledForm(file, text) }
    }).program
  } catch (error) {
    if (error.code === 'ENOENT' && error.path?.startsWith(FOLDER)) return undefined
    throw error
  }
}

/** Where the compiled form of a file of the program stands, made by the build: its seal, then what the engine keeps. */
function compiledPlace(file) {
  return path.join(FOLDER, file.replace(/\.cjs$/u, '.cache'))
}

/**
 * The compiled form of exactly this text. The engine itself compares only the length of the text and trusts the rest, so
 * that a damaged or older form would run and give wrong figures.
 *
 * @param {string} file Name of the file of the program.
 * @param {Uint8Array} text Its bytes.
 * @returns {Uint8Array | undefined} undefined when there is none, or when it is damaged, or of another program, version of
 *   Node or processor: the program is then compiled from its text.
 */
function compiledForm(file, text) {
  let kept
  try {
    kept = readFileSync(compiledPlace(file))
  } catch {
    return undefined
  }
  const end = kept.indexOf(END_OF_SEAL) + 1
  const form = kept.subarray(end)
  return kept.latin1Slice(0, end) === sealOf(text, form) ? form : undefined
}

/** All that a compiled form depends on, with checksums of the text and of the form, which tell damage and age, not malice. */
function sealOf(text, form) {
  return `${process.version} ${process.platform} ${process.arch} ${text.length} ${crc32(text)} ${form.length} ${crc32(form)}\n`
}

/**
 * Runs the program; its second file is read when something in it is asked for.
 *
 * @param {(file: string) => { text: Uint8Array, form: Uint8Array | undefined }} read A file of the program and its compiled form.
 */
function runProgram(read) {
  const scripts = new Map()
  const builds = []
  const functions = {}
  const modules = new Map()
  const part = (name) => {
    const known = modules.get(name)
    if (known !== undefined) return known.exports
    const file = FILES.find((one) => one === name) ?? ENTRY
    if (!scripts.has(file)) {
      const { text, form } = read(file)
      const script = new Script(text.latin1Slice(), { filename: path.join(FOLDER, file), cachedData: form })
      scripts.set(file, script)
      const { build, ...parts } = script.runInThisContext()
      if (build !== (builds[0] ??= build))
        throw new Error('dist/program holds files of two builds: run `npm run build`')
      Object.assign(functions, parts)
    }
    const module = { exports: {} }
    modules.set(name, module)
    functions[name](module.exports, need, module, url)
    return module.exports
  }
  const need = (name) => (name.startsWith('./') ? part(name.slice(2)) : require(name))
  const url = pathToFileURL(path.join(FOLDER, ENTRY)).href
  return { program: part(ENTRY), scripts }
}

module.exports = { FILES, FOLDER, compiledForm, compiledPlace, loadProgram, runProgram, sealOf, settingsOf }
