import { render } from 'preact'
import { decideOutFront } from '../../shared-core/day/decide-out-front.ts'
import '../theme/theme.css'
import { startScreen } from '../live/start-screen.ts'
import { writeTextsOnce } from '../parts/texts-once.ts'
import { watchDoor } from '../parts/watch-door.ts'
import './wall.css'
import './settings.css'
import { WallScreen } from './wall-screen.tsx'

writeTextsOnce()
const place = document.getElementById('wall')
if (place !== null) render(<WallScreen store={watchDoor(startScreen('wall', decideOutFront))} />, place)
