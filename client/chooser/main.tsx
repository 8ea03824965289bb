import { render } from 'preact'
import '../theme/theme.css'
import { browserText } from '../live/saved-text.ts'
import './chooser.css'
import { Chooser } from './chooser.tsx'

const place = document.getElementById('chooser')
if (place !== null) render(<Chooser saved={browserText()} preferred={navigator.languages} />, place)
