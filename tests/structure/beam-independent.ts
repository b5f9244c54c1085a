import type { BeamModel } from '../../src/structure/index.js'

/**
 * An independent solution of the same beam: displacement method with two degrees of freedom a node (deflection times EI and
 * rotation times EI), cubic elements between all supports, ends and load borders, dense elimination.
 */
export function finiteElementBeam(beam: BeamModel): { reactionsLb: number[]; deflectionAt: (x: number) => number } {
  const marks = [beam.startIn, beam.endIn, ...beam.supportsIn, ...beam.loads.flatMap((l) => [l.fromIn, l.toIn])]
  const nodes = [...new Set(marks.map((x) => Number(x.toFixed(6))))].sort((a, b) => a - b)
  const n = nodes.length * 2
  const K = Array.from({ length: n }, () => new Float64Array(n))
  const F = new Float64Array(n)
  const put = (i: number, j: number, v: number): void => {
    const row = K[i]
    if (row !== undefined) row[j] = (row[j] ?? 0) + v
  }
  for (let e = 0; e + 1 < nodes.length; e++) {
    const [a, b] = [nodes[e] ?? 0, nodes[e + 1] ?? 0]
    const h = b - a
    const k = [
      [12, 6 * h, -12, 6 * h],
      [6 * h, 4 * h * h, -6 * h, 2 * h * h],
      [-12, -6 * h, 12, -6 * h],
      [6 * h, 2 * h * h, -6 * h, 4 * h * h],
    ]
    for (const [i, row] of k.entries()) for (const [j, v] of row.entries()) put(2 * e + i, 2 * e + j, v / h ** 3)
    const middle = (a + b) / 2
    const w = beam.loads.filter((l) => l.fromIn < middle && middle < l.toIn).reduce((sum, l) => sum + l.lbPerIn, 0)
    const f = [(w * h) / 2, (w * h * h) / 12, (w * h) / 2, (-w * h * h) / 12]
    for (const [i, v] of f.entries()) F[2 * e + i] = (F[2 * e + i] ?? 0) + v
  }
  const held = beam.supportsIn.map((x) => 2 * nodes.indexOf(Number(x.toFixed(6))))
  const free = Array.from({ length: n }, (_, i) => i).filter((i) => !held.includes(i))
  const u = new Float64Array(n)
  const solved = eliminate(
    free.map((i) => free.map((j) => K[i]?.[j] ?? 0)),
    free.map((i) => F[i] ?? 0),
  )
  for (const [index, i] of free.entries()) u[i] = solved[index] ?? 0
  const reactionsLb = held.map(
    (i) => (F[i] ?? 0) - (K[i] ?? new Float64Array(n)).reduce((sum, v, j) => sum + v * (u[j] ?? 0), 0),
  )
  return { reactionsLb, deflectionAt: (x) => u[2 * nodes.indexOf(Number(x.toFixed(6)))] ?? Number.NaN }
}

function eliminate(A: number[][], b: number[]): number[] {
  const n = b.length
  for (let c = 0; c < n; c++) {
    let p = c
    for (let r = c + 1; r < n; r++) if (Math.abs(A[r]?.[c] ?? 0) > Math.abs(A[p]?.[c] ?? 0)) p = r
    ;[A[c], A[p]] = [A[p] ?? [], A[c] ?? []]
    ;[b[c], b[p]] = [b[p] ?? 0, b[c] ?? 0]
    for (let r = c + 1; r < n; r++) {
      const factor = (A[r]?.[c] ?? 0) / (A[c]?.[c] ?? 1)
      if (factor === 0) continue
      for (let k = c; k < n; k++) (A[r] ?? [])[k] = (A[r]?.[k] ?? 0) - factor * (A[c]?.[k] ?? 0)
      b[r] = (b[r] ?? 0) - factor * (b[c] ?? 0)
    }
  }
  const x = Array.from({ length: n }, () => 0)
  for (let r = n - 1; r >= 0; r--) {
    let sum = b[r] ?? 0
    for (let k = r + 1; k < n; k++) sum -= (A[r]?.[k] ?? 0) * (x[k] ?? 0)
    x[r] = sum / (A[r]?.[r] ?? 1)
  }
  return x
}
