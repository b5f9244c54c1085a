/**
 * Inputs for the doors by which files come in that another run of this program wrote: earlier results, baselines, lines of fleets,
 * journals, records of packets, sealed papers and their signatures.
 */
import { stringify } from 'yaml'
import { damaged } from './hostile-pdf.mjs'
import { mutateText } from './mutate.mjs'
import { FORM, MAPPING, PROJECT_DATA, PROJECTS } from './seeds.mjs'
import {
  damagedJson,
  damagedLines,
  journalIn,
  JOURNAL_RUN,
  JOURNAL_TABLE,
  keyOf,
  made,
  signatureOf,
} from './written.mjs'

const FORMS = [[], [], ['--json'], ['--csv'], ['--markdown']]

/**
 * @param withProject Lays a project with the files that it names.
 * @param {{ takesResults: readonly string[] }} known Subcommands with --use, of the program's own help.
 */
export function ownDoors(withProject) {
  const laid = (more) => withProject(PROJECTS[0], more)
  return {
    earlier: (chance, { takesResults, light }) => {
      const stage = chance.of(Object.keys(made().results))
      const anyway = chance.of([[], [], ['--use-anyway']])
      const form = chance.of(FORMS)
      // A packet takes as long as thirty others, so that it is asked for with what is refused.
      const subcommand = chance.of(
        takesResults.filter((name) => name !== 'draw-permit' || chance.chance(light ? 0.7 : 0.1)),
      )
      const args = {
        'draw-permit': ['draw-permit', 'project.yaml', '--draft', '--out', 'out.bin'],
        'fill-form': ['fill-form', 'project.yaml', 'forms/form.pdf', 'forms/mapping.yaml', '--preview'],
        'write-proposal': ['write-proposal', 'project.yaml', '--check', ...form],
      }[subcommand] ?? [subcommand, 'project.yaml', ...form]
      const sound = made().results[stage]
      const isQuick = light && subcommand === 'draw-permit'
      const text = isQuick ? mutateText(chance, sound) : damagedJson(chance, sound)
      const more = subcommand === 'fill-form' ? { 'forms/form.pdf': FORM, 'forms/mapping.yaml': MAPPING } : {}
      return {
        files: laid({ 'r.json': text, ...more }),
        args: [...args, '--use', 'r.json', ...anyway],
      }
    },
    verify: (chance) => {
      const { results, lines, journal, baseline, record } = made()
      const stage = chance.of(Object.keys(results))
      const text = chance.of([
        () => damagedJson(chance, results[stage]),
        () => damagedJson(chance, results[stage]),
        () => damagedJson(chance, baseline),
        () => damagedJson(chance, record),
        () => damagedLines(chance, lines),
        () => damagedLines(chance, journal),
      ])()
      const anew = chance.of([[], ['--project', 'project.yaml'], ['--project', 'project.yaml', '--set', 'title=x']])
      return { files: laid({ 'r.json': text }), args: ['verify-file', 'r.json', ...anew, ...chance.of(FORMS)] }
    },
    paper: (chance) => {
      const sound = Buffer.from(made().paper, 'base64')
      const paper = chance.chance(0.2) ? sound : damaged(1 + chance.below(1e6), sound)
      const signature = signatureOf('p.pdf', chance.of([sound, paper]), chance.below(2))
      const { own, open } = keyOf(0)
      const files = {
        'p.pdf': paper,
        'p.pdf.sig': chance.chance(0.5) ? signature : mutateText(chance, signature),
        'open.pem': chance.chance(0.7) ? open : mutateText(chance, open),
        'own.pem': chance.chance(0.5) ? own : mutateText(chance, own),
      }
      const more = chance.of([
        [],
        ['--key', 'open.pem'],
        ['--key', 'open.pem'],
        ['--key', 'own.pem'],
        ['--sign', 'own.pem', '--force'],
        ['--sign', 'open.pem'],
        ['--project', 'project.yaml'],
      ])
      return { files: laid(files), args: ['verify-file', 'p.pdf', ...more, ...chance.of(FORMS)] }
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
        ...chance.of([[], ['--json'], ['--junit', 'out.xml'], ['--tolerance', '2%'], ['--update-baseline']]),
      ],
    }),
    journal: (chance) => {
      const text = damagedLines(chance, made().journal)
      const form = chance.of([[], ['--jsonl'], ['--jsonl'], ['--json'], ['--csv'], ['--junit', 'out.xml']])
      const anyway = chance.of([[], [], ['--use-anyway']])
      return {
        files: laid({ 'j.jsonl': (folder) => journalIn(folder, text), 'houses.csv': JOURNAL_TABLE }),
        args: [...JOURNAL_RUN, '--journal', 'j.jsonl', '--resume', ...anyway, ...form],
      }
    },
    parts: (chance) => {
      const lines = made().lines.trimEnd().split('\n')
      const at = chance.below(lines.length + 1)
      const parts = [lines.slice(0, at), lines.slice(at)].map(
        (part) => `${part.join('\n')}${part.length > 0 ? '\n' : ''}`,
      )
      const hurt = chance.below(2)
      if (parts[hurt] !== '') parts[hurt] = damagedLines(chance, parts[hurt])
      return {
        files: { 'a.jsonl': parts[0], 'b.jsonl': parts[1] },
        args: [
          'run-fleet',
          '--merge',
          chance.of(['*.jsonl', 'b.jsonl']),
          'a.jsonl',
          ...chance.of([[], ['--jsonl'], ['--json']]),
        ],
      }
    },
    record: (chance, { light }) => {
      // With its issues listed, a record that is taken has a whole packet drawn.
      const listed = chance.chance(light ? 0 : 0.5)
      const issues = ['A', 'B'].map((number) => ({ number, date: '2026-03-02', text: 'For permit' }))
      const data = { ...PROJECT_DATA[0], document: { ...PROJECT_DATA[0].document, revision: 'B', revisions: issues } }
      const project = listed ? { 'project.yaml': stringify(data) } : {}
      return {
        files: laid({ ...project, 's.json': damagedJson(chance, made().record) }),
        args: ['draw-permit', 'project.yaml', '--draft', '--out', 'out.bin', '--since', 's.json'],
      }
    },
  }
}
