import { test } from 'vitest'
import { cutStock } from '/work/main/src/materials/index.js'
test('bench', () => {
  let seed = 7
  const rnd = () => (seed = (seed * 1103515245 + 12345) % 2147483648) / 2147483648
  for (const [n, lo, hi, stocks] of [[20,60,168,[168]],[40,60,168,[168,204]],[40,20,168,[168,204]],[60,20,100,[168,204]],[40,10,60,[168]],[60,10,60,[168,204]], [30,30,168,[132,168,204]]] as const) {
    const ts: string[] = []
    for (let k = 0; k < 4; k++) {
      const pieces = Array.from({ length: n }, (_, i) => ({ for: String(i), lengthIn: Math.round((lo + rnd() * (hi - lo)) * 16) / 16 }))
      const t = performance.now()
      const plan = cutStock(pieces, stocks.map((lengthIn) => ({ lengthIn })), 0.125)
      ts.push(`${(performance.now() - t).toFixed(0)}ms ${plan.proven} ${plan.sticks.length}/${plan.leastSticks}`)
    }
    console.log(n, lo, hi, stocks.join(), ts.join(' | '))
  }
}, 600000)
