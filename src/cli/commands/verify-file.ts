import type { Command } from 'commander'
import { FileError } from '../../files/index.js'
import { LARGEST_DOCUMENT_BYTES, readNamedBytes } from '../../project/index.js'
import { sha256Of } from '../../seal/index.js'
import { TooMuchJson } from '../../values/index.js'
import { Worksheet } from '../../worksheet/index.js'
import { UsageError } from '../errors.js'
import { knownFile, type KnownFile } from '../verify/known-file.js'
import { checkSignature, signatureOf } from '../verify/sign.js'
import { tellComparison, tellFile, tellSignature } from '../verify/tell.js'
import { verifySections, verifyTable, verifyValues, type Verified } from '../verify/sections.js'
import { workOutAnew } from '../verify/work-out-anew.js'
import { writesReport } from '../options.js'
import type { CommandContext, CommandOutcome, Example } from '../subcommand.js'

export const examples: readonly [Example, Example, Example, Example] = [
  { line: 'verify-file packet.pdf', does: 'which build made it, from which project, and whether it is as written' },
  {
    line: 'verify-file wire.json --project project.yaml',
    does: 'also work it out anew, and list what differs by its path',
  },
  { line: 'verify-file packet.pdf --sign my-key.pem', does: 'sign it with your own Ed25519 key, into packet.pdf.sig' },
  { line: 'verify-file packet.pdf --key their-key.pub.pem', does: 'check that signature' },
]

interface Options {
  readonly project?: string
  readonly set: readonly string[]
  readonly allowOutside?: boolean
  readonly sign?: string
  readonly key?: string
}

const collect = (value: string, before: readonly string[]): string[] => [...before, value]

export function configure(command: Command): void {
  writesReport(
    command
      .argument('<file>', 'a packet or a paper (PDF), a result or fleet lines (JSON), a baseline or a journal')
      .option('--project <project.yaml>', 'work it out anew from this project, and list what differs')
      .option('--set <path=value>', 'as when the file was made (repeatable, in the same order)', collect, [])
      .option('--allow-outside', 'let the project name files outside its own folder')
      .option('--sign <key.pem>', 'sign it with your own private Ed25519 key; writes FILE.sig')
      .option('--key <pub.pem>', 'check FILE.sig with this public Ed25519 key'),
  ).addHelpText(
    'after',
    '\nA key pair of your own: openssl genpkey -algorithm ed25519 -out my-key.pem; openssl pkey -in my-key.pem -pubout -out my-key.pub.pem\n' +
      'Exit codes: 0 good; 1 changed, or differs, or a bad signature; 3 cannot be read, or not of this program.',
  )
}

export async function run(context: CommandContext, options: Options): Promise<CommandOutcome> {
  if (options.sign !== undefined && options.key !== undefined) {
    throw new UsageError('--sign makes a signature and --key checks one; give one of them')
  }
  if (options.project === undefined && (options.set.length > 0 || options.allowOutside === true)) {
    throw new UsageError('--set and --allow-outside go with --project')
  }
  const [path = '-'] = context.args
  const bytes = readNamedBytes(path, LARGEST_DOCUMENT_BYTES)
  const known = readKnown(path, bytes, options.sign !== undefined || options.key !== undefined)
  if (known === undefined && options.sign === undefined && options.key === undefined) {
    throw new FileError(
      `${path} bears no seal of this program: a packet, a PDF of a proposal, an application or a hand-over, a JSON result or fleet lines do; text, CSV and drawings do not`,
    )
  }
  const isGood = known?.parts.every((part) => part.isWhole) !== false && (known?.broken.length ?? 0) === 0
  const signed = options.sign !== undefined && isGood ? signatureOf(path, bytes, options.sign) : undefined
  const { project: projectPath, set: overrides, allowOutside = false } = options
  if (known === undefined && projectPath !== undefined) {
    throw new UsageError(`--project: ${path} bears no seal of this program, so there is nothing to work out anew`)
  }
  const verified: Verified = {
    path,
    sha256: sha256Of(bytes),
    known,
    comparison:
      known === undefined || projectPath === undefined
        ? undefined
        : await workOutAnew(known, { path: projectPath, overrides, allowOutside }),
    signature: options.sign === undefined ? checkSignature(path, bytes, options.key) : undefined,
    signed,
  }
  const sheet = new Worksheet()
  for (const finding of [...tellFile(verified), ...tellComparison(verified), ...tellSignature(verified, options.sign)])
    sheet.find(finding)
  return {
    files: signed === undefined ? [] : [signed.file],
    report: {
      title: `Verification: ${path}`,
      stage: 'verify',
      sections: verifySections(verified),
      csv: verifyTable(verified),
      result: sheet.result(verifyValues(verified)),
    },
  }
}

/** @param mayBeAny Whether a file of any kind is taken, which is the case with keys. */
function readKnown(path: string, bytes: Uint8Array, mayBeAny: boolean): KnownFile | undefined {
  try {
    return knownFile(bytes)
  } catch (error) {
    if (!(error instanceof TooMuchJson)) throw error
    if (mayBeAny) return undefined
    throw new FileError(`${path} bears no seal of this program, which writes no such file: ${error.message}`)
  }
}
