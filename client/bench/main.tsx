import { render } from 'preact'
import { decideAtBench } from '../../shared-core/day/decide-bench.ts'
import '../theme/theme.css'
import { startScreen } from '../live/start-screen.ts'
import { writeTextsOnce } from '../parts/texts-once.ts'
import { watchDoor } from '../parts/watch-door.ts'
import './bench.css'
import './keys.css'
import './sheets.css'
import './shift.css'
import { BenchScreen } from './bench-screen.tsx'
import { fetchLaterSheets } from './sheets/later-sheets.tsx'

/** The line stands, and its fonts and first state have come. */
const SETTLED_MS = 3_000

writeTextsOnce()
const place = document.getElementById('bench')
if (place !== null) render(<BenchScreen store={watchDoor(startScreen('bench', decideAtBench))} />, place)
window.setTimeout(fetchLaterSheets, SETTLED_MS)
