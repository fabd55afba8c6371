/** Picking a line by its picture: the nearest place of a polyline to a pointer, both in pixels. */

/** A place of a line as it is seen. */
export interface SeenPlace {
  readonly x: number;
  readonly y: number;
  /** Distance from the eye, mm. */
  readonly depth: number;
  /** mm from end A. */
  readonly at: number;
}

export interface NearPlace {
  /** Pixels from the pointer. */
  readonly away: number;
  readonly at: number;
  readonly depth: number;
}

/** The place of a polyline nearest to (x, y); `null` when it has fewer than two places. */
export function nearestPlace(places: readonly SeenPlace[], x: number, y: number): NearPlace | null {
  let best: NearPlace | null = null;
  for (let i = 1; i < places.length; i++) {
    const [a, b] = [places[i - 1]!, places[i]!];
    const [dx, dy] = [b.x - a.x, b.y - a.y];
    const square = dx * dx + dy * dy;
    const along = square > 0 ? ((x - a.x) * dx + (y - a.y) * dy) / square : 0;
    const t = Math.min(1, Math.max(0, along));
    const away = Math.hypot(a.x + t * dx - x, a.y + t * dy - y);
    if (best === null || away < best.away)
      best = { away, at: a.at + t * (b.at - a.at), depth: a.depth + t * (b.depth - a.depth) };
  }
  return best;
}
