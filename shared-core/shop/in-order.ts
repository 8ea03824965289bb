interface Listed {
  readonly id: string
  readonly order: number
  readonly retired: boolean
}

/** What is in use, in the shop's order; ties by id, so that every screen lists alike. */
export function inUse<Entity extends Listed>(entities: ReadonlyMap<string, Entity>): Entity[] {
  return inOrder(entities).filter((entity) => !entity.retired)
}

/** All, the retired ones last, in the shop's order; ties by id. */
export function inOrder<Entity extends Listed>(entities: ReadonlyMap<string, Entity>): Entity[] {
  return [...entities.values()].sort(
    (a, b) => Number(a.retired) - Number(b.retired) || a.order - b.order || (a.id < b.id ? -1 : 1),
  )
}
