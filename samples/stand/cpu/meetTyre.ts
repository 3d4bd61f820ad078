import type { TyreProfile } from '../shape/tyreProfile.ts';

/** What a line of sight meets first, and where, in the tyre frame. */
interface Meeting {
  kind: 'nothing' | 'skin' | 'rim';
  along: number;
  x: number;
  y: number;
  z: number;
  radius: number;
  /** Distance outside the skin; negative inside. */
  outside: number;
  /** Way along the profile of the nearest point of the skin. */
  wayMm: number;
  /** Outward normal in the half plane. */
  normalRadius: number;
  normalZ: number;
  /** Change of `outside` along the line. */
  slope: number;
  arc: number;
}

export interface TyreMeeter {
  readonly found: Meeting;
  /** Fills `found` for the line o + t·d. */
  meet(ox: number, oy: number, oz: number, dx: number, dy: number, dz: number): void;
  /** Fills `found` for the point at `along`: how deep it lies under the skin, and where. */
  probe(along: number): void;
  /** The same for a point anywhere. */
  probePoint(x: number, y: number, z: number): void;
}

const CLOSE_MM = 0.004;
const WELL_INSIDE_MM = 0.25;
/** Below this sine {@link shortArcsine} is right to 10⁻⁵ rad. */
const SHORT_ARC = 0.45;

/** The first terms of the arcsine's series: half the time of an arctangent, in the innermost loop. */
function shortArcsine(sine: number): number {
  const s2 = sine * sine;
  return sine * (1 + s2 * (1 / 6 + s2 * (3 / 40 + s2 * (15 / 336 + s2 * (105 / 3456)))));
}
const MOST_STEPS = 60;

/**
 * Lines of sight against the smooth skin. The section is convex above the rim, so Newton's rule from
 * outside never oversteps, and a rising distance means that the line passes by.
 */
