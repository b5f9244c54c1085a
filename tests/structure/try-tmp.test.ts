import { test } from 'vitest'
import { spaceMounts } from '../../src/structure/index.js'
import { demoArrangement, demoProject } from './demo-house.js'
test('try', () => {
  for (const o of [{}, {optimise:true}, {spacingIn:48}]) {
    const ts=[]
    for (let i=0;i<5;i++){ const t=performance.now(); spaceMounts(demoProject(), demoArrangement(), o); ts.push((performance.now()-t).toFixed(0)) }
    console.log(JSON.stringify(o), ts.join(' '))
  }
})
