import { spawnSync } from 'node:child_process'
import { build } from 'esbuild'
import { mkdtempSync, rmSync } from 'node:fs'
import { basename, dirname, join } from 'node:path'

/**
 * Bundles a script in TypeScript and runs it.
 *
 * @param {string} script Its path.
 * @param {readonly string[]} args
 * @returns {Promise<number>} Its exit code.
 */
export async function runTyped(script, args) {
  const folder = mkdtempSync(join(dirname(script), '.run-'))
  try {
    const outfile = join(folder, `${basename(script, '.ts')}.mjs`)
    await build({
      entryPoints: [script],
      outfile,
      bundle: true,
      platform: 'node',
      format: 'esm',
      packages: 'external',
      logLevel: 'error',
    })
    return spawnSync(process.execPath, [outfile, ...args], { stdio: 'inherit' }).status ?? 1
  } finally {
    rmSync(folder, { recursive: true })
  }
}
