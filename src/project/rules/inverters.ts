import type { Rule } from './rule.js'

/** Figures of an inverter's data sheet that cannot stand together. */
export const checkInverters: Rule = (project, report) => {
  for (const [id, inverter] of Object.entries(project.equipment.inverters ?? {})) {
    const path = ['equipment', 'inverters', id]
    const { weighted_efficiency_pct: weighted, efficiency_curve: curve } = inverter
    if (weighted === undefined && curve === undefined) {
      const message = "missing; give the efficiency, for example 'weighted_efficiency_pct: 97', or efficiency_curve"
      report([...path, 'weighted_efficiency_pct'], message, 'parent')
    } else if (weighted !== undefined && curve !== undefined) {
      report([...path, 'efficiency_curve'], 'weighted_efficiency_pct stands beside it; keep one of them', 'key')
    }
    curve?.forEach(({ load_pct: load }, i) => {
      const before = curve[i - 1]?.load_pct
      if (before === undefined || load > before) return
      const message = `${load} % stands after ${before} %; list the points by increasing load, each load once`
      report([...path, 'efficiency_curve', i, 'load_pct'], message)
    })
    const { mppt_min_v: low, mppt_max_v: high } = inverter
    if (low !== undefined && high !== undefined && low >= high) {
      report([...path, 'mppt_min_v'], `${low} V is not below mppt_max_v ${high} V; are the two swapped?`)
    }
  }
}
