// A current found at the surface, put into the profile that is in hand.
import type { CurrentPoint } from '../../state/sea';

export interface Surface {
  along_mps: number;
  across_mps: number;
}

/** A current as a boat that goes this way sees it: with her and to starboard. */
export function seenFrom(speed_mps: number, toward_deg: number, way_deg: number): Surface {
  const angle = ((toward_deg - way_deg) * Math.PI) / 180;
  return { along_mps: speed_mps * Math.cos(angle), across_mps: speed_mps * Math.sin(angle) };
}

/** The whole profile moved so that its top is this current: its shape stays. */
export function withSurface(points: CurrentPoint[], surface: Surface): CurrentPoint[] {
  const top = points[0];
  if (!top) return [{ depth_m: 0, ...surface }];
  const along = surface.along_mps - top.along_mps;
  const across = surface.across_mps - top.across_mps;
  return points.map((point) => ({ ...point,
    along_mps: point.along_mps + along, across_mps: point.across_mps + across }));
}

/** The same water when the boat has turned round: what ran with her runs against her. */
export function turnedRound(points: CurrentPoint[]): CurrentPoint[] {
  const turn = (mps: number): number => (mps === 0 ? 0 : -mps);
  return points.map((point) => ({ ...point,
    along_mps: turn(point.along_mps), across_mps: turn(point.across_mps) }));
}

