export { checkBills, type BillsInput } from './check-bills.js'
export type { BillLineCheck, CheckedBill, CheckedBillsValues, ExplanationValues } from './check-values.js'
export type { DayCount, StatedLine } from './paid-bill.js'
