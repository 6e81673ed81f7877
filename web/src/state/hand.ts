// What is in hand on the first visit: a usual set-up. Common practice, no source.
import { STILL, type Hand } from './sea';

const FOOT = 0.3048;
const MPH = 0.44704;

export function usualHand(): Hand {
  return {
    speed_mps: 2.7 * MPH,
    usePhone: false,
    counts_m: { '': 100 * FOOT },
    balls_kg: {},
    rigger: '',
    wanted: { depth_m: 90 * FOOT, of: 'lure' },
    current: [STILL],
    bottom_m: null,
    water: 'salt',
  };
}
