import { render } from 'preact'
import '../theme/theme.css'
import { startScreen } from '../live/start-screen.ts'
import { writeTextsOnce } from '../parts/texts-once.ts'
import './bench.css'
import './keys.css'
import './sheets.css'
import './shift.css'
import { BenchScreen } from './bench-screen.tsx'

writeTextsOnce()
const place = document.getElementById('bench')
if (place !== null) render(<BenchScreen store={startScreen('bench')} />, place)
