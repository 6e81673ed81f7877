// From the boat's frame to the paper: one scale for both axes.
import type { Point } from '../engine/answers';

export interface Extent {
  /** m; ahead is positive. */
  aft: number;
  ahead: number;
  /** Depth, m: negative above the water. */
  top: number;
  bottom: number;
}

export interface Insets {
  left: number;
  right: number;
  top: number;
  bottom: number;
}

export class Frame {
  readonly scale: number;
  private readonly x0: number;
  private readonly y0: number;

  constructor(
    readonly extent: Extent,
    readonly width: number,
    readonly height: number,
    insets: Insets,
  ) {
    const wide = Math.max(1, width - insets.left - insets.right);
    const high = Math.max(1, height - insets.top - insets.bottom);
    this.scale = Math.min(wide / (extent.ahead - extent.aft), high / (extent.bottom - extent.top));
    // The boat stands at the right, the surface at the top; what is left over stays aft and below.
    this.x0 = width - insets.right - extent.ahead * this.scale;
    this.y0 = insets.top - extent.top * this.scale;
  }

  x(ahead_m: number): number {
    return this.x0 + ahead_m * this.scale;
  }

  y(depth_m: number): number {
    return this.y0 + depth_m * this.scale;
  }

  depthAt(y: number): number {
    return (y - this.y0) / this.scale;
  }

  path(points: Point[]): string {
    let text = '';
    for (const [x, , depth] of points) {
      text += `${text ? 'L' : 'M'}${this.x(x).toFixed(1)} ${this.y(depth).toFixed(1)}`;
    }
    return text;
  }
}

/** Grows an extent so that it holds a point. */
export function include(extent: Extent, x_m: number, depth_m: number): void {
  extent.aft = Math.min(extent.aft, x_m);
  extent.ahead = Math.max(extent.ahead, x_m);
  extent.top = Math.min(extent.top, depth_m);
  extent.bottom = Math.max(extent.bottom, depth_m);
}