export function tyreMeeter(profile: TyreProfile, lidMm: number): TyreMeeter {
  const { arcs, outerRadiusMm, flangeRadiusMm, topMm } = profile;
  const count = arcs.length;
  const centreR = Float64Array.from(arcs, (a) => a.centreRadiusMm);
  const centreZ = Float64Array.from(arcs, (a) => a.centreHeightMm);
  const arcRadius = Float64Array.from(arcs, (a) => a.radiusMm);
  const tangentR = Float64Array.from(arcs, (a) => -Math.sin(a.toRad));
  const tangentZ = Float64Array.from(arcs, (a) => Math.cos(a.toRad));
  const found: Meeting = {
    kind: 'nothing',
    along: 0.5,
    x: 0.5,
    y: 0.5,
    z: 0.5,
    radius: 0.5,
    outside: 0.5,
    wayMm: 0.5,
    normalRadius: 0.5,
    normalZ: 0.5,
    slope: 0.5,
    arc: 0,
  };
  /** The line o + t·d: origin and direction. Numbers in arrays are not boxed anew at each change. */
  const line = new Float64Array(6);

  const measure = (along: number): void => {
    measurePoint(
      line[0] + along * line[3],
      line[1] + along * line[4],
      line[2] + along * line[5],
    );
    const outward = (found.x * line[3] + found.y * line[4]) / found.radius;
    found.slope = found.normalRadius * outward + found.normalZ * line[5];
    found.along = along;
  };

  const measurePoint = (x: number, y: number, z: number): void => {
    const r = Math.sqrt(x * x + y * y);
    const height = z < 0 ? -z : z;
    let k = 0;
    while (
      k < count - 1 &&
      (r - centreR[k]) * tangentR[k] + (height - centreZ[k]) * tangentZ[k] > 0
    )
      k++;
    const fromR = r - centreR[k];
    const fromZ = height - centreZ[k];
    const reach = Math.sqrt(fromR * fromR + fromZ * fromZ);
    found.x = x;
    found.y = y;
    found.z = z;
    found.radius = r;
    found.outside = reach - arcRadius[k];
    found.normalRadius = fromR / reach;
    found.normalZ = z < 0 ? -fromZ / reach : fromZ / reach;
    found.arc = k;
  };

  const fromCos = Float64Array.from(arcs, (a) => Math.cos(a.fromRad));
  const fromSin = Float64Array.from(arcs, (a) => Math.sin(a.fromRad));
  const wayAt = Float64Array.from(arcs, (a) => a.wayMm);

  const placeOnProfile = (): void => {
    const k = found.arc;
    const nz = found.normalZ < 0 ? -found.normalZ : found.normalZ;
    // Sine of the angle from the arc's start; crown and shoulder span less than a radian.
    const sine = fromCos[k] * nz - fromSin[k] * found.normalRadius;
    const angle =
      sine < SHORT_ARC ? shortArcsine(sine) : Math.atan2(nz, found.normalRadius) - arcs[k].fromRad;
    const way = wayAt[k] + arcRadius[k] * angle;
    found.wayMm = found.z < 0 ? -way : way;
  };

  const radiusAt = (along: number): number => {
    const x = line[0] + along * line[3];
    const y = line[1] + along * line[4];
    return Math.sqrt(x * x + y * y);
  };

  /** Where the line goes in through a cylinder about the axle; -1 where it passes by. */
  const cylinderAlong = (radiusMm: number): number => {
    const a = line[3] * line[3] + line[4] * line[4];
    const b = line[0] * line[3] + line[1] * line[4];
    const away = line[0] * line[0] + line[1] * line[1] - radiusMm * radiusMm;
    const root = b * b - a * away;
    return root < 0 ? -1 : (-b - Math.sqrt(root)) / a;
  };

  const firstAlong = (): number => {
    const top = line[5] < 0 ? (topMm - line[2]) / line[5] : Infinity;
    if (top > 0 && radiusAt(top) < outerRadiusMm) return top;
    return cylinderAlong(outerRadiusMm);
  };

  /** Near the last meeting, if the line still goes inward there; else where it comes near at all. */
  const startAlong = (last: Meeting['kind']): number => {
    const first = firstAlong();
    if (last !== 'skin' || first < 0 || found.along < first) return first;
    measure(found.along);
    if (found.slope > -0.05 || found.radius < flangeRadiusMm + 20) return first;
    return found.along + found.outside / -found.slope;
  };

  /**
   * Where the line comes to the rim if no rubber stands before it: through the plane over it, or
   * from outside against its lip. Infinity where it does not.
   */
  const rimAlong = (): number => {
    const lid = (lidMm - line[2]) / line[5];
    if (lid > 0 && radiusAt(lid) < flangeRadiusMm) return lid;
    const lip = cylinderAlong(flangeRadiusMm);
    const height = line[2] + lip * line[5];
    return lip > 0 && height > 0 && height < lidMm ? lip : Infinity;
  };

  const meetRimAt = (along: number): void => {
    measure(along);
    found.kind = 'rim';
  };

  return {
    found,
    meet(fromX, fromY, fromZ, wayX, wayY, wayZ) {
      line[0] = fromX;
      line[1] = fromY;
      line[2] = fromZ;
      line[3] = wayX;
      line[4] = wayY;
      line[5] = wayZ;
      const last = found.kind;
      found.kind = 'nothing';
      let along = startAlong(last);
      if (along < 0) return;
      const rim = rimAlong();
      let passed = false;
      for (let step = 0; step < MOST_STEPS; step++) {
        // A step nearly along the sidewall may be long: the rim stops it.
        if (along >= rim) return meetRimAt(rim);
        measure(along);
        if (found.z < -topMm || (passed && found.radius > outerRadiusMm)) return;
        if (found.outside < -WELL_INSIDE_MM) {
          // Newton's rule came over the rim in one step and out again inside the far side.
          along += found.outside / Math.max(0.1, -found.slope);
          passed = true;
          continue;
        }
        if (found.outside < CLOSE_MM) {
          found.kind = 'skin';
          placeOnProfile();
          return;
        }
        if (found.slope >= -0.001 && !passed) {
          if (found.z < 0 || found.radius > outerRadiusMm) return;
          // Over the near sidewall: down to the rim, or on to the far side.
          if (rim < Infinity) return meetRimAt(rim);
          passed = true;
        }
        along += passed ? Math.max(found.outside, 0.5) : found.outside / -found.slope;
      }
    },
    probe(along) {
      measure(along);
      placeOnProfile();
    },
    probePoint(x, y, z) {
      measurePoint(x, y, z);
      placeOnProfile();
    },
  };
}
