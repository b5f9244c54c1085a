// Bundles one comparison script and runs it: node tests/comparisons/run.mjs NAME [arguments]
import { spawnSync } from 'node:child_process'
import { build } from 'esbuild'
import { mkdtempSync, rmSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { join } from 'node:path'

const [name, ...rest] = process.argv.slice(2)
const here = fileURLToPath(new URL('.', import.meta.url))
const folder = mkdtempSync(join(here, '.run-'))
try {
  const outfile = join(folder, `${name}.mjs`)
  await build({
    entryPoints: [join(here, `${name}.ts`)],
    outfile,
    bundle: true,
    platform: 'node',
    format: 'esm',
    packages: 'external',
    logLevel: 'error',
  })
  process.exitCode = spawnSync(process.execPath, [outfile, ...rest], { stdio: 'inherit' }).status ?? 1
} finally {
  rmSync(folder, { recursive: true })
}
