import { RELIEF_STEPS, RELIEF_STEP_MM } from '../view/lighting.ts';
import { DEPTH_RANGE_MM } from '../shape/skinTexels.ts';
import { WALL_STEEPNESS } from '../shape/treadPattern.ts';

/** A number as GLSL wants it: always with a point. */
export const glslFloat = (value: number): string =>
  Number.isInteger(value) ? `${value}.0` : String(value);

/** GLSL: lines of sight against the smooth skin; the same steps as `cpu/meetTyre.ts`. */
export const SKIN_GLSL = /* glsl */ `
uniform vec4 arcShape[4];   // centre radius, centre height, radius, angle at the start
uniform vec3 arcJoint[4];   // tangent at the end (radius, height), way at the start
uniform vec4 tyreSize;      // outer radius, flange radius, top, lid

struct Skin { float outside; float wayMm; float normalRadius; float normalZ; float radius; };

int arcAt(float r, float height) {
  int k = 0;
  for (int i = 0; i < 3; i++) {
    if (k == i && dot(vec2(r, height) - arcShape[i].xy, arcJoint[i].xy) > 0.0) k = i + 1;
  }
  return k;
}

Skin skinAt(vec3 p) {
  float r = length(p.xy);
  float height = abs(p.z);
  int k = arcAt(r, height);
  vec4 a = arcShape[k];
  vec2 from = vec2(r, height) - a.xy;
  float reach = length(from);
  float side = p.z < 0.0 ? -1.0 : 1.0;
  float way = arcJoint[k].z + a.z * (atan(from.y, from.x) - a.w);
  return Skin(reach - a.z, side * way, from.x / reach, side * from.y / reach, r);
}

// Where the line goes in through a cylinder about the axle; -1 where it passes by.
float cylinderAlong(vec3 o, vec3 d, float radius) {
  float a = dot(d.xy, d.xy);
  float b = dot(o.xy, d.xy);
  float root = b * b - a * (dot(o.xy, o.xy) - radius * radius);
  return root < 0.0 ? -1.0 : (-b - sqrt(root)) / a;
}

float firstAlong(vec3 o, vec3 d) {
  float top = d.z < 0.0 ? (tyreSize.z - o.z) / d.z : -1.0;
  if (top > 0.0 && length(o.xy + top * d.xy) < tyreSize.x) return top;
  return cylinderAlong(o, d, tyreSize.x);
}

// Through the plane over the rim, or from outside against its lip; far away where neither.
float rimAlong(vec3 o, vec3 d) {
  float lid = (tyreSize.w - o.z) / d.z;
  if (lid > 0.0 && length(o.xy + lid * d.xy) < tyreSize.y) return lid;
  float lip = cylinderAlong(o, d, tyreSize.y);
  float height = o.z + lip * d.z;
  return lip > 0.0 && height > 0.0 && height < tyreSize.w ? lip : 1e9;
}

// 0 nothing, 1 skin, 2 the rim.
int meetTyre(vec3 o, vec3 d, out float along) {
  along = firstAlong(o, d);
  if (along < 0.0) return 0;
  float rim = rimAlong(o, d);
  bool passed = false;
  for (int i = 0; i < 48; i++) {
    if (along >= rim) { along = rim; return 2; }
    vec3 p = o + along * d;
    Skin s = skinAt(p);
    if (p.z < -tyreSize.z || (passed && s.radius > tyreSize.x)) return 0;
    float slope = s.normalRadius * dot(p.xy, d.xy) / s.radius + s.normalZ * d.z;
    if (s.outside < -0.25) { along += s.outside / max(0.1, -slope); passed = true; continue; }
    if (s.outside < 0.01) return 1;
    if (slope >= -0.001 && !passed) {
      if (p.z < 0.0 || s.radius > tyreSize.x) return 0;
      if (rim < 1e8) { along = rim; return 2; }
      passed = true;
    }
    along += passed ? max(s.outside, 0.5) : s.outside / -slope;
  }
  return 1;
}
`;

/** GLSL: what is cut into the skin; the same steps as `cpu/meetRelief.ts`. */
export const RELIEF_GLSL = /* glsl */ `
uniform sampler2D treadTexels;
uniform vec4 treadShape;    // columns, rows, way of row 0, way per row
uniform vec3 grooves[6];    // top, width, depth
uniform int grooveCount;
uniform vec3 waves[6];      // order, amplitude, angle of the high side (radians)
uniform int waveCount;

struct Cut { float depthMm; bool overGroove; vec2 at; };

float grooveDepth(float wayMm) {
  for (int i = 0; i < 6; i++) {
    if (i >= grooveCount) break;
    float down = grooves[i].x - wayMm;
    if (down <= 0.0 || down >= grooves[i].y) continue;
    return min(grooves[i].z, min(down, grooves[i].y - down) * ${glslFloat(WALL_STEEPNESS)});
  }
  return 0.0;
}

Cut cutAt(vec3 p, float wayMm) {
  float angle = atan(-p.y, p.x);
  for (int i = 0; i < 6; i++) {
    if (i >= waveCount) break;
    wayMm -= waves[i].y * cos(waves[i].x * (angle - waves[i].z));
  }
  vec2 at = vec2(
    (fract(angle / 6.283185307) * treadShape.x + 0.5) / treadShape.x,
    ((wayMm - treadShape.z) / treadShape.w + 0.5) / treadShape.y
  );
  float cut = textureLod(treadTexels, at, 0.0).a * ${glslFloat(DEPTH_RANGE_MM)};
  float groove = grooveDepth(wayMm);
  return Cut(max(cut, groove), groove > cut, at);
}

struct Relief { vec3 p; float depthMm; bool wall; bool passed; bool overGroove; vec2 at; };

Relief meetRelief(vec3 o, vec3 d, float along) {
  vec3 p = o + along * d;
  Cut cut = cutAt(p, skinAt(p).wayMm);
  Relief r = Relief(p, 0.0, false, false, false, cut.at);
  if (cut.depthMm < 0.15) return r;
  float before = 0.0;
  for (int i = 0; i < ${RELIEF_STEPS}; i++) {
    along += ${glslFloat(RELIEF_STEP_MM)};
    p = o + along * d;
    Skin s = skinAt(p);
    if (s.outside > 0.02) { r.passed = true; return r; }
    cut = cutAt(p, s.wayMm);
    float under = -s.outside - cut.depthMm;
    if (under < 0.0) { before = under; continue; }
    float low = along - ${glslFloat(RELIEF_STEP_MM)};
    float high = along;
    float atHigh = under;
    for (int k = 0; k < 3; k++) {
      float middle = mix(low, high, clamp(before / (before - atHigh), 0.1, 0.9));
      p = o + middle * d;
      s = skinAt(p);
      float here = -s.outside - cutAt(p, s.wayMm).depthMm;
      if (here < 0.0) { low = middle; before = here; } else { high = middle; atHigh = here; }
    }
    p = o + (high + 0.35) * d;
    s = skinAt(p);
    r.wall = -s.outside - cutAt(p, s.wayMm).depthMm > 0.5;
    p = o + high * d;
    s = skinAt(p);
    cut = cutAt(p, s.wayMm);
    r.p = p; r.depthMm = max(0.0, -s.outside); r.overGroove = cut.overGroove; r.at = cut.at;
    return r;
  }
  r.p = p; r.depthMm = -skinAt(p).outside; r.at = cut.at;
  return r;
}
`;
