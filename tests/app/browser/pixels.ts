/** Colours in a screenshot. */
import type { Browser } from 'playwright-core';

export interface Picture {
  readonly width: number;
  readonly height: number;
  /** Red, green, blue, alpha of each dot. */
  readonly data: readonly number[];
}

/** Decodes a PNG on an empty page of the browser itself. */
export async function decodePng(browser: Browser, png: Buffer): Promise<Picture> {
  const page = await browser.newPage();
  try {
    return await page.evaluate(
      async (address) => {
        const image = new Image();
        image.src = address;
        await image.decode();
        const canvas = new OffscreenCanvas(image.width, image.height);
        const context = canvas.getContext('2d')!;
        context.drawImage(image, 0, 0);
        const { data } = context.getImageData(0, 0, image.width, image.height);
        return { width: image.width, height: image.height, data: [...data] };
      },
      `data:image/png;base64,${png.toString('base64')}`,
    );
  } finally {
    await page.close();
  }
}

/** Mean of the brightest channel within a few dots, 0..255. */
export function glowAt({ width, height, data }: Picture, x: number, y: number, radius = 2): number {
  let sum = 0;
  let count = 0;
  for (let row = Math.round(y) - radius; row <= y + radius; row++) {
    for (let column = Math.round(x) - radius; column <= x + radius; column++) {
      if (row < 0 || row >= height || column < 0 || column >= width) continue;
      const at = (row * width + column) * 4;
      sum += Math.max(data[at]!, data[at + 1]!, data[at + 2]!);
      count += 1;
    }
  }
  return sum / count;
}
