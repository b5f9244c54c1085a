// Writes the output blocks and the picture of README.md anew from the built program: npm run build && npm run readme
// With --check nothing is written; what differs is told, and the exit code is 1.
//
// A block stands between two comments; the first holds the command line, and behind a bar the first words of the parts
// that are shown (parts of a report have an empty line between them):
//   <!-- output: estimate-yield examples/lark-hollow.yaml | Energy estimate | Month by month -->
//   <!-- end -->
import { spawnSync } from 'node:child_process'
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'

const root = fileURLToPath(new URL('../..', import.meta.url))
const BLOCK = /(<!-- output: (?<line>[^|\n]+?)(?: \| (?<parts>[^\n]+?))? -->\n).*?(?=<!-- end -->)/gsu

function gablewatt(args) {
  const env = { PATH: process.env.PATH, HOME: process.env.HOME, COLUMNS: '80' }
  const run = spawnSync(process.execPath, ['bin/gablewatt.js', ...args], { cwd: root, encoding: 'utf8', env })
  if (![0, 1, 2].includes(run.status)) throw new Error(`gablewatt ${args.join(' ')}: exit ${run.status}\n${run.stderr}`)
  return run
}

/** The parts of an output that begin with these words, `...` for those between and behind. */
function cut(text, wanted) {
  const parts = text.trimEnd().split(/\n\n/u)
  const shown = wanted.map((words) => {
    const index = parts.findIndex((part) => part.startsWith(words))
    if (index < 0) throw new Error(`README.md: no part of the output begins with '${words}'`)
    return index
  })
  const last = shown.at(-1) ?? parts.length - 1
  const lines = shown.flatMap((index, place) => [
    ...(place > 0 && index === shown[place - 1] + 1 ? [''] : place > 0 ? ['...'] : []),
    parts[index],
  ])
  return [...lines, ...(last < parts.length - 1 ? ['...'] : [])].join('\n')
}

function block(line, parts) {
  const { stdout, stderr } = gablewatt(line.split(' '))
  const text = parts === undefined ? (stdout + stderr).trimEnd() : cut(stdout, parts.split(' | '))
  return `\`\`\`text\n$ gablewatt ${line}\n${text}\n\`\`\`\n`
}

/** The roof plan of the south plane. */
function picture() {
  const folder = mkdtempSync(join(tmpdir(), 'gablewatt-readme-'))
  try {
    gablewatt(['space-mounts', 'examples/lark-hollow.yaml', '--quiet', '--svg', join(folder, 'roof.svg')])
    return readFileSync(join(folder, 'roof-A-101.svg'), 'utf8')
  } finally {
    rmSync(folder, { recursive: true })
  }
}

const made = {
  'README.md': readFileSync(join(root, 'README.md'), 'utf8').replace(
    BLOCK,
    (_all, head, line, parts) => head + block(line, parts),
  ),
  'examples/lark-hollow-roof.svg': picture(),
}
for (const [name, text] of Object.entries(made)) {
  const path = join(root, name)
  let before
  try {
    before = readFileSync(path, 'utf8')
  } catch {
    before = ''
  }
  if (before === text) continue
  if (!process.argv.includes('--check')) {
    writeFileSync(path, text)
    console.log(`wrote ${name}`)
    continue
  }
  const [old, now] = [before.split('\n'), text.split('\n')]
  const at = now.findIndex((line, index) => line !== old[index])
  console.error(`${name}:${at + 1} is not what the program prints; 'npm run readme' writes it anew`)
  console.error(`  there: ${old[at]?.slice(0, 120)}\n  now:   ${now[at]?.slice(0, 120)}`)
  process.exitCode = 1
}
