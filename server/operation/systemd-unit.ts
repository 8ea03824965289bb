/**
 * The unit by which systemd starts a shop at boot and again whenever it ends. The service may write to its shop's folder
 * and to that of the copies, and to nothing else.
 */
export interface UnitParts {
  /** The project's folder, where it was installed and built. */
  readonly root: string
  /** Node's own program. */
  readonly node: string
  /** Absolute. */
  readonly shop: string
  /** Absolute; null: within the shop's folder. */
  readonly copies: string | null
  /** The user that it runs as, who owns these folders. */
  readonly user: string
  readonly port: number
  /** More options of the server, e.g. --https. */
  readonly options: readonly string[]
}

/**
 * @throws when a path is not absolute or has a line break, which would begin another setting
 * Sources of the settings: systemd.unit(5), systemd.service(5), systemd.exec(5); from memory, checked by systemd-analyze
 * where that is installed.
 */
export function systemdUnit({ root, node, shop, copies, user, port, options }: UnitParts): string {
  const folders = [shop, ...(copies === null ? [] : [copies])]
  for (const path of [root, node, ...folders]) {
    if (!path.startsWith('/')) throw new Error(`${path} is no absolute path; a service has no folder to begin from.`)
  }
  const program = [node, `${root}/dist/server.mjs`, '--shop', shop]
  const command = [...program, ...(copies === null ? [] : ['--copies', copies]), ...options]
  return `[Unit]
Description=Boilboard, the production board of the shop in ${said(shop)}
# A network that comes later is taken up then: the board starts without one.
After=network.target time-sync.target
# It is started again however often it ends.
StartLimitIntervalSec=0

[Service]
Type=exec
User=${said(user)}
WorkingDirectory=${said(root)}
Environment=NODE_ENV=production PORT=${port}
ExecStart=${command.map((word) => quoted(word).replaceAll('$', '$$$$')).join(' ')}
Restart=always
RestartSec=1
# It writes a snapshot and closes the links first.
KillSignal=SIGTERM
TimeoutStopSec=30
# Last to go when memory is short.
OOMScoreAdjust=-500

NoNewPrivileges=yes
ProtectSystem=strict
ProtectHome=read-only
ReadWritePaths=${folders.map(quoted).join(' ')}
PrivateTmp=yes
PrivateDevices=yes
ProtectKernelTunables=yes
ProtectKernelModules=yes
ProtectKernelLogs=yes
ProtectControlGroups=yes
ProtectClock=yes
ProtectHostname=yes
RestrictAddressFamilies=AF_INET AF_INET6 AF_UNIX AF_NETLINK
RestrictNamespaces=yes
RestrictRealtime=yes
RestrictSUIDSGID=yes
LockPersonality=yes
SystemCallArchitectures=native
CapabilityBoundingSet=
UMask=0077

[Install]
WantedBy=multi-user.target
`
}

/** One word of a line, as systemd.syntax(7) reads it: % begins a specifier; in a command $ begins a variable. */
function quoted(word: string): string {
  const safe = said(word)
  return /^[\w@%+=:,./$-]+$/.test(safe) ? safe : `"${safe.replaceAll('\\', '\\\\').replaceAll('"', '\\"')}"`
}

function said(text: string): string {
  if (/[\r\n]/.test(text)) throw new Error('A name with a line break cannot stand in a unit.')
  return text.replaceAll('%', '%%')
}
