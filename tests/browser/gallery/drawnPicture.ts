/** A wheel under a laser line in a few strokes, where no film may lie about; or the given picture. */
export async function drawnPicture(backdrop: string | null): Promise<ImageBitmap> {
  if (backdrop !== null) {
    const answer = await fetch(backdrop);
    return createImageBitmap(await answer.blob());
  }
  const canvas = new OffscreenCanvas(1280, 720);
  const pen = canvas.getContext('2d')!;
  pen.fillStyle = '#6b6762';
  pen.fillRect(0, 0, 1280, 720);
  ellipse(pen, 640, 370, 440, 180, '#2c2a28');
  ellipse(pen, 640, 240, 440, 180, '#3a3835');
  ellipse(pen, 640, 190, 290, 110, '#a8a8aa');
  pen.strokeStyle = '#35e06f';
  pen.lineWidth = 4;
  pen.beginPath();
  pen.ellipse(640, 240, 440, 135, 0, 0.2, Math.PI - 0.2);
  pen.stroke();
  return createImageBitmap(canvas);
}

function ellipse(
  pen: OffscreenCanvasRenderingContext2D,
  x: number,
  y: number,
  a: number,
  b: number,
  colour: string,
): void {
  pen.fillStyle = colour;
  pen.beginPath();
  pen.ellipse(x, y, a, b, 0, 0, 2 * Math.PI);
  pen.fill();
}
