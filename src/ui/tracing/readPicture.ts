import { LARGEST_PICTURE } from '$src/cells/underlay';

/** A picture small enough to be kept in a book. */
export interface KeptPicture {
  readonly image: string;
  readonly width: number;
  readonly height: number;
}

/** Longer sides to try, and how well the JPEG keeps it: the first that is small enough is taken. */
const TRIES = [
  { side: 1600, quality: 0.8 },
  { side: 1200, quality: 0.7 },
  { side: 900, quality: 0.6 },
  { side: 600, quality: 0.5 },
] as const;

/** Makes a photo or scan small enough for a book; null when the browser cannot read it as a picture. */
export async function readPicture(file: Blob): Promise<KeptPicture | null> {
  let bitmap: ImageBitmap;
  try {
    bitmap = await createImageBitmap(file);
  } catch {
    return null;
  }
  try {
    for (const { side, quality } of TRIES) {
      const kept = drawnAt(bitmap, side, quality);
      if (kept && kept.image.length <= LARGEST_PICTURE) return kept;
    }
    return null;
  } finally {
    bitmap.close();
  }
}

function drawnAt(bitmap: ImageBitmap, side: number, quality: number): KeptPicture | null {
  const share = Math.min(1, side / Math.max(bitmap.width, bitmap.height));
  const [width, height] = [bitmap.width, bitmap.height].map((size) =>
    Math.max(1, Math.round(size * share)),
  ) as [number, number];
  const canvas = document.createElement('canvas');
  canvas.width = width;
  canvas.height = height;
  const pen = canvas.getContext('2d');
  if (!pen) return null;
  // JPEG has no see-through parts: they become paper.
  pen.fillStyle = '#fff';
  pen.fillRect(0, 0, width, height);
  pen.drawImage(bitmap, 0, 0, width, height);
  return { image: canvas.toDataURL('image/jpeg', quality), width, height };
}
