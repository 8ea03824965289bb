import { useState } from 'preact/hooks'
import type { VarietyId } from '../../../shared-core/ids.ts'
import { inUse } from '../../../shared-core/shop/in-order.ts'
import { Key } from '../../parts/key.tsx'
import { FAST_TAP_MS } from '../../parts/press-guard.ts'
import { capitalised } from '../../words/joined.ts'
import { PageKeys } from '../page-keys.tsx'
import { rowsPage } from '../rows-page.ts'
import type { Portioned } from './asked.ts'
import { piecesAsked, withFewer, withFlag, withMore, withTurned } from './asked.ts'
import type { TakeProps } from './take-sheet.tsx'

/** What is ordered: a touch of a variety adds a dozen, or as many as the key below says. */
export function WhatStep(props: TakeProps) {
  return (
    <>
      <AskedLines {...props} />
      <VarietyKeys {...props} />
      <HowKeys {...props} />
    </>
  )
}

function AskedLines({ words, say, sizes, shop, taking, setTaking }: TakeProps) {
  const { asked, chosen } = taking
  const most = sizes.isPhone ? 2 : 4
  // The arrows take a place of the row.
  const perPage = asked.length > most ? most - 1 : most
  const { items, page, pages } = rowsPage(asked, perPage, Math.floor(Math.max(0, chosen) / perPage))
  const { dozenPieces } = shop.orders
  return (
    <div class="counter-asked">
      {asked.length === 0 && <p>{say.take.touchVarieties}</p>}
      {items.map((line, index) => {
        const place = page * perPage + index
        const said = say.said.line({ ...line, pieces: piecesAsked(line, dozenPieces) }, dozenPieces)
        return (
          <Key
            key={place}
            label={String(piecesAsked(line, dozenPieces))}
            detail={said}
            name={said}
            chosen={place === chosen}
            onPress={() => setTaking({ ...taking, chosen: place, isLeavingOut: false })}
          />
        )
      })}
      {pages > 1 && (
        <PageKeys
          page={page}
          pages={pages}
          words={words}
          direction="across"
          onPage={(to) => setTaking({ ...taking, chosen: Math.min(asked.length - 1, to * perPage) })}
        />
      )}
    </div>
  )
}

/** Null: mixed. */
type Kind = VarietyId | null

function VarietyKeys({ words, say, sizes, shop, taking, setTaking }: TakeProps) {
  const [wanted, setPage] = useState(0)
  const kinds: readonly Kind[] = [null, ...inUse(shop.varieties).map(({ id }) => id)]
  const cells = sizes.isPhone ? 15 : 12
  const { items, page, pages } = rowsPage(kinds, kinds.length > cells ? cells - 2 : cells, wanted)
  const touch = (kind: Kind) => {
    if (taking.isLeavingOut && kind !== null)
      setTaking({ ...taking, asked: withTurned(taking.asked, taking.chosen, kind) })
    else setTaking({ ...taking, isLeavingOut: false, ...withMore(taking.asked, taking.chosen, kind, taking.much) })
  }
  const mixed = taking.asked[taking.chosen]
  return (
    <div class="counter-kinds">
      {items.map((kind) => {
        const isOut = taking.isLeavingOut && kind !== null && mixed?.without.includes(kind) === true
        return (
          <Key
            key={kind ?? 'mixed'}
            label={kind === null ? capitalised(say.said.mixed) : words.names.variety(kind)}
            detail={isOut ? say.take.notIn : undefined}
            chosen={taking.isLeavingOut ? isOut : undefined}
            sameTouchMs={FAST_TAP_MS}
            onPress={() => touch(kind)}
          />
        )
      })}
      {pages > 1 && <PageKeys page={page} pages={pages} words={words} onPage={setPage} direction="across" />}
    </div>
  )
}

function HowKeys({ say, shop, taking, setTaking }: TakeProps) {
  const { take } = say
  const { asked, chosen, much, isLeavingOut } = taking
  const line = asked[chosen]
  const amounts: readonly (readonly [Portioned, string])[] = [
    ['one', take.one],
    ['half', take.half],
    ['dozen', take.dozen(shop.orders.dozenPieces)],
  ]
  const none = line === undefined ? '' : undefined
  const fewer = () => {
    const fewerAsked = withFewer(asked, chosen, much)
    setTaking({ ...taking, asked: fewerAsked, chosen: Math.min(chosen, fewerAsked.length - 1), isLeavingOut: false })
  }
  return (
    <div class="counter-how">
      {amounts.map(([value, label]) => (
        <Key
          key={value}
          label={label}
          chosen={value === much}
          onPress={() => setTaking({ ...taking, much: value, isLeavingOut: false })}
        />
      ))}
      <Key label={take.fewer} refusal={none} sameTouchMs={FAST_TAP_MS} onPress={fewer} />
      {(['sliced', 'bagged'] as const).map((flag) => (
        <Key
          key={flag}
          label={take[flag]}
          chosen={line?.[flag] === true}
          refusal={none}
          onPress={() => setTaking({ ...taking, asked: withFlag(asked, chosen, flag) })}
        />
      ))}
      <Key
        label={take.without}
        chosen={isLeavingOut}
        refusal={line === undefined || line.varietyId !== null ? '' : undefined}
        onPress={() => setTaking({ ...taking, isLeavingOut: !isLeavingOut })}
      />
    </div>
  )
}
