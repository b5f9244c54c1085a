import { mkdtempSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { beforeAll, describe, expect, it } from 'vitest'
import { BINARY, ensureBuilt, ROOT } from '../cli/binary.js'
import { execa } from 'execa'

/** Invented readings of five minutes. */
function fiveMinutes(days: number): string {
  const rows = ['time,kWh']
  const first = Date.UTC(2022, 0, 1)
  for (let at = 0; at < days * 288; at += 1) {
    const ms = first + at * 300_000
    const hour = ((ms / 3_600_000) % 24) - 12
    const kwh = Math.max(0, 0.4 * Math.cos((hour / 12) * Math.PI)) * (0.4 + 0.6 * Math.abs(Math.sin(at / 288 / 3)))
    rows.push(`${new Date(ms).toISOString().slice(0, 16).replace('T', ' ')},${kwh.toFixed(4)}`)
  }
  return `${rows.join('\n')}\n`
}

describe('a long table of readings', () => {
  beforeAll(ensureBuilt)
  /** Memory that rows as objects take is 0.95 kB a row; columns take a tenth of it. */
  it.skipIf(process.platform !== 'linux')('of three years of five minutes takes little memory', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'long-table-'))
    const table = join(folder, 'p.csv')
    writeFileSync(table, fiveMinutes(3 * 365))
    const told = join(folder, 'most.cjs')
    writeFileSync(
      told,
      // `resourceUsage` goes on from who started the program; what the system says of it begins anew.
      "const { readFileSync } = require('node:fs')\nprocess.on('exit', () => process.stderr.write(`most memory ${/VmHWM:\\s+(\\d+)/.exec(readFileSync('/proc/self/status', 'utf8'))[1]} kB\\n`))\n",
    )
    const args = ['--require', told, BINARY, 'review-output', 'examples/lark-hollow.yaml', table]
    const { stderr, stdout } = await execa(process.execPath, args, { cwd: ROOT, reject: false })
    expect(stdout).toContain('1095 (2022-01-01 to 2024-12-30, 0 missing)')
    const most = Number(/most memory (\d+) kB/u.exec(stderr)?.[1])
    expect(most).toBeGreaterThan(40_000)
    expect(most).toBeLessThan(300_000)
  })
})
