import {
  LASER_REFLECTANCE_POWER,
  LIGHTING as L,
  PLAIN_RUBBER,
  RELIEF_STEP_MM,
  RIM_SLOPE_TEXELS,
  SPECKLE,
} from '../view/lighting.ts';
import { glslFloat as f } from './shaderSkin.ts';

/** GLSL: lamps, surroundings and laser; the same sums as `cpu/surfaceLight.ts` and `laserLight.ts`. */
export const LIGHT_GLSL = /* glsl */ `
uniform vec3 lampWay;
uniform vec3 windowWay;
uniform vec3 upWay;
uniform vec4 sheet;         // upward normal, offset
uniform vec3 laserSource;
uniform vec4 laserShape;    // peak, width, skirt, skirt width
uniform vec3 laserRgb;

float fallingLight(vec3 n) {
  float wrap = ${f(L.lampWrap)};
  float toLamp = max(0.0, (dot(n, lampWay) + wrap) / (1.0 + wrap));
  float toWindow = max(0.0, (dot(n, windowWay) + wrap) / (1.0 + wrap));
  float sky = ${f(1 - L.skyShare)} + ${f(L.skyShare)} * dot(n, upWay);
  return ${f(L.ambient)} * sky + ${f(L.lampLight)} * toLamp + ${f(L.windowLight)} * toWindow;
}

float surroundings(vec3 r) {
  float toLamp = max(0.0, dot(r, lampWay));
  float toWindow = max(0.0, dot(r, windowWay));
  float w2 = toWindow * toWindow;
  float l4 = toLamp * toLamp * toLamp * toLamp;
  return 0.12 + 0.2 * max(0.0, dot(r, upWay)) + 1.1 * l4 * l4 * l4 + 0.5 * w2 * w2;
}

float mirrored(vec3 n, vec3 way, float straight) {
  float against = -dot(n, way);
  float grazing = 1.0 - clamp(against, 0.0, 1.0);
  float g2 = grazing * grazing;
  return (straight + (1.0 - straight) * g2 * g2 * grazing) * surroundings(way + 2.0 * against * n);
}

bool shadowed(vec3 p, vec3 way) {
  for (int k = 1; k <= 9; k++) {
    vec3 q = p + float(k) * ${f(RELIEF_STEP_MM)} * way;
    Skin s = skinAt(q);
    if (s.outside > 0.0) return false;
    if (-s.outside > cutAt(q, s.wayMm).depthMm + 0.1) return true;
  }
  return false;
}

float laserLight(vec3 p, vec3 n, float reflectance, float depthMm, vec2 at) {
  float height = dot(sheet.xyz, p) + sheet.w;
  if (laserShape.x == 0.0 || abs(height) > 3.2 * laserShape.w) return 0.0;
  vec3 way = normalize(laserSource - p);
  float facing = dot(n, way);
  if (facing <= 0.0 || (depthMm > 0.2 && shadowed(p, way))) return 0.0;
  float core = height / laserShape.y;
  float wide = height / laserShape.w;
  float thickness = exp(-0.5 * core * core) + laserShape.z * exp(-0.5 * wide * wide);
  float sent = pow(reflectance / ${f(PLAIN_RUBBER)}, ${f(LASER_REFLECTANCE_POWER)});
  vec2 texel = floor(at * treadShape.xy - 0.5);
  float grain = fract(sin(dot(texel, vec2(12.9898, 78.233))) * 43758.5453);
  return laserShape.x * thickness * facing * sent * (1.0 + ${f(SPECKLE)} * (2.0 * grain - 1.0));
}
`;

/** GLSL: what one line of sight shows; `false` where only the shed is seen. */
export const SIGHT_GLSL = /* glsl */ `
uniform sampler2D rimHeights;
uniform sampler2D rimTexels;
uniform float rimHalfWidth;

vec3 squared(vec3 root) { return root * root; }

float rimHeight(vec2 at) { return textureLod(rimHeights, at, 0.0).r; }

vec3 rimLight(vec3 p, vec3 way) {
  float step = 0.0;
  int halvings = 0;
  vec2 at = vec2(0.5);
  for (int k = 0; k < 90; k++) {
    at = (p.xy / rimHalfWidth) * 0.5 + 0.5;
    float above = p.z - rimHeight(at);
    if (abs(above) < 0.3) break;
    if (halvings > 0 || above < 0.0) {
      if (halvings++ == 6) break;
      step = (above < 0.0 ? -0.5 : 0.5) * abs(step);
    } else {
      step = clamp(above * 0.6, 0.8, 12.0);
    }
    p += way * step;
  }
  float texel = 1.0 / float(textureSize(rimHeights, 0).x);
  float mm = 2.0 * rimHalfWidth * texel;
  vec2 fall = vec2(
    rimHeight(at - vec2(${f(RIM_SLOPE_TEXELS)} * texel, 0.0)) - rimHeight(at + vec2(${f(RIM_SLOPE_TEXELS)} * texel, 0.0)),
    rimHeight(at - vec2(0.0, ${f(RIM_SLOPE_TEXELS)} * texel)) - rimHeight(at + vec2(0.0, ${f(RIM_SLOPE_TEXELS)} * texel))
  ) / mm;
  vec3 n = normalize(vec3(fall, ${f(2 * RIM_SLOPE_TEXELS)}));
  vec4 look = textureLod(rimTexels, at, 0.0);
  float deep = max(0.0, tyreSize.w - p.z);
  float shade = 1.0 / (1.0 + 0.0006 * deep * deep);
  float light = ${f(L.rimFalling)} * fallingLight(n) * shade
    + ${f(L.rimMirrored)} * mirrored(n, way, 0.35) * look.a * shade;
  return ${f(L.gain)} * squared(look.rgb) * light;
}

bool seenLight(vec3 o, vec3 d, out vec3 light) {
  float along;
  int kind = meetTyre(o, d, along);
  if (kind == 0) return false;
  if (kind == 2) { light = rimLight(o + along * d, normalize(d)); return true; }
  // The relief goes in millimetres along the line.
  vec3 way = normalize(d);
  Relief r = meetRelief(o, d, along);
  if (r.passed) return false;
  Skin s = skinAt(r.p);
  float shade = 1.0;
  vec2 n = vec2(s.normalRadius, s.normalZ);
  if (r.depthMm > 0.0) {
    shade = 1.0 / (1.0 + ${f(L.depthShade)} * r.depthMm);
    if (r.wall) {
      shade *= r.overGroove ? ${f(L.upperFacing)} : ${f(L.otherWalls)};
      if (r.overGroove) n = vec2(0.3, 0.95);
    }
  }
  vec3 normal = vec3(n.x * r.p.xy / s.radius, n.y);
  vec3 reflectance = squared(textureLod(treadTexels, r.at, 0.0).rgb);
  float sheen = r.depthMm > 0.0 ? 0.0 : mirrored(normal, way, ${f(L.sheen)}) * 0.16;
  float laser = laserLight(r.p, normal, reflectance.g, r.depthMm, r.at);
  light = ${f(L.gain)} * (reflectance * fallingLight(normal) * shade + sheen) + laser * laserRgb;
  return true;
}
`;
