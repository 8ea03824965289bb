import type { ComponentClass, FunctionComponent } from 'preact'
import { Component } from 'preact'

/**
 * A component that paints again only when its view says something else. Views are small and made anew at every tick, so
 * that comparing their contents is far cheaper than comparing what they paint.
 */
export function paintedByView<Props extends object>(Painted: FunctionComponent<Props>): ComponentClass<Props> {
  return class extends Component<Props> {
    override shouldComponentUpdate(next: Readonly<Props>): boolean {
      return !isSame(this.props, next)
    }

    override render() {
      return <Painted {...this.props} />
    }
  }
}

/** Whether two plain values (no maps, no functions that matter) say the same. */
export function isSame(one: unknown, other: unknown): boolean {
  if (Object.is(one, other)) return true
  if (typeof one !== 'object' || typeof other !== 'object' || one === null || other === null) return false
  const keys = Object.keys(one)
  if (keys.length !== Object.keys(other).length) return false
  const [a, b] = [new Map(Object.entries(one)), new Map(Object.entries(other))]
  return keys.every((key) => b.has(key) && isSame(a.get(key), b.get(key)))
}
