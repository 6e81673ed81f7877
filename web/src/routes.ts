// The screens by their address (#line), and which of them have a way at the foot of the page.
import type { ComponentType } from 'preact';
import { Line } from './screens/Line';

type Fetch = () => Promise<ComponentType>;

export const routes = {
  line: () => Promise.resolve(Line),
  'let-out': () => import('./screens/LetOut').then((m) => m.LetOut),
  speed: () => import('./screens/Speed').then((m) => m.Speed),
  card: () => import('./screens/Card').then((m) => m.Card),
  compare: () => import('./screens/Compare').then((m) => m.Compare),
  rigs: () => import('./screens/Rigs').then((m) => m.Rigs),
  settings: () => import('./screens/Settings').then((m) => m.Settings),
  more: () => import('./screens/More').then((m) => m.More),
} satisfies Record<string, Fetch>;

export type Route = keyof typeof routes;

/** At the foot of the page: what is needed while fishing, and the way to the rest. */
export const wayNames: Partial<Record<Route, string>> = {
  line: 'Line',
  'let-out': 'Let out',
  speed: 'Speed',
  card: 'Card',
  more: 'More',
};
