import type { MountValues } from '../../structure/index.js'
import type { Fact, Section } from '../../report/index.js'

/** What an earthquake does to the array and the house. */
export function seismicSections({ seismic, array_weight_lb: weight }: MountValues): Section[] {
  const facts: Fact[] = [{ label: 'Earthquake', value: `${seismic.status}: ${seismic.reason}` }]
  if (seismic.fp_lb !== null && seismic.fp_per_weight !== null) {
    facts.push({
      label: 'Force on the array',
      value: `${seismic.fp_lb.toFixed(0)} lb, ${seismic.fp_per_weight.toFixed(3)} of its ${weight.toFixed(0)} lb, strength level`,
    })
  }
  if (seismic.per_mount_lb !== null) {
    facts.push({
      label: 'On one mount at most',
      value: `${seismic.per_mount_lb.toFixed(1)} lb sideways, allowable stress level (0.7 E)`,
    })
  }
  if (seismic.lateral_change_pct !== null) {
    facts.push({
      label: 'Sideways load of the house',
      value: {
        value: `${seismic.lateral_change_pct.toFixed(2)} % more, up to 10 % asks for no new check`,
        tone: seismic.lateral_passes === true ? 'good' : 'bad',
      },
    })
  }
  return [{ kind: 'facts', facts }]
}
