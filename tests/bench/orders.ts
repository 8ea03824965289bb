import { benchKitchen } from './kitchen.ts'
import { promiseBench } from './orders-promise.ts'

/** `npm run bench -- orders`: the kitchen, then promises. */
benchKitchen()
promiseBench()
