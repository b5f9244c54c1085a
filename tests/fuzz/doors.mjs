/**
 * Inputs for the doors by which files come in that another run, another program or a stranger wrote: earlier results, baselines,
 * journals, patterns of files, printed bills, rates, forms and what goes into them.
 */
import { readFileSync } from 'node:fs'
import { BOMBS, damaged, pdfOf } from './hostile-pdf.mjs'
import { mutateData } from './mutate-data.mjs'
import { mutateText } from './mutate.mjs'
import { BILLS, FORM, MAPPING, PROJECT_DATA, PROJECTS, RATE } from './seeds.mjs'

/** What this program wrote before the search: by stage, fleet lines, which a journal is like, and a baseline. Made by run.mjs, read by its children. */
let written
function made() {
  written ??= JSON.parse(readFileSync(process.env.FUZZ_WRITTEN, 'utf8'))
  return written
}

/** A JSON text that is damaged as text, as data, or is not. Its seal no longer fits, which is what most people will meet. */
function damagedJson(chance, text) {
  if (chance.chance(0.2)) return text
  if (chance.chance(0.5)) return mutateText(chance, text)
  try {
    return JSON.stringify(mutateData(chance, JSON.parse(text), PROJECT_DATA))
  } catch {
    return mutateText(chance, text)
  }
}

/** @param withProject Lays a project with the files that it names. */
export function doors(withProject) {
  const laid = (more) => withProject(PROJECTS[0], more)
  return {
    earlier: (chance) => {
      const stage = chance.of(Object.keys(made().results))
      const text = damagedJson(chance, made().results[stage])
      const use = chance.of(['price-bom', 'payback', 'plan-work'])
      const door = chance.of([
        [use, 'project.yaml', '--use', 'r.json'],
        ['verify-file', 'r.json'],
        ['verify-file', 'r.json', 'project.yaml'],
      ])
      return { files: laid({ 'r.json': text }), args: door }
    },
    baseline: (chance) => ({
      files: laid({ 'b.json': damagedJson(chance, made().baseline) }),
      args: [
        'run-fleet',
        'project.yaml',
        '--jobs',
        '1',
        '--stages',
        'yield',
        '--baseline',
        'b.json',
        ...chance.of([[], ['--json'], ['--junit', 'out.xml']]),
      ],
    }),
    journal: (chance) => {
      const args = chance.of([
        ['run-fleet', '--merge', 'j.jsonl'],
        ['verify-file', 'j.jsonl'],
        [
          'run-fleet',
          'project.yaml',
          'bad.yaml',
          '--jobs',
          '1',
          '--stages',
          'roof',
          '--journal',
          'j.jsonl',
          '--resume',
        ],
      ])
      const sound = made().lines
      const lines = sound.split('\n')
      const at = chance.below(lines.length)
      const damagedLine = damagedJson(chance, lines[at] ?? '')
      const text = chance.chance(0.3)
        ? sound.slice(0, chance.below(sound.length))
        : lines.with(at, damagedLine).join('\n')
      return { files: laid({ 'j.jsonl': text, 'bad.yaml': 'x' }), args }
    },
    glob: (chance) => {
      const pieces = [
        '*',
        '**',
        '?',
        '[a-z]',
        '[',
        ']',
        '{',
        '}',
        ',',
        '{a,b}',
        '{1..9}',
        'p',
        'project',
        '.yaml',
        '/',
        '..',
        '!',
        '\\',
        '(',
        '+',
        '{'.repeat(30),
        '{a,b}'.repeat(12),
        '*'.repeat(40),
        '**/'.repeat(20),
        'é',
        '\u{1F600}',
      ]
      const pattern = Array.from({ length: 1 + chance.below(6) }, () => chance.of(pieces))
        .join('')
        .replace(/^\/+/u, '')
        .replaceAll('..', '.')
      return { files: laid({}), args: ['run-fleet', pattern === '' ? '*' : pattern, '--jobs', '1', '--stages', 'roof'] }
    },
    bills: (chance) => ({
      files: laid({ 'bills.csv': chance.chance(0.1) ? BILLS : mutateText(chance, BILLS) }),
      args: ['check-bill', 'project.yaml', 'bills.csv', ...chance.of([[], ['--json'], ['--csv']])],
    }),
    rates: (chance) => ({
      files: { 'rate.json': damagedJson(chance, JSON.stringify(RATE)) },
      args: [
        'import-rate',
        'rate.json',
        ...chance.of([[], ['--anyway'], ['--list'], ['--on', '2026-03-02', '--anyway']]),
      ],
    }),
    form: (chance) => {
      const sound = chance.chance(0.3) ? FORM : pdfOf({})
      const bomb = () => BOMBS[chance.of(Object.keys(BOMBS))](0.01)
      const form = chance.chance(0.1) ? bomb() : chance.chance(0.1) ? sound : damaged(1 + chance.below(1e6), sound)
      const mapping = chance.chance(0.5) ? mutateText(chance, MAPPING) : MAPPING
      const args = chance.of([
        ['fill-form', '--list', 'f.pdf'],
        ['fill-form', '--starter', 'f.pdf'],
        ['fill-form', 'project.yaml', 'f.pdf', 'm.yaml', '--preview'],
        ['fill-form', 'project.yaml', 'f.pdf', 'm.yaml', '--out', 'out.bin', ...chance.of([[], ['--flatten']])],
      ])
      return { files: laid({ 'f.pdf': form, 'm.yaml': mapping }), args }
    },
  }
}
