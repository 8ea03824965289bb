/**
 * Ids are strings with a brand each, so that a dough's id cannot stand where a variety's is wanted.
 * Ids of new things derive from the command that made them: the same command makes the same ids everywhere.
 */
declare const kind: unique symbol
type Id<Kind extends string> = string & { readonly [kind]: Kind }

export type CommandId = Id<'command'>
export type DeviceId = Id<'device'>
export type BatchId = Id<'batch'>
export type LoadId = Id<'load'>
export type PlannedId = Id<'planned'>
export type KeepId = Id<'keep'>
export type UnsureId = Id<'unsure'>
export type DoughId = Id<'dough'>
export type VarietyId = Id<'variety'>
export type ShelfId = Id<'shelf'>
export type StationId = Id<'station'>
export type ToppingId = Id<'topping'>
export type PersonId = Id<'person'>
export type StepId = Id<'step'>
export type WeekdayId = Id<'weekday'>
export type NoteId = Id<'note'>
export type SetUpId = Id<'set-up'>
export type IngredientId = Id<'ingredient'>
export type PreparationId = Id<'preparation'>
export type FormulaId = Id<'formula'>
export type MixId = Id<'mix'>
export type BuildId = Id<'build'>
export type SpecialDayId = Id<'special-day'>
export type OrderId = Id<'order'>
export type StandingId = Id<'standing'>
export type KitchenStationId = Id<'kitchen-station'>
export type PortionId = Id<'portion'>
export type MenuItemId = Id<'menu-item'>
export type RunId = Id<'run'>

/** The only casts to ids; what may stand in one is checked where text comes in (`day/command-schema.ts`). */
export const commandId = (text: string) => text as CommandId
export const deviceId = (text: string) => text as DeviceId
export const batchId = (text: string) => text as BatchId
export const loadId = (text: string) => text as LoadId
export const plannedId = (text: string) => text as PlannedId
export const keepId = (text: string) => text as KeepId
export const unsureId = (text: string) => text as UnsureId
export const doughId = (text: string) => text as DoughId
export const varietyId = (text: string) => text as VarietyId
export const shelfId = (text: string) => text as ShelfId
export const stationId = (text: string) => text as StationId
export const toppingId = (text: string) => text as ToppingId
export const personId = (text: string) => text as PersonId
export const stepId = (text: string) => text as StepId
export const weekdayId = (text: string) => text as WeekdayId
export const noteId = (text: string) => text as NoteId
export const setUpId = (text: string) => text as SetUpId
export const ingredientId = (text: string) => text as IngredientId
export const preparationId = (text: string) => text as PreparationId
export const formulaId = (text: string) => text as FormulaId
export const mixId = (text: string) => text as MixId
export const buildId = (text: string) => text as BuildId
export const specialDayId = (text: string) => text as SpecialDayId
export const orderId = (text: string) => text as OrderId
export const standingId = (text: string) => text as StandingId
export const kitchenStationId = (text: string) => text as KitchenStationId
export const portionId = (text: string) => text as PortionId
export const menuItemId = (text: string) => text as MenuItemId
export const runId = (text: string) => text as RunId

/** The id of the n-th new thing that a command makes. @example derivedId(commandId('k7'), 2) // 'k7.2' */
export function derivedId(command: CommandId, n: number): string {
  return `${command}.${n}`
}
