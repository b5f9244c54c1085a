import { BUILD, sayBuild } from '../../seal/index.js'
import type { Finding } from '../../worksheet/index.js'
import { isOurBuild } from './known-file.js'
import type { Verified } from './sections.js'

const finding = (severity: Finding['severity'], id: string, message: string, fix: string): Finding => ({
  severity,
  id,
  message,
  where: '',
  fix,
})

/** More lines are counted and not named. */
const MOST_NAMED = 10

/** What is wrong with a file, or to be known of it. */
export function tellFile({ known }: Verified): Finding[] {
  if (known === undefined) return []
  const { parts, broken, kind } = known
  const changed = parts.filter((part) => !part.isWhole)
  const told: Finding[] = []
  if (changed.length > 0) {
    const lines = changed.map(({ line, name }) => (line === undefined ? name : `line ${line} (${name})`))
    const message =
      parts.length === 1 && changed[0]?.line === undefined
        ? 'not as it was written: its seal does not fit, so that it was damaged or changed'
        : `not as written: ${some(lines)}; their seals do not fit, so that they were damaged or changed`
    told.push(finding('error', 'verify.changed', message, 'Do not rely on it; have it made again, or get it again.'))
  }
  if (broken.length > 0) {
    const message = `no line of this program, or cut off: line ${some(broken.map(String))}`
    told.push(
      finding('error', 'verify.broken-lines', message, 'Get the file again; run-fleet --resume ends its lines.'),
    )
  }
  const others = [...new Set(parts.filter((part) => !isOurBuild(part)).map(({ build }) => build))]
  if (others.length > 0 && kind !== 'packet record') {
    const by = others.map((build) => (build === null ? 'a build without a name' : sayBuild(build))).join(', ')
    const message = `made by ${by}; this is ${sayBuild(BUILD)}: figures may differ although nothing was changed`
    told.push(finding('note', 'verify.other-build', message, 'To compare figures, use the build that made it.'))
  }
  return told
}

export function tellComparison({ comparison }: Verified): Finding[] {
  if (comparison === undefined) return []
  const { isSameProject, differences, notCompared, of } = comparison
  const told: Finding[] = []
  if (!isSameProject) {
    told.push(
      finding(
        'error',
        'verify.other-project',
        'the file was not made from this project with these --set values: the hashes differ',
        'Give the project as it was, with the same --set values in the same order.',
      ),
    )
  }
  if (differences.length > 0) {
    const count = differences.length === 1 ? 'one value differs' : `${differences.length} values differ`
    const message = `${of}: ${count} when worked out anew`
    told.push(finding('error', 'verify.differs', message, 'The table lists them; make the file again.'))
  }
  if (notCompared.length > 0) {
    const message = `not compared, as options of its run made it: ${notCompared.join(', ')}`
    told.push(finding('warning', 'verify.not-compared', message, 'Run the subcommand again with those options.'))
  }
  return told
}

export function tellSignature({ signature, signed }: Verified, wished: string | undefined): Finding[] {
  if (wished !== undefined && signed === undefined) {
    const message = 'not signed, as it is not as it was written'
    return [finding('error', 'verify.not-signed', message, 'Sign a file that is whole.')]
  }
  if (signature?.standing !== 'bad') return []
  const message = `the signature does not fit: ${signature.says}`
  return [finding('error', 'verify.bad-signature', message, 'Do not rely on the file; ask its sender.')]
}

function some(names: readonly string[]): string {
  const rest = names.length - MOST_NAMED
  return `${names.slice(0, MOST_NAMED).join(', ')}${rest > 0 ? ` and ${rest} more` : ''}`
}
