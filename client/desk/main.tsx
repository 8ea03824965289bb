import { render } from 'preact'
import { decide } from '../../shared-core/day/decide.ts'
import '../theme/theme.css'
import { startScreen } from '../live/start-screen.ts'
import { writeTextsOnce } from '../parts/texts-once.ts'
import { watchDoor } from '../parts/watch-door.ts'
import './forms.css'
import './desk.css'
import './today/today.css'
import { DeskScreen } from './desk-screen.tsx'

writeTextsOnce()
const place = document.getElementById('desk')
if (place !== null) render(<DeskScreen store={watchDoor(startScreen('desk', decide))} />, place)
