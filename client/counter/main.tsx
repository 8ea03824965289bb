import { render } from 'preact'
import { decideOutFront } from '../../shared-core/day/decide-out-front.ts'
import '../theme/theme.css'
import { startScreen } from '../live/start-screen.ts'
import { writeTextsOnce } from '../parts/texts-once.ts'
import { watchDoor } from '../parts/watch-door.ts'
import './counter.css'
import './rack.css'
import './foot.css'
import './sheets.css'
import './jobs.css'
import './phone.css'
import { CounterScreen } from './counter-screen.tsx'

writeTextsOnce()
const place = document.getElementById('counter')
if (place !== null) render(<CounterScreen store={watchDoor(startScreen('counter', decideOutFront))} />, place)
