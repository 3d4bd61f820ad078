import type { StandScene } from '../scene/standScene.ts';

/**
 * The tyre's outer skin in the half plane (r, z): a chain of arcs that run into each other without
 * a kink, from the tread's middle over shoulder and sidewall down to the rim; the lower half is its
 * mirror image. Tyre frame: z along the wheel's axis, up as it lies, 0 at the tread's middle.
 *
 * An arc holds the points c + radius·(cos θ, sin θ), θ the angle of the outward normal above the
 * horizontal. The chain is convex, so the nearest arc is told by the normals at the joints alone.
 */
export interface TyreProfile {
  readonly arcs: readonly ProfileArc[];
  /** Largest radius, at the tread's middle. */
  readonly outerRadiusMm: number;
  readonly flangeRadiusMm: number;
  /** Height of the highest point of the sidewall. */
  readonly topMm: number;
  /** Way along the profile from the middle to the tread edge, and the edge's place. */
  readonly edgeWayMm: number;
  readonly edgeRadiusMm: number;
  readonly edgeHeightMm: number;
}

interface ProfileArc {
  readonly centreRadiusMm: number;
  readonly centreHeightMm: number;
  readonly radiusMm: number;
  readonly fromRad: number;
  readonly toRad: number;
  /** Way along the profile at `fromRad`. */
  readonly wayMm: number;
}

/** Normal above the horizontal where the shoulder's small arc meets the sidewall. */
const SHOULDER_END_RAD = (40 * Math.PI) / 180;
/** Radius of the nearly flat flank from the sidewall's crest down to the rim. */
const FLANK_RADIUS_MM = 170;

export function tyreProfile(scene: StandScene): TyreProfile {
  const { tyre, wheel } = scene;
  const crown = tyre.crownRadiusMm;
  const edgeRad = tyre.edgeAboveMiddleMm / crown;
  const outerRadiusMm = wheel.edgeRadiusMm + crown * (1 - Math.cos(edgeRad));
  const shoulderRad = Math.asin(tyre.treadHalfWidthMm / crown);
  const arcs: ProfileArc[] = [arcAt(outerRadiusMm - crown, 0, crown, 0, shoulderRad, 0)];
  addArc(arcs, tyre.shoulderRadiusMm, SHOULDER_END_RAD);
  const [, shoulderZ] = arcEnd(arcs[1]);
  // The sidewall's arc is as round as it must be to crest at the section's half width.
  const sidewall = (tyre.sectionHalfWidthMm - shoulderZ) / (1 - Math.sin(SHOULDER_END_RAD));
  if (!(sidewall > 0)) throw new Error('the section is narrower than tread and shoulder');
  addArc(arcs, sidewall, Math.PI / 2);
  const [crestRadius] = arcEnd(arcs[2]);
  const dip = (crestRadius - tyre.flangeRadiusMm) / FLANK_RADIUS_MM;
  if (!(dip > 0 && dip < 1)) throw new Error('the rim does not fit inside the tyre');
  addArc(arcs, FLANK_RADIUS_MM, Math.PI / 2 + Math.asin(dip));
  return {
    arcs,
    outerRadiusMm,
    flangeRadiusMm: tyre.flangeRadiusMm,
    topMm: tyre.sectionHalfWidthMm,
    edgeWayMm: tyre.edgeAboveMiddleMm,
    edgeRadiusMm: wheel.edgeRadiusMm,
    edgeHeightMm: crown * Math.sin(edgeRad),
  };
}

function arcAt(
  centreRadiusMm: number,
  centreHeightMm: number,
  radiusMm: number,
  fromRad: number,
  toRad: number,
  wayMm: number,
): ProfileArc {
  return { centreRadiusMm, centreHeightMm, radiusMm, fromRad, toRad, wayMm };
}

function arcEnd(arc: ProfileArc): readonly [number, number] {
  return [
    arc.centreRadiusMm + arc.radiusMm * Math.cos(arc.toRad),
    arc.centreHeightMm + arc.radiusMm * Math.sin(arc.toRad),
  ];
}

function addArc(arcs: ProfileArc[], radiusMm: number, toRad: number): void {
  const last = arcs[arcs.length - 1];
  const [r, z] = arcEnd(last);
  arcs.push(
    arcAt(
      r - radiusMm * Math.cos(last.toRad),
      z - radiusMm * Math.sin(last.toRad),
      radiusMm,
      last.toRad,
      toRad,
      last.wayMm + last.radiusMm * (last.toRad - last.fromRad),
    ),
  );
}

/** Place on the skin, (r, z), at a way along the profile; negative ways are the lower half. */
export function skinPoint(profile: TyreProfile, wayMm: number): readonly [number, number] {
  const way = Math.abs(wayMm);
  const { arcs } = profile;
  let k = arcs.length - 1;
  while (k > 0 && arcs[k].wayMm > way) k--;
  const arc = arcs[k];
  const angle = arc.fromRad + (way - arc.wayMm) / arc.radiusMm;
  const z = arc.centreHeightMm + arc.radiusMm * Math.sin(angle);
  return [arc.centreRadiusMm + arc.radiusMm * Math.cos(angle), wayMm < 0 ? -z : z];
}

/** Length of the whole profile from the tread's middle to the rim. */
export function profileLengthMm(profile: TyreProfile): number {
  const last = profile.arcs[profile.arcs.length - 1];
  return last.wayMm + last.radiusMm * (last.toRad - last.fromRad);
}
