/** When a tool is needed. */
export type ToolCondition =
  | 'always'
  | 'rail'
  | 'lag'
  | 'roof_screw'
  | 'metal_raceway'
  | 'emt'
  | 'pvc'
  | 'raceway'
  | 'strings'
  | 'wiring'

export interface Tool {
  /** As a person names it under materials.tools_owned. */
  readonly id: string
  readonly name: string
  readonly neededFor: ToolCondition
}

/** Tools of the job. Habit of the trade, no source. */
export const TOOLS: readonly Tool[] = [
  { id: 'fall-arrest-kit', name: 'Fall-arrest kit: harness, rope, anchor', neededFor: 'always' },
  { id: 'ladder', name: 'Extension ladder with stand-off', neededFor: 'always' },
  { id: 'tape-and-chalk', name: 'Tape measure and chalk line', neededFor: 'always' },
  { id: 'drill', name: 'Drill with bits for the lead holes', neededFor: 'lag' },
  { id: 'rafter-finder', name: 'Rafter finder', neededFor: 'lag' },
  { id: 'impact-driver', name: 'Impact driver with sockets', neededFor: 'roof_screw' },
  { id: 'caulking-gun', name: 'Caulking gun', neededFor: 'roof_screw' },
  { id: 'torque-wrench', name: 'Torque wrench for clamps and rail bolts', neededFor: 'rail' },
  { id: 'metal-saw', name: 'Saw for aluminum rail and raceway', neededFor: 'rail' },
  { id: 'emt-bender', name: 'Bender for EMT', neededFor: 'emt' },
  { id: 'raceway-reamer', name: 'Reamer for metal raceway', neededFor: 'metal_raceway' },
  { id: 'pvc-heater', name: 'Heater for bending PVC conduit', neededFor: 'pvc' },
  { id: 'fish-tape', name: 'Fish tape', neededFor: 'raceway' },
  { id: 'torque-screwdriver', name: 'Torque screwdriver for terminals', neededFor: 'wiring' },
  { id: 'wire-strippers', name: 'Wire cutters and strippers', neededFor: 'wiring' },
  { id: 'multimeter', name: 'Multimeter rated for the voltages of the system', neededFor: 'wiring' },
  { id: 'lockout-kit', name: 'Lock and tag for the disconnect', neededFor: 'wiring' },
  { id: 'connector-crimper', name: 'Crimping tool and wrenches of the DC connectors', neededFor: 'strings' },
]
