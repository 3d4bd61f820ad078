import type { SightCount } from '../cpu/renderPicture.ts';
import type { WheelPose } from '../motion/wheelPose.ts';
import { frameView } from '../view/frameView.ts';
import { LASER_RGB } from '../view/lighting.ts';
import type { StandModel } from '../view/standModel.ts';
import { glProgram, glTexture } from './glProgram.ts';
import { FRAGMENT_GLSL, VERTEX_GLSL } from './shaders.ts';

/** The stand drawn by WebGL2: the same scene, maps, light and camera as `cpu/renderPicture.ts`. */
export interface GlStand {
  draw(pose: WheelPose): void;
  /** Other weights on the rim. */
  changeRim(model: StandModel): void;
  /** Lines of sight a pixel: 4, or fewer on a slow machine. */
  setSights(count: SightCount): void;
  /** Time that a whole picture takes with four sights, told from a small part of it, ms. */
  probeMs(pose: WheelPose): number;
  dispose(): void;
}

const UNIT = { tread: 0, rimHeights: 1, rimTexels: 2, shed: 3 } as const;

/** Null where the browser has no WebGL2. The canvas gets the scene's size. */
export function glStand(
  canvas: HTMLCanvasElement | OffscreenCanvas,
  model: StandModel,
): GlStand | null {
  canvas.width = model.scene.camera.widthPx;
  canvas.height = model.scene.camera.heightPx;
  const gl = canvas.getContext('webgl2', {
    alpha: false,
    antialias: false,
    depth: false,
    // A stream may take the picture after the browser has shown it.
    preserveDrawingBuffer: true,
  }) as WebGL2RenderingContext | null;
  if (!gl) return null;
  const program = glProgram(gl, VERTEX_GLSL, FRAGMENT_GLSL);
  gl.useProgram(program);
  const at = (name: string) => gl.getUniformLocation(program, name);
  const textures = [treadTexture(gl, model), shedTexture(gl, model)];
  let rim = rimTextures(gl, model);
  setShape(gl, at, model);
  let sights: SightCount = 4;
  let count = 0;
  const draw = (pose: WheelPose): void => {
    const view = frameView(model, pose);
    for (const name of ['eye', 'right', 'down', 'ahead', 'laserSource'] as const) {
      gl.uniform3fv(at(name), view[name]);
    }
    gl.uniform3fv(at('lampWay'), view.lamp);
    gl.uniform3fv(at('windowWay'), view.window);
    gl.uniform3fv(at('upWay'), view.up);
    const [sheetX, sheetY, sheetZ] = view.sheet;
    gl.uniform4f(at('sheet'), sheetX, sheetY, sheetZ, view.sheetOffsetMm);
    const { laser, camera } = model.scene;
    gl.uniform4f(at('laserShape'), view.laserPeak, laser.widthMm, laser.skirt, laser.skirtWidthMm);
    gl.uniform4f(at('sensor'), camera.exposure, camera.noise, count++, sights);
    gl.drawArrays(gl.TRIANGLES, 0, 3);
  };
  return {
    draw,
    probeMs: (pose) => probe(gl, () => draw(pose)),
    changeRim(next) {
      for (const texture of rim) gl.deleteTexture(texture);
      rim = rimTextures(gl, next);
    },
    setSights(next) {
      sights = next;
    },
    dispose() {
      for (const texture of [...textures, ...rim]) gl.deleteTexture(texture);
      gl.deleteProgram(program);
      gl.getExtension('WEBGL_lose_context')?.loseContext();
    },
  };
}

/** Side of the part that is drawn to time the rest. */
const PROBE_SHARE = 0.12;

