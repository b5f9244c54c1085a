// A step of the build: puts the command line and the packages it uses into two files. The first, `main.cjs`, holds what a quick
// command needs, the second, `rest.cjs`, all else: a start reads and takes in half as much, which is a tenth of its time.
import { createRequire } from 'node:module'
import { mkdirSync, writeFileSync } from 'node:fs'
import path from 'node:path'
import { fileURLToPath, pathToFileURL } from 'node:url'
import { runInThisContext } from 'node:vm'
import { transform } from 'esbuild'
import { rolldown } from 'rolldown'

const root = path.join(path.dirname(fileURLToPath(import.meta.url)), '..')
const folder = path.join(root, 'dist/program')
/** What the quick commands are: their modules stand in the first file. */
const QUICK = [
  ['estimate-yield', path.join(root, 'examples/lark-hollow.yaml'), '--quiet'],
  ['estimate-yield', path.join(root, 'examples/lark-hollow.yaml'), '--json', '--quiet'],
]

const bundler = await rolldown({
  input: { main: path.join(root, 'src/cli/main.ts') },
  platform: 'node',
  external: [/^pdfkit/u, /^dejavu-fonts-ttf/u, /^@colors\/colors/u],
  resolve: {
    alias: {
      'node:child_process': path.join(root, 'bin/no-child-process.js'),
      'string-width': path.join(root, 'bin/string-width.js'),
    },
  },
  transform: {
    target: 'node20',
    define: { 'import.meta.url': '__importMetaUrl', GABLEWATT_BUILD: "'gablewatt-build-goes-here'" },
  },
  checks: { ineffectiveDynamicImport: false },
})
const quick = await modulesOfQuick(await generate({}))
const chunks = await generate({
  groups: [
    { name: 'start', test: (id) => quick.has(id), priority: 2 },
    { name: 'rest', test: () => true, priority: 1 },
  ],
})
await bundler.close()
mkdirSync(folder, { recursive: true })
await writeParts('main.cjs', (name) => name !== 'rest.cjs')
await writeParts('rest.cjs', (name) => name === 'rest.cjs')
const inputs = chunks.flatMap(({ moduleIds }) => moduleIds).filter((id) => id.includes('/node_modules/'))
writeFileSync(path.join(folder, 'packages.json'), JSON.stringify(inputs.map((id) => path.relative(root, id))))

/** Writes an object of functions in plain ASCII, one for each part, so that a start can take the bytes as they are, and the build. */
async function writeParts(file, isIn) {
  const parts = chunks.filter(({ fileName }) => isIn(fileName)).toSorted((a, b) => (a.fileName < b.fileName ? -1 : 1))
  const codes = parts.map(async ({ fileName, code }) => {
    const small = await transform(code, {
      minify: true,
      charset: 'ascii',
      target: 'node20',
      format: 'cjs',
      supported: { 'dynamic-import': false },
    })
    return `${JSON.stringify(fileName)}:(function(exports,require,module,__importMetaUrl){${small.code}\n})`
  })
  writeFileSync(
    path.join(folder, file),
    `({build:'gablewatt-build-goes-here',${(await Promise.all(codes)).join(',')}})`,
  )
}

/** The parts of the bundle, each module initialised when it is first asked for. */
async function generate(codeSplitting) {
  const { output } = await bundler.generate({
    format: 'cjs',
    minify: false,
    strictExecutionOrder: true,
    entryFileNames: '[name].cjs',
    chunkFileNames: '[name].cjs',
    codeSplitting,
  })
  return output
}

/** Runs the quick commands from a bundle of many files and notes which of them they load. */
async function modulesOfQuick(parts) {
  const loaded = new Map()
  const load = (name) => {
    const part = parts.find(({ fileName }) => fileName === name)
    const module = loaded.get(name) ?? { exports: {} }
    if (loaded.has(name)) return module.exports
    loaded.set(name, module)
    const run = runInThisContext(`(function (exports, require, module, __importMetaUrl) {${part.code}\n})`)
    run(module.exports, (one) => (one.startsWith('./') ? load(one.slice(2)) : need(one)), module, url)
    return module.exports
  }
  const need = createRequire(import.meta.url)
  const url = pathToFileURL(path.join(folder, 'main.cjs')).href
  const { main } = load('main.cjs')
  const write = process.stdout.write.bind(process.stdout)
  process.stdout.write = () => true
  for (const args of QUICK) if ((await main(args, 'gablewatt')) !== 0) throw new Error(`${args.join(' ')} failed`)
  process.stdout.write = write
  return new Set(parts.filter(({ fileName }) => loaded.has(fileName)).flatMap(({ moduleIds }) => moduleIds))
}
