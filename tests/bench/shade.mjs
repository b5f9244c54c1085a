/** What is put into the template of the sample fleet for houses with shade (invented). */
export const SHADE = {
  tree: `  obstacles:
    maple:
      at: { x_ft: 24, y_ft: 2.5 }
      width_ft: 22
      height_ft: 30
      base_height_ft: 8
      transmittance: [0.6, 0.6, 0.5, 0.35, 0.15, 0.1, 0.1, 0.1, 0.15, 0.3, 0.5, 0.6]
      arrays: [main]`,
  chimney: `    obstructions:
      chimney: { kind: chimney, x_ft: 33, y_ft: 10, width_ft: 2.5, length_ft: 2.5, height_ft: 4, clearance_in: 6, serves_appliance: false }`,
  neighbour: `site_plan:
  up_azimuth_deg: 0
  lot: [{ x_ft: 0, y_ft: 0 }, { x_ft: 90, y_ft: 0 }, { x_ft: 90, y_ft: 120 }, { x_ft: 0, y_ft: 120 }]
  street: { name: Sample Lane, lot_line: 1 }
  buildings:
    house:
      name: House
      main: true
      corners: [{ x_ft: 29, y_ft: 36 }, { x_ft: 71, y_ft: 36 }, { x_ft: 71, y_ft: 68 }, { x_ft: 29, y_ft: 68 }]
    neighbour:
      name: Neighbour
      height_ft: 28
      corners: [{ x_ft: 0, y_ft: 30 }, { x_ft: 16, y_ft: 30 }, { x_ft: 16, y_ft: 60 }, { x_ft: 0, y_ft: 60 }]
  roof_planes:
    south:
      eave_left: { x_ft: 30, y_ft: 35 }
`,
}
