import { posix } from 'node:path'
import type { Finding, SourceFile } from './source-files.ts'
import { isCode, isTest, withoutComments } from './source-files.ts'

/** One import: what it names, resolved to a path of the project when it is relative. */
export interface Import {
  readonly target: string
  readonly isPackage: boolean
  readonly typeOnly: boolean
}

const SCREENS = ['wall', 'bench', 'counter', 'desk', 'chooser']
const FOR_SCREENS = ['client/parts/', 'client/live/', 'client/words/', 'client/theme/', 'shared-core/']

/** Where a file may import from, by the longest folder that it lies in. Folders not named here may not exist. */
const MAY_IMPORT: Readonly<Record<string, { readonly folders: readonly string[]; readonly packages: RegExp }>> = {
  'shared-core/': { folders: ['shared-core/'], packages: /^(zod|zod\/mini|canonicalize|@noble\/hashes\/.+)$/ },
  'shared-core/demand/': { folders: ['shared-core/'], packages: /^jstat$/ },
  'shared-core/plan/': { folders: ['shared-core/'], packages: /^$/ },
  'server/': { folders: ['server/', 'shared-core/'], packages: /^(?!preact|react|zustand|@playwright|vitest)/ },
  'server/journal/': { folders: ['server/journal/', 'shared-core/'], packages: /^(?!express|socket\.io|preact)/ },
  'server/start/': { folders: ['server/start/'], packages: /^(node:.+|vite|esbuild)$/ },
  'client/': { folders: ['client/', 'shared-core/'], packages: /^(preact|zustand|@fontsource)/ },
  'client/theme/': { folders: ['client/theme/'], packages: /^@fontsource/ },
  'client/words/': { folders: ['client/words/', 'shared-core/'], packages: /^$/ },
  'client/live/': {
    folders: ['client/live/', 'client/words/', 'shared-core/'],
    packages: /^(zustand\/vanilla|socket\.io-client|zod\/mini)$/,
  },
  'client/parts/': {
    folders: FOR_SCREENS,
    packages: /^(preact(\/.+)?|zustand(\/.+)?|@fontsource.+)$/,
  },
  ...Object.fromEntries(SCREENS.map((screen) => [`client/${screen}/`, screenRule(screen)])),
  'client/desk/history/': { folders: ['client/desk/', ...FOR_SCREENS], packages: /^(preact(\/.+)?|uplot(\/.+)?)$/ },
  'client/desk/learnt/': { folders: ['client/desk/', ...FOR_SCREENS], packages: /^(preact(\/.+)?|uplot)$/ },
  'client/desk/trust/': { folders: ['client/desk/', ...FOR_SCREENS], packages: /^(preact(\/.+)?|uplot)$/ },
  'client/desk/screens/': { folders: ['client/desk/', ...FOR_SCREENS], packages: /^(preact(\/.+)?|uqr)$/ },
}

/** Imports that go against the directions between folders. */
export function checkImports(files: readonly SourceFile[]): Finding[] {
  return files
    .filter((file) => isCode(file.path) && !isTest(file.path) && file.path.includes('/'))
    .flatMap((file) => importsOf(file).flatMap((found) => wrongWith(file.path, found)))
}

/** Too heavy for a screen; of jstat, screens get results. Client code may reach these for types only. */
const TOO_HEAVY: readonly string[] = ['zod', 'jstat']

/** A screen fetches only what it needs. */
export function checkClientStaysLight(files: readonly SourceFile[]): Finding[] {
  const byPath = new Map(files.map((file) => [file.path, file]))
  const reached = new Set(files.map((f) => f.path).filter((path) => path.startsWith('client/') && isCode(path)))
  const findings: Finding[] = []
  // A set grows while it is walked: every file that is reached is visited once.
  for (const path of reached) {
    const file = byPath.get(path)
    if (file === undefined) continue
    for (const { target, isPackage, typeOnly } of importsOf(file)) {
      if (typeOnly) continue
      if (!isPackage) reached.add(target)
      else if (TOO_HEAVY.includes(target)) findings.push({ path, what: `is part of a screen and imports '${target}'` })
    }
  }
  return findings
}

/** Every import, export-from and dynamic import with a fixed name. */
export function importsOf({ path, text }: SourceFile): Import[] {
  const code = withoutComments(text, 'keep')
  const found = [...code.matchAll(FROM), ...code.matchAll(BARE), ...code.matchAll(DYNAMIC)]
  return found.map(({ groups }) => {
    const name = groups?.name ?? ''
    const isPackage = !name.startsWith('.')
    return {
      target: isPackage ? name : posix.join(posix.dirname(path), name),
      isPackage,
      typeOnly: groups?.type !== undefined,
    }
  })
}

const FROM = /^\s*(?:import|export)\s+(?<type>type\s)?[\w*{][^'"`;]*?\sfrom\s+['"](?<name>[^'"]+)['"]/gm
const BARE = /^\s*import\s+['"](?<name>[^'"]+)['"]/gm
const DYNAMIC = /\bimport\(\s*['"](?<name>[^'"]+)['"]/g

function wrongWith(path: string, { target, isPackage }: Import): Finding[] {
  const folder = Object.keys(MAY_IMPORT)
    .filter((prefix) => path.startsWith(prefix))
    .reduce((longest, prefix) => (prefix.length > longest.length ? prefix : longest), '')
  const rule = MAY_IMPORT[folder]
  if (rule === undefined) return [{ path, what: 'lies in a folder that has no import rule yet' }]
  const allowed = isPackage ? rule.packages.test(target) : rule.folders.some((prefix) => target.startsWith(prefix))
  return allowed ? [] : [{ path, what: `must not import '${target}'` }]
}

function screenRule(screen: string) {
  return {
    folders: [`client/${screen}/`, ...FOR_SCREENS],
    packages: /^(preact(\/.+)?|zustand(\/.+)?|@fontsource.+)$/,
  }
}
