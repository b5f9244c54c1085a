import { describe, expect, it } from 'vitest'
import type { Project } from '../../src/project/index.js'
import { spaceMounts, type MountValues } from '../../src/structure/index.js'
import type { Result } from '../../src/worksheet/index.js'
import { block, demoProject, rectangle } from './demo-house.js'
import { randomFrom } from './random.js'

const SIZES = ['2x12', '2x10', '2x8', '2x6', '2x4'] as const
/** Each weaker and no denser than the one before. */
const WOODS = [
  ['Douglas Fir-Larch', 'Select Structural'],
  ['Douglas Fir-Larch', 'No. 1'],
  ['Douglas Fir-Larch', 'No. 2'],
  ['Hem-Fir', 'No. 2'],
  ['Eastern Softwoods', 'No. 2'],
  ['Eastern Softwoods', 'No. 3'],
] as const

interface Design {
  readonly windMph: number
  readonly snowPsf: number
  readonly size: number
  readonly wood: number
  readonly spanFt: number
  readonly spacingIn: number
  readonly offsetIn: number
  readonly rows: number
  readonly columns: number
  readonly xFt: number
  readonly layout: 'aligned' | 'staggered'
}

function randomDesign(random: () => number): Design {
  const whole = (least: number, most: number): number => least + Math.floor(random() * (most - least + 1))
  return {
    windMph: whole(90, 170),
    snowPsf: 10 * whole(0, 3),
    size: whole(0, SIZES.length - 2),
    wood: whole(0, WOODS.length - 2),
    spanFt: whole(120, 129) / 10,
    spacingIn: [16, 19.2, 24][whole(0, 2)] ?? 16,
    offsetIn: whole(0, 15),
    rows: whole(1, 2),
    columns: whole(2, 6),
    xFt: whole(80, 120) / 10,
    layout: random() < 0.5 ? 'aligned' : 'staggered',
  }
}

function solve(design: Design): Result<MountValues> {
  const project: Project = structuredClone(demoProject())
  const { structure } = project
  const [species, grade] = WOODS[design.wood] ?? WOODS[0]
  Object.assign(structure?.wind ?? {}, { basic_speed_mph: design.windMph })
  Object.assign(structure?.snow ?? {}, { ground_psf: design.snowPsf })
  Object.assign(structure ?? {}, { mount_layout: design.layout })
  Object.assign(structure?.framing?.['south'] ?? {}, {
    nominal_size: SIZES[design.size],
    species,
    grade,
    span_ft: design.spanFt,
    spacing_in: design.spacingIn,
    first_offset_in: design.offsetIn,
  })
  const modules = block(design.rows, design.columns, design.xFt, 2.2)
  return spaceMounts(project, { planes: [rectangle('south', 48, 16, 22)], modules })
}

/** Whether nothing fails, the warning about the strength of the rafters included. */
const passes = ({ values, findings }: Result<MountValues>): boolean =>
  findings.every(({ severity }) => severity !== 'error') && values.checks.every(({ ratio }) => ratio <= 1)

const HARDER: readonly (readonly [string, (design: Design, random: () => number) => Design])[] = [
  ['more wind', (d, random) => ({ ...d, windMph: d.windMph + 5 + Math.floor(30 * random()) })],
  ['more snow', (d, random) => ({ ...d, snowPsf: d.snowPsf + 5 + Math.floor(30 * random()) })],
  ['weaker wood', (d) => ({ ...d, wood: d.wood + 1 })],
  ['shallower rafters', (d) => ({ ...d, size: d.size + 1 })],
  ['a longer span', (d, random) => ({ ...d, spanFt: d.spanFt + 0.1 + 0.8 * random() })],
]

/** 250 designs in all. */
const DESIGNS_EACH = 50

describe('a harder case never gets less', () => {
  it.each(HARDER)('with %s', { timeout: 300_000 }, (what, harden) => {
    const random = randomFrom(20_260_302 + what.length)
    const less: string[] = []
    let bothPass = 0
    for (let i = 0; i < DESIGNS_EACH; i++) {
      const design = randomDesign(random)
      const [easy, hard] = [solve(design), solve(harden(design, random))]
      const told = `${i} ${JSON.stringify(design)}`
      if (passes(easy) && passes(hard)) bothPass += 1
      if (passes(hard) && !passes(easy)) less.push(`passes: ${told}`)
      // Where a harder case fails there is no number of mounts that would do. Mounts that stand closer for the sake of the
      // rafters, which is told, may be more than a harder case needs whose wind zones alone ask for it.
      const closer = easy.findings.some(({ id }) => id === 'structure.closer-for-rafters')
      if (passes(hard) && !closer && hard.values.counts.mounts < easy.values.counts.mounts)
        less.push(`fewer mounts: ${told}`)
      for (const [zone, spanIn] of Object.entries(hard.values.max_span_in)) {
        if (spanIn > (easy.values.max_span_in[zone] ?? Infinity) + 1e-9) less.push(`wider spacing in ${zone}: ${told}`)
      }
      const strength = (r: Result<MountValues>) =>
        r.values.checks.find(({ name }) => name === 'rafter bending strength')?.ratio ?? 0
      const sameMounts =
        JSON.stringify(easy.values.mounts.map((m) => m.x_in)) === JSON.stringify(hard.values.mounts.map((m) => m.x_in))
      if (sameMounts && strength(hard) < strength(easy) - 1e-9) less.push(`stronger rafters: ${told}`)
    }
    expect(less).toEqual([])
    // Otherwise nothing was compared.
    expect(bothPass).toBeGreaterThan(DESIGNS_EACH / 10)
  })
})
