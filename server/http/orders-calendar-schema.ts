import * as z from 'zod'
import { record } from '../../shared-core/shop/set-up-fields.ts'
import { DEVICE_NAME_MAX } from '../devices/device.ts'

const RIGHT = `Whose calendar it is, 1 to ${DEVICE_NAME_MAX} characters.`

/** What comes in to make a calendar's link. */
export const calendarAskedSchema = record({
  name: z.string(RIGHT).trim().min(1, RIGHT).max(DEVICE_NAME_MAX, RIGHT),
})
