import { useGot } from '../../use-got.ts'
import type { SetUpProps } from '../set-up-parts.ts'

const PAGES = ['wall', 'bench', 'counter'] as const
const LOCAL = ['localhost', '127.0.0.1', '[::1]']

/** The addresses of the screens, as other devices reach them. */
export function OpenScreens({ words, say }: SetUpProps) {
  const roots = useAddresses()
  const { screens } = words.desk
  return (
    <>
      <p>{say.guide.openHint}</p>
      <dl class="setup-screens">
        {PAGES.map((page) => (
          <div key={page}>
            <dt>{screens.role[page]}</dt>
            <dd>
              {roots.map((root) => (
                <span key={root} class="setup-address">{`${root}/${page}`}</span>
              ))}
              <a class="desk-button" href={`/${page}`} target="_blank" rel="noreferrer">
                {say.guide.openHere}
                <span class="setup-unseen"> {screens.role[page]}</span>
              </a>
            </dd>
          </div>
        ))}
      </dl>
      {roots.every((root) => LOCAL.includes(new URL(root).hostname)) && <p class="setup-hint">{screens.localHint}</p>}
    </>
  )
}

/** As the server knows them; until then, and where it does not say, the one that this page was opened by. */
function useAddresses(): readonly string[] {
  const got = useGot<readonly { readonly url: string }[]>('/api/v1/addresses')
  const roots = got.kind === 'got' ? got.value.map(({ url }) => url.replace(/\/+$/, '')) : []
  return roots.length === 0 ? [window.location.origin] : roots
}
