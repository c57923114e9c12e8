import { captionOf } from './exportCaption';
import { addCaption, addKey } from './exportWords';
import { keepLook } from './keepLook';

/** Times the page's own size, so that small lettering stays readable in print. */
const PNG_SCALE = 2;
const MARGIN = 12;

/** Canvases laid under the picture (depth map) become images in it. */
function addCanvas(picture: SVGSVGElement, copy: SVGSVGElement): void {
  const canvas = picture.parentElement?.querySelector('canvas');
  if (!canvas) return;
  const [frame, own] = [picture.getBoundingClientRect(), canvas.getBoundingClientRect()];
  const image = document.createElementNS('http://www.w3.org/2000/svg', 'image');
  image.setAttribute('x', String(own.left - frame.left));
  image.setAttribute('y', String(own.top - frame.top));
  image.setAttribute('width', String(own.width));
  image.setAttribute('height', String(own.height));
  image.setAttribute('preserveAspectRatio', 'none');
  image.setAttribute('href', canvas.toDataURL('image/png'));
  copy.prepend(image);
}

interface Copied {
  readonly text: string;
  readonly width: number;
  readonly height: number;
}

/** The picture as a file of its own: colours, fonts and paper written in. */
export function svgText(picture: SVGSVGElement): Copied {
  const copy = picture.cloneNode(true) as SVGSVGElement;
  keepLook(picture, copy);
  const { width, height } = picture.getBoundingClientRect();
  addCanvas(picture, copy);
  const head = addCaption(copy, captionOf(picture), width);
  const foot = addKey(picture, copy, width, height);
  const top = -MARGIN - head;
  const size = { width: Math.ceil(width + 2 * MARGIN), height: Math.ceil(head + height + foot + 2 * MARGIN) };
  copy.setAttribute('xmlns', 'http://www.w3.org/2000/svg');
  copy.setAttribute('width', String(size.width));
  copy.setAttribute('height', String(size.height));
  copy.setAttribute('viewBox', `${-MARGIN} ${top} ${size.width} ${size.height}`);
  const paper = document.createElementNS('http://www.w3.org/2000/svg', 'rect');
  for (const [name, value] of [
    ['x', -MARGIN],
    ['y', top],
    ['width', size.width],
    ['height', size.height],
  ] as const)
    paper.setAttribute(name, String(value));
  paper.setAttribute('fill', getComputedStyle(document.documentElement).getPropertyValue('--sheet').trim());
  copy.prepend(paper);
  return { text: new XMLSerializer().serializeToString(copy), ...size };
}

/** The picture as PNG. Rejects with a readable reason when the browser cannot draw it. */
export async function pngOf(picture: SVGSVGElement): Promise<Blob> {
  const { text, width, height } = svgText(picture);
  const address = URL.createObjectURL(new Blob([text], { type: 'image/svg+xml' }));
  try {
    const image = new Image();
    image.src = address;
    await image.decode();
    const canvas = document.createElement('canvas');
    canvas.width = width * PNG_SCALE;
    canvas.height = height * PNG_SCALE;
    canvas.getContext('2d')!.drawImage(image, 0, 0, canvas.width, canvas.height);
    const blob = await new Promise<Blob | null>((resolve) => canvas.toBlob(resolve, 'image/png'));
    if (!blob) throw new Error('This browser could not make a PNG of the chart.');
    return blob;
  } finally {
    URL.revokeObjectURL(address);
  }
}
