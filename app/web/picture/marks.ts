/** Rings around pixels that are pointed at: light on dark on light, so that they show on any picture. */

const strokes = [
  { colour: '#0b0907', wide: 5 },
  { colour: '#fff3d6', wide: 2 },
] as const;

/** A ring lies clear of the light in it; many rings are drawn smaller, so as not to cover each other. */
function ringRadius(pitch: number, many: boolean): number {
  return many ? Math.min(8, Math.max(4, pitch * 0.4)) : Math.min(16, Math.max(9, pitch * 0.6));
}

/** More than this and a zone is meant, not a pixel. */
const few = 12;

/**
 * @param spots x and y of each pixel in CSS pixels
 * @param pointed in wire order
 */
export function drawMarks(
  canvas: HTMLCanvasElement,
  size: { readonly width: number; readonly height: number },
  spots: Float32Array,
  pitch: number,
  pointed: readonly number[],
): void {
  const context = canvas.getContext('2d');
  if (context === null) return;
  const density = window.devicePixelRatio;
  canvas.width = Math.round(size.width * density);
  canvas.height = Math.round(size.height * density);
  context.scale(density, density);
  const radius = ringRadius(pitch, pointed.length > few);
  for (const { colour, wide } of strokes) {
    context.strokeStyle = colour;
    context.lineWidth = wide;
    for (const pixel of pointed) {
      const [x, y] = [spots[2 * pixel], spots[2 * pixel + 1]];
      if (x === undefined || y === undefined) continue;
      context.beginPath();
      context.arc(x, y, radius, 0, 2 * Math.PI);
      context.stroke();
    }
  }
}
