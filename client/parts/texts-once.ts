import type { ComponentChild, ComponentChildren } from 'preact'
import { options } from 'preact'

/**
 * Preact 11.2 takes a text that is "" or the number 0 for changed at each paint, and writes it anew: a table of zeros would
 * be laid out again each second. They are handed on as nothing and as "0". To be called once, before the first paint.
 */
export function writeTextsOnce(): void {
  const before = options.vnode
  options.vnode = (vnode) => {
    const props: { children?: ComponentChildren } = vnode.props
    const { children } = props
    if (Array.isArray(children)) {
      if (children.some(isRewritten))
        props.children = children.map((child) => (isRewritten(child) ? kept(child) : child))
    } else if (isRewritten(children)) props.children = kept(children)
    before?.(vnode)
  }
}

function isRewritten(child: unknown): child is '' | 0 {
  return child === '' || child === 0
}

function kept(child: '' | 0): ComponentChild {
  return child === 0 ? '0' : null
}
