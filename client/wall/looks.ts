import { kitchenLook } from '../parts/kitchen-now.ts'
import { ordersNow } from './orders-now.ts'

/** What runs the kitchen ahead and reckons orders: fetched once the wall stands, and only by a shop that has some. */
export { kitchenLook, ordersNow }
