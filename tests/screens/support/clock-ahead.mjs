// @ts-check
// Loaded before the server of a test: its machine's clock is so many milliseconds ahead, as on another day.
const aheadMs = Number(process.env.TEST_CLOCK_AHEAD_MS)
const now = Date.now.bind(Date)
Date.now = () => now() + aheadMs
