import type { Need } from './need.js'
import type { LabelNeed } from './take-off-job.js'

/** The labels of the code edition, each as often as the drawings place it. */
export function takeLabels(labels: readonly LabelNeed[], edition: string): Need[] {
  return labels.map(({ id, count, counted, reflective, look, text }) => ({
    item: `label.${id}`,
    general: 'label',
    name: `Label ${id}`,
    ...(reflective ? { must: 'reflective' } : {}),
    group: 'labels',
    unit: 'each',
    quantity: count,
    why: `${count} for ${edition}: ${counted}; make: ${look}; says: ${text} (labels of the permit packet)`,
  }))
}
