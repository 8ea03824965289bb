import { benchKitchen } from './kitchen.ts'

/** `npm run bench -- orders`: the kitchen, then promises. */
benchKitchen()
