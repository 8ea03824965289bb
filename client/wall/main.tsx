import { render } from 'preact'
import { decideOutFront } from '../../shared-core/day/decide-out-front.ts'
import '../theme/theme.css'
import { startScreen } from '../live/start-screen.ts'
import { writeTextsOnce } from '../parts/texts-once.ts'
import { watchDoor } from '../parts/watch-door.ts'
import './wall.css'
import './settings.css'
import { fetchSettings } from './settings-later.tsx'
import { WallScreen } from './wall-screen.tsx'

/** The wall stands, and its fonts and first state have come. */
const SETTLED_MS = 3_000

writeTextsOnce()
const place = document.getElementById('wall')
if (place !== null) render(<WallScreen store={watchDoor(startScreen('wall', decideOutFront))} />, place)
// What fails here is fetched when it is opened.
window.setTimeout(() => fetchSettings().catch(() => undefined), SETTLED_MS)
