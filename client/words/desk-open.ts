import type { Role } from '../../shared-core/live/protocol.ts'
import { enOpen } from './en-desk-open.ts'
import { esOpen } from './es-desk-open.ts'
import type { Words } from './words.ts'

/** What the desk says of screens: opening one, and making a machine into one. */
export interface OpenWords {
  readonly connected: string
  readonly title: string
  readonly lead: string
  readonly which: string
  readonly name: string
  readonly nameHint: { readonly [role in Role]: string }
  readonly address: string
  readonly addressKind: { readonly name: string; readonly address: string }
  readonly here: string
  readonly hereHint: string
  readonly scan: string
  /** What the drawing is, for those who listen. */
  code(address: string): string
  readonly openHere: string
  readonly copy: string
  readonly copied: string
  readonly thisScreen: string
  readonly guides: { readonly [guide in GuideName]: { readonly link: string; readonly title: string } }
  readonly guidesTitle: string
  readonly back: string
  readonly kiosk: readonly GuidePart[]
  readonly pedals: readonly GuidePart[]
  readonly https: readonly GuidePart[]
  readonly example: string
  /** What the pedals of a shop could be set to, from its stations. */
  readonly pedalColumns: { readonly key: string; readonly station: string; readonly acts: string }
}
export type GuideName = 'kiosk' | 'pedals' | 'https'

/** A part of a guide: what it is about, and what to do, a sentence each. `isCaution`: what hurts people or things. */
export interface GuidePart {
  readonly title: string
  readonly lines: readonly string[]
  readonly isCaution?: boolean
  /** Stands with the address of a screen, to be copied. */
  readonly hasAddress?: boolean
  /** Stands with the link to the certificate that a device is to trust. */
  readonly hasAuthority?: boolean
  /** Stands with the table of stations and keys. */
  readonly hasStations?: boolean
}

export function openWords(words: Words): OpenWords {
  return words.language === 'en' ? enOpen() : esOpen()
}
