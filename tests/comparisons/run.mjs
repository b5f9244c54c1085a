// Bundles one comparison script and runs it: node tests/comparisons/run.mjs NAME [arguments]
import { fileURLToPath } from 'node:url'
import { runTyped } from '../run-typed.mjs'

const [name, ...rest] = process.argv.slice(2)
process.exitCode = await runTyped(fileURLToPath(new URL(`${name}.ts`, import.meta.url)), rest)