/** Draws the middle of the picture, where tyre, rim and line are, and waits for it. */
function probe(gl: WebGL2RenderingContext, draw: () => void): number {
  const { drawingBufferWidth: width, drawingBufferHeight: height } = gl;
  const [w, h] = [Math.ceil(PROBE_SHARE * width), Math.ceil(PROBE_SHARE * height)];
  const x = Math.round((width - w) / 2);
  const y = Math.round((height - h) / 2);
  gl.enable(gl.SCISSOR_TEST);
  gl.scissor(x, y, w, h);
  const pixel = new Uint8Array(4);
  // The first picture also compiles.
  draw();
  gl.readPixels(x, y, 1, 1, gl.RGBA, gl.UNSIGNED_BYTE, pixel);
  const startMs = performance.now();
  draw();
  gl.readPixels(x, y, 1, 1, gl.RGBA, gl.UNSIGNED_BYTE, pixel);
  const tookMs = performance.now() - startMs;
  gl.disable(gl.SCISSOR_TEST);
  return (tookMs * width * height) / (w * h);
}

function treadTexture(gl: WebGL2RenderingContext, { tread }: StandModel): WebGLTexture {
  const size = { widthPx: tread.columns, heightPx: tread.rows };
  return glTexture(gl, {
    ...{ unit: UNIT.tread, ...size, format: 'rgba8', data: tread.texels, round: true },
  });
}

function shedTexture(gl: WebGL2RenderingContext, { shed }: StandModel): WebGLTexture {
  const { widthPx, heightPx, texels } = shed;
  return glTexture(gl, {
    ...{ unit: UNIT.shed, widthPx, heightPx, format: 'rgb8', data: texels, round: false },
  });
}

function rimTextures(gl: WebGL2RenderingContext, { rim }: StandModel): WebGLTexture[] {
  const size = { widthPx: rim.size, heightPx: rim.size, round: false };
  return [
    glTexture(gl, { unit: UNIT.rimHeights, ...size, format: 'r16f', data: rim.heightMm }),
    glTexture(gl, { unit: UNIT.rimTexels, ...size, format: 'rgba8', data: rim.texels }),
  ];
}

/** All that does not change from picture to picture. */
function setShape(
  gl: WebGL2RenderingContext,
  at: (name: string) => WebGLUniformLocation | null,
  model: StandModel,
): void {
  const { scene, profile, tread, rim, camera } = model;
  profile.arcs.forEach((arc, k) => {
    const { centreRadiusMm, centreHeightMm, radiusMm, fromRad, toRad, wayMm } = arc;
    gl.uniform4f(at(`arcShape[${k}]`), centreRadiusMm, centreHeightMm, radiusMm, fromRad);
    gl.uniform3f(at(`arcJoint[${k}]`), -Math.sin(toRad), Math.cos(toRad), wayMm);
  });
  const { outerRadiusMm, flangeRadiusMm, topMm } = profile;
  gl.uniform4f(at('tyreSize'), outerRadiusMm, flangeRadiusMm, topMm, rim.lidMm);
  gl.uniform4f(at('treadShape'), tread.columns, tread.rows, tread.fromWayMm, tread.wayPerRowMm);
  const { grooves, lateralRunOut } = scene.tyre;
  grooves.slice(0, 6).forEach(({ topMm, widthMm, depthMm }, k) => {
    gl.uniform3f(at(`grooves[${k}]`), topMm, widthMm, depthMm);
  });
  gl.uniform1i(at('grooveCount'), Math.min(6, grooves.length));
  // Once-round run-out is in the tyre's frame already.
  const waves = lateralRunOut.filter((wave) => wave.order > 1).slice(0, 6);
  waves.forEach(({ order, amplitudeMm, highAtDeg }, k) => {
    gl.uniform3f(at(`waves[${k}]`), order, amplitudeMm, (highAtDeg * Math.PI) / 180);
  });
  gl.uniform1i(at('waveCount'), waves.length);
  gl.uniform1f(at('rimHalfWidth'), rim.halfWidthMm);
  gl.uniform3fv(at('laserRgb'), LASER_RGB[scene.laser.colour]);
  const { widthPx, heightPx } = scene.camera;
  gl.uniform4f(at('lens'), widthPx, heightPx, camera.pinhole.focalPx, camera.distortion);
  for (const [name, unit] of [
    ['treadTexels', UNIT.tread],
    ['rimHeights', UNIT.rimHeights],
    ['rimTexels', UNIT.rimTexels],
    ['shed', UNIT.shed],
  ] as const) {
    gl.uniform1i(at(name), unit);
  }
}
