import type { SubcommandEntry } from './subcommand.js'

/** Every subcommand, in the order of the job. A new one is a file in commands/ and a line here. */
export const SUBCOMMANDS: readonly SubcommandEntry[] = [
  {
    name: 'new-project',
    summary: 'start a project file',
    load: () => import('./commands/new-project.js'),
  },
  {
    name: 'list-sites',
    summary: 'find weather sites by name or by place',
    load: () => import('./commands/list-sites.js'),
  },
  {
    name: 'add-equipment',
    summary: 'write data sheets into an equipment file',
    load: () => import('./commands/add-equipment.js'),
  },
  {
    name: 'list-equipment',
    summary: 'what files hold, and what of it fits a project',
    load: () => import('./commands/list-equipment.js'),
  },
  {
    name: 'check-project',
    summary: 'tell what is wrong, missing or assumed',
    load: () => import('./commands/check-project.js'),
  },
  {
    name: 'estimate-yield',
    summary: 'what the roof will produce, month by month',
    load: () => import('./commands/estimate-yield.js'),
  },
  {
    name: 'choose-size',
    summary: 'how many modules are worth buying under your tariff',
    load: () => import('./commands/choose-size.js'),
  },
  {
    name: 'size-wire',
    summary: 'what wire, in what pipe, behind which breaker, and why',
    load: () => import('./commands/size-wire.js'),
  },
  {
    name: 'space-mounts',
    summary: 'where each mount goes, and whether everything holds',
    load: () => import('./commands/space-mounts.js'),
  },
  {
    name: 'draw-permit',
    summary: 'drawings for the building department, as PDF, SVG and DXF',
    load: () => import('./commands/draw-permit.js'),
  },
  {
    name: 'fill-form',
    summary: 'a fillable PDF form of the city or the utility, filled in',
    load: () => import('./commands/fill-form.js'),
  },
  {
    name: 'write-application',
    summary: 'what the utility asks before it connects the system',
    load: () => import('./commands/write-application.js'),
  },
  {
    name: 'price-bom',
    summary: 'what to buy in whole packs, how to cut it, what it costs',
    load: () => import('./commands/price-bom.js'),
  },
  {
    name: 'compare-parts',
    summary: 'which of the listed modules and inverters pay best',
    load: () => import('./commands/compare-parts.js'),
  },
  {
    name: 'plan-work',
    summary: 'the work on the roof in order, with the numbers to hold to',
    load: () => import('./commands/plan-work.js'),
  },
  {
    name: 'write-handover',
    summary: 'the record of the tests, and what the owner keeps',
    load: () => import('./commands/write-handover.js'),
  },
  {
    name: 'payback',
    summary: 'what it saves, when it is paid back, and how sure that is',
    load: () => import('./commands/payback.js'),
  },
  {
    name: 'write-proposal',
    summary: 'the written offer for the customer, as PDF and web page',
    load: () => import('./commands/write-proposal.js'),
  },
  {
    name: 'review-output',
    summary: 'whether measured kWh are what those days should give',
    load: () => import('./commands/review-output.js'),
  },
  {
    name: 'import-rate',
    summary: 'a rate of the public database as a tariff of a project',
    load: () => import('./commands/import-rate.js'),
  },
  {
    name: 'check-bill',
    summary: 'whether your tariff gives the bills that you paid',
    load: () => import('./commands/check-bill.js'),
  },
  {
    name: 'run-fleet',
    summary: 'all of it for many houses, and what moved since last time',
    load: () => import('./commands/run-fleet.js'),
  },
  {
    name: 'watch-fleet',
    summary: 'production of many houses, what costs most first',
    load: () => import('./commands/watch-fleet.js'),
  },
  {
    name: 'verify-file',
    summary: 'whether a file is as it was written, and of this project',
    load: () => import('./commands/verify-file.js'),
  },
  {
    name: 'explain',
    summary: 'what a finding or a word of the trade means',
    load: () => import('./commands/explain.js'),
  },
  {
    name: 'complete-shell',
    summary: 'a completion script for bash, zsh or fish',
    load: () => import('./commands/complete-shell.js'),
  },
]
