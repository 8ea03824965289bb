import type { ComponentChildren } from 'preact'
import { useState } from 'preact/hooks'
import { inUse } from '../../../../shared-core/shop/in-order.ts'
import { TextField } from '../fields/text-field.tsx'
import type { Listed, ListKind } from '../lists.ts'
import { added, hasRoom, moved, nameMost } from '../lists.ts'
import type { SetUpProps } from '../set-up-parts.ts'
import { AddForm } from './add-form.tsx'
import { RetiredList } from './retired-list.tsx'
import { Wrong } from './wrong.tsx'

export interface ListPartProps<Entity extends Listed> {
  readonly kind: ListKind<Entity>
  readonly parts: SetUpProps
  /** What a new one is like. */
  readonly like: Entity
  /** One line of what it is, beside its name. */
  readonly line: (entity: Entity) => string
  /** Which of them this list holds; left out: all. */
  readonly among?: (entity: Entity) => boolean
  /** Further fields of one. */
  readonly children?: (entity: Entity, set: (value: Entity) => void) => ComponentChildren
}

/** A list of the set-up as ruled lines; the one that is touched opens where it stands. */
export function ListPart<Entity extends Listed>(props: ListPartProps<Entity>) {
  const { kind, parts, like, among = () => true } = props
  const { draft, say, misfits, change } = parts
  const [openId, setOpenId] = useState<string | null>(null)
  const shown = inUse(kind.of(draft)).filter(among)
  return (
    <div class="setup-list">
      <Wrong misfits={misfits.filter((one) => one.entity === kind.entity && one.id === null)} say={say} />
      {shown.length === 0 && <p class="setup-hint">{say.list.none}</p>}
      <ul>
        {shown.map((entity) => (
          <Row
            key={entity.id}
            {...props}
            entity={entity}
            isOpen={entity.id === openId}
            onToggle={() => setOpenId(entity.id === openId ? null : entity.id)}
          />
        ))}
      </ul>
      <AddForm
        label={say.list.newName[kind.entity]}
        most={nameMost(kind)}
        isFull={!hasRoom(kind, draft)}
        say={say}
        onAdd={(name) => {
          const entity = added(kind, draft, like, name)
          change([kind.change(entity)])
          setOpenId(entity.id)
        }}
      />
      <RetiredList
        entities={[...kind.of(draft).values()].filter((entity) => entity.retired && among(entity))}
        say={say}
        onBack={(entity) => change([kind.change({ ...entity, retired: false })])}
      />
    </div>
  )
}

interface RowProps<Entity extends Listed> extends ListPartProps<Entity> {
  readonly entity: Entity
  readonly isOpen: boolean
  readonly onToggle: () => void
}

function Row<Entity extends Listed>({
  kind,
  parts,
  line,
  children,
  entity,
  isOpen,
  onToggle,
  among,
}: RowProps<Entity>) {
  const { draft, say, misfits, change } = parts
  const set = (value: Entity) => change([kind.change(value)])
  const wrong = misfits.filter((one) => one.entity === kind.entity && one.id === entity.id)
  const move = (by: -1 | 1) => moved(kind, draft, { id: entity.id, by, ...(among === undefined ? {} : { among }) })
  const [up, down] = [move(-1), move(1)]
  return (
    <li class={isOpen ? 'setup-row setup-row-open' : 'setup-row'} data-entity={entity.id}>
      <button type="button" class="setup-row-head" aria-expanded={isOpen} onClick={onToggle}>
        <span class="setup-row-name">{entity.name}</span>
        <span class="setup-row-line">{line(entity)}</span>
      </button>
      {!isOpen && <Wrong misfits={wrong} say={say} />}
      {isOpen && (
        <div class="setup-row-body">
          <TextField
            label={say.list.name}
            value={entity.name}
            most={nameMost(kind)}
            rule={say.form.nameRule(nameMost(kind))}
            onChange={(name) => set({ ...entity, name })}
          />
          {children?.(entity, set)}
          <Wrong misfits={wrong} say={say} />
          <div class="setup-acts">
            <button type="button" disabled={up.length === 0} onClick={() => change(up)}>
              ↑ {say.list.up}
            </button>
            <button type="button" disabled={down.length === 0} onClick={() => change(down)}>
              ↓ {say.list.down}
            </button>
            <button type="button" onClick={() => set({ ...entity, retired: true })}>
              {say.list.retire}
            </button>
          </div>
        </div>
      )}
    </li>
  )
}
