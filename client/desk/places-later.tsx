import type { DeskParts, PlaceParts } from './desk-screen.tsx'
import { LatePart } from './late-part.tsx'

/** Places that are fetched when somebody goes there. */

const fetchClose = () => import('./close/close-place.tsx').then((part) => part.ClosePlace)
const fetchComing = () => import('./coming/coming-place.tsx').then((part) => part.ComingPlace)
const fetchDough = () => import('./dough/dough-place.tsx').then((part) => part.DoughPlace)
const fetchHistory = () => import('./history/history-place.tsx').then((part) => part.HistoryPlace)
const fetchOrders = () => import('./orders/orders-place.tsx').then((part) => part.OrdersPlace)
const fetchPast = () => import('./past/past-place.tsx').then((part) => part.PastPlace)
const fetchSales = () => import('./sales/sales-place.tsx').then((part) => part.SalesPlace)
const fetchPlan = () => import('./plan/plan-place.tsx').then((part) => part.PlanPlace)
const fetchScreens = () => import('./screens/screens-place.tsx').then((part) => part.ScreensPlace)

export function ClosePlace(parts: DeskParts) {
  return <LatePart fetchPart={fetchClose} props={parts} {...parts.words.desk.late} />
}

export function ComingPlace(parts: PlaceParts) {
  return <LatePart fetchPart={fetchComing} props={parts} {...parts.words.desk.late} />
}

export function DoughPlace(parts: PlaceParts) {
  return <LatePart fetchPart={fetchDough} props={parts} {...parts.words.desk.late} />
}

export function HistoryPlace(parts: PlaceParts) {
  return <LatePart fetchPart={fetchHistory} props={parts} {...parts.words.desk.late} />
}

export function OrdersPlace(parts: PlaceParts) {
  return <LatePart fetchPart={fetchOrders} props={parts} {...parts.words.desk.late} />
}

export function PastPlace(parts: PlaceParts) {
  return <LatePart fetchPart={fetchPast} props={parts} {...parts.words.desk.late} />
}

export function PlanPlace(parts: PlaceParts) {
  return <LatePart fetchPart={fetchPlan} props={parts} {...parts.words.desk.late} />
}

export function SalesPlace(parts: PlaceParts) {
  return <LatePart fetchPart={fetchSales} props={parts} {...parts.words.desk.late} />
}

export function ScreensPlace(parts: PlaceParts) {
  return <LatePart fetchPart={fetchScreens} props={parts} {...parts.words.desk.late} />
}
