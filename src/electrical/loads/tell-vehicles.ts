import { demandVa, type LoadList } from './list-demand.js'
import { WHERE, type LoadJob } from './load-job.js'

/** Says what the load would be if outlets for vehicles, which stand in the list, counted whole. */
export function tellVehicles(load: LoadJob, { va: listVa, vehicleVa }: LoadList, firstVa: number, va: number): void {
  if (vehicleVa === 0) return
  const demand = (list: number) => demandVa(list, firstVa)
  const moreVa = demand(listVa - vehicleVa) + vehicleVa - demand(listVa)
  load.job.worksheet.find({
    severity: 'note',
    id: 'wire.load-vehicle',
    message: `${vehicleVa.toFixed(0)} VA for charging stand in the list of which a part counts; counted whole the load would be ${(va + moreVa).toFixed(0)} VA instead of ${va.toFixed(0)} VA`,
    where: WHERE,
    source: load.section('.57', 'secondary'),
    fix: 'Ask the authority when the larger figure would change the design',
  })
}
