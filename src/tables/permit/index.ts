export { CHECKLIST, checklistIds } from './checklist.js'
export { LISTS, type ChecklistPoint, type ListName, type Supplier } from './point.js'
