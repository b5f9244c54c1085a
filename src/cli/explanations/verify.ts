import { PRACTICE, type Explanations } from './explanation.js'

const SEAL = 'A seal is SHA-256 over all else in the file. It shows damage and slips; anybody can write a new one.'

/** Findings about a file that somebody hands over. */
export const VERIFY: Explanations = {
  'verify.changed': {
    means: 'The file, or a line of it, is not what the program wrote.',
    rule: SEAL,
    sources: [PRACTICE],
    fix: 'Do not rely on it; have it made again, or get it again from where it was made.',
  },
  'verify.broken-lines': {
    means: 'Some lines of the file are none that the program writes, or are cut off.',
    rule: 'Each line of a fleet is a piece of JSON with its own seal.',
    sources: [PRACTICE],
    fix: 'Get the file again, or let run-fleet --resume finish it.',
  },
  'verify.other-build': {
    means: 'Another build of the program made the file.',
    rule: 'A build is named by the SHA-256 of its files. Two builds may work the same project out differently.',
    sources: [PRACTICE],
    fix: 'To compare figures, use the build that made the file.',
  },
  'verify.other-project': {
    means:
      'The file was made from another project, or from this one before it, a file that it names, or a --set changed.',
    rule: 'A result bears the SHA-256 of the project file, the files that it names and the --set values in their order.',
    sources: [PRACTICE],
    fix: 'Give the project as it was, with the same --set values in the same order.',
  },
  'verify.differs': {
    means: 'Worked out anew, values are not those of the file.',
    rule: 'The same build and the same project give the same values.',
    sources: [PRACTICE],
    fix: 'Look whether build and project are the same; if they are, do not rely on the file.',
  },
  'verify.not-compared': {
    means: 'Parts of the result come from options of its run, which a project alone does not tell.',
    rule: 'Only what follows from the project is worked out anew.',
    sources: [PRACTICE],
    fix: 'Run the subcommand again with those options and compare its output.',
  },
  'verify.bad-signature': {
    means: 'The signature beside the file is not one of these bytes by this key.',
    rule: 'Ed25519 over the bytes of the file (RFC 8032).',
    sources: [PRACTICE],
    fix: 'Do not rely on the file; ask its sender, by a way that you know.',
  },
  'verify.not-signed': {
    means: 'A file that is not as it was written is not signed.',
    rule: SEAL,
    sources: [PRACTICE],
    fix: 'Make the file again, then sign it.',
  },
}
