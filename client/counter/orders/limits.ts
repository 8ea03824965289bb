/** How long texts may be; the server refuses longer ones (`orders/order-command-schema.ts`, which screens do not fetch). */
export const MARK_CHARACTERS = 8
export const DETAIL_CHARACTERS = { name: 60, phone: 30, note: 300 } as const
