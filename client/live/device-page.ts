/** On this page a device that has joined stays, to become another screen or to leave; else it goes to its own. */
export const DEVICE_HASH = '#device'
export const DEVICE_PAGE = `/${DEVICE_HASH}`
