/** Compiles and links; a shader that does not compile is a programmer's slip and throws. */
export function glProgram(
  gl: WebGL2RenderingContext,
  vertexText: string,
  fragmentText: string,
): WebGLProgram {
  const program = gl.createProgram();
  for (const [kind, text] of [
    [gl.VERTEX_SHADER, vertexText],
    [gl.FRAGMENT_SHADER, fragmentText],
  ] as const) {
    const shader = gl.createShader(kind)!;
    gl.shaderSource(shader, text);
    gl.compileShader(shader);
    if (!gl.getShaderParameter(shader, gl.COMPILE_STATUS) && !gl.isContextLost()) {
      throw new Error(`shader: ${gl.getShaderInfoLog(shader)}`);
    }
    gl.attachShader(program, shader);
    gl.deleteShader(shader);
  }
  gl.linkProgram(program);
  if (!gl.getProgramParameter(program, gl.LINK_STATUS) && !gl.isContextLost()) {
    throw new Error(`shader program: ${gl.getProgramInfoLog(program)}`);
  }
  return program;
}

export interface TextureData {
  readonly unit: number;
  readonly widthPx: number;
  readonly heightPx: number;
  readonly format: 'rgba8' | 'rgb8' | 'r16f';
  readonly data: Uint8Array | Float32Array;
  /** Closes round the wheel. */
  readonly round: boolean;
}

/** Uploads a texture to its unit, linear, without smaller copies: the sights of a pixel average. */
export function glTexture(gl: WebGL2RenderingContext, texture: TextureData): WebGLTexture {
  const made = gl.createTexture();
  gl.activeTexture(gl.TEXTURE0 + texture.unit);
  gl.bindTexture(gl.TEXTURE_2D, made);
  const [inside, outside, type] = {
    rgba8: [gl.RGBA8, gl.RGBA, gl.UNSIGNED_BYTE],
    rgb8: [gl.RGB8, gl.RGB, gl.UNSIGNED_BYTE],
    r16f: [gl.R16F, gl.RED, gl.FLOAT],
  }[texture.format];
  gl.pixelStorei(gl.UNPACK_ALIGNMENT, 1);
  const { widthPx, heightPx, data } = texture;
  gl.texImage2D(gl.TEXTURE_2D, 0, inside, widthPx, heightPx, 0, outside, type, data);
  gl.texParameteri(gl.TEXTURE_2D, gl.TEXTURE_MIN_FILTER, gl.LINEAR);
  gl.texParameteri(gl.TEXTURE_2D, gl.TEXTURE_MAG_FILTER, gl.LINEAR);
  gl.texParameteri(gl.TEXTURE_2D, gl.TEXTURE_WRAP_S, texture.round ? gl.REPEAT : gl.CLAMP_TO_EDGE);
  gl.texParameteri(gl.TEXTURE_2D, gl.TEXTURE_WRAP_T, gl.CLAMP_TO_EDGE);
  return made;
}
