/** What the demo shows as it opens: the rush in the morning, the oven changing over, or the second menu in it. */
export const DEMO_AT = ['morning', 'changeover', 'afternoon'] as const
export type DemoAt = (typeof DEMO_AT)[number]
