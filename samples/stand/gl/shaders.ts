import { LIGHTING as L } from '../view/lighting.ts';
import { LIGHT_GLSL, SIGHT_GLSL } from './shaderLight.ts';
import { glslFloat as f, RELIEF_GLSL, SKIN_GLSL } from './shaderSkin.ts';

/** One triangle over the whole picture. */
export const VERTEX_GLSL = /* glsl */ `#version 300 es
void main() {
  vec2 corner = vec2((gl_VertexID << 1) & 2, gl_VertexID & 2);
  gl_Position = vec4(corner * 2.0 - 1.0, 0.0, 1.0);
}
`;

const CAMERA_GLSL = /* glsl */ `
uniform vec3 eye;
uniform vec3 right;
uniform vec3 down;
uniform vec3 ahead;
uniform vec4 lens;          // width px, height px, focal px, distortion
uniform vec4 sensor;        // exposure, noise in steps, picture's number, sights a pixel
uniform sampler2D shed;
out vec4 pixel;

// Even deviates 0 to 1 by integer mixing (PCG, M. Jarzynski and M. Olano 2020).
uvec3 mixed(uvec3 v) {
  v = v * 1664525u + 1013904223u;
  v.x += v.y * v.z; v.y += v.z * v.x; v.z += v.x * v.y;
  v ^= v >> 16u;
  v.x += v.y * v.z; v.y += v.z * v.x; v.z += v.x * v.y;
  return v;
}

vec3 normalDeviates(uvec3 seed) {
  // Sum of four even deviates: near enough to a bell for a camera's noise.
  vec3 a = vec3(mixed(seed)) / 4294967295.0;
  vec3 b = vec3(mixed(seed + uvec3(7919u, 104729u, 15485863u))) / 4294967295.0;
  vec3 c = vec3(mixed(seed + uvec3(32452843u, 49979687u, 67867967u))) / 4294967295.0;
  vec3 d = vec3(mixed(seed + uvec3(86028121u, 122949823u, 141650939u))) / 4294967295.0;
  return (a + b + c + d - 2.0) * 1.7320508;
}

vec3 cameraCurve(vec3 light) {
  vec3 q = light / 1.25;
  return min(vec3(1.0), pow(light / pow(1.0 + q * q * q, vec3(1.0 / 3.0)), vec3(1.0 / 2.2)));
}

vec3 directionAt(vec2 px) {
  float halfWidth = lens.x / 2.0;
  vec2 at = (px - lens.xy / 2.0) / halfWidth;
  vec2 slope = at * (1.0 - lens.w * dot(at, at)) * halfWidth / lens.z;
  return ahead + slope.x * right + slope.y * down;
}

void main() {
  vec2 corner = vec2(gl_FragCoord.x - 0.5, lens.y - gl_FragCoord.y - 0.5);
  vec3 shedLight = ${f(L.gain)} * squared(textureLod(shed, (corner + 0.5) / lens.xy, 0.0).rgb);
  vec3 sum = vec3(0.0);
  int sights = int(sensor.w);
  for (int k = 0; k < 4; k++) {
    if (k >= sights) break;
    vec2 inside = sights == 1 ? vec2(0.5)
      : k == 0 ? vec2(0.375, 0.125) : k == 1 ? vec2(0.625, 0.875)
      : k == 2 ? vec2(0.875, 0.375) : vec2(0.125, 0.625);
    vec3 light;
    // Lengths along a sight are millimetres: the relief's steps are.
    if (!seenLight(eye, normalize(directionAt(corner + inside)), light)) light = shedLight;
    sum += light;
  }
  vec3 noise = normalDeviates(uvec3(uint(corner.x), uint(corner.y), uint(sensor.z)));
  vec3 steps = cameraCurve(sum * sensor.x / float(sights)) + noise * sensor.y / 255.0;
  pixel = vec4(clamp(steps, 0.0, 1.0), 1.0);
}
`;

export const FRAGMENT_GLSL = /* glsl */ `#version 300 es
precision highp float;
precision highp int;
precision highp sampler2D;
${SKIN_GLSL}${RELIEF_GLSL}${LIGHT_GLSL}${SIGHT_GLSL}${CAMERA_GLSL}`;
