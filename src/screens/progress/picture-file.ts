/** Makes a file of a drawn SVG: the style sheet's colours written into it, on light paper, whatever the theme. */

/** What the style sheet decides and a file alone would miss. */
const STYLES = [
  ...['fill', 'stroke', 'stroke-width', 'stroke-dasharray', 'stroke-linecap', 'stroke-linejoin', 'paint-order', 'opacity'],
  ...['font-size', 'font-weight', 'font-family', 'text-anchor'],
] as const;

export function svgText(svg: SVGSVGElement): string {
  return inLight(() => new XMLSerializer().serializeToString(styledCopy(svg)));
}

/** In one go, so that nothing is drawn meanwhile. Colours are settled at the root: a theme further in changes none. */
function inLight<T>(work: () => T): T {
  const { dataset } = document.documentElement;
  const theme = dataset.theme;
  dataset.theme = 'light';
  try {
    return work();
  } finally {
    if (theme === undefined) delete dataset.theme;
    else dataset.theme = theme;
  }
}

function styledCopy(svg: SVGSVGElement): SVGSVGElement {
  const copy = svg.cloneNode(true) as SVGSVGElement;
  // Somewhere in the page, or it has no computed style; out of sight.
  const away = document.createElement('div');
  away.style.cssText = 'position:absolute;inset-inline-start:-9999px;background:var(--paper)';
  copy.style.display = 'block';
  away.append(copy);
  document.body.append(away);
  const paper = plainColour(getComputedStyle(away).backgroundColor);
  for (const element of copy.querySelectorAll<SVGElement>('path, rect, circle, text')) writeStyle(element);
  away.remove();
  copy.removeAttribute('class');
  copy.removeAttribute('aria-hidden');
  copy.removeAttribute('style');
  copy.setAttribute('xmlns', 'http://www.w3.org/2000/svg');
  copy.prepend(ground(copy, paper));
  return copy;
}

function writeStyle(element: SVGElement): void {
  const style = getComputedStyle(element);
  for (const name of STYLES) {
    const value = style.getPropertyValue(name);
    element.setAttribute(name, name === 'fill' || name === 'stroke' ? plainColour(value) : value);
  }
  element.removeAttribute('class');
}

/** Drawing programs read rgb and hex only: whatever the style sheet says is painted on one point and read back. */
function plainColour(colour: string): string {
  if (colour === 'none' || colour.startsWith('url(')) return colour;
  const context = new OffscreenCanvas(1, 1).getContext('2d');
  if (!context) return colour;
  context.fillStyle = colour;
  context.fillRect(0, 0, 1, 1);
  const [red = 0, green = 0, blue = 0, alpha = 255] = context.getImageData(0, 0, 1, 1).data;
  return alpha === 0 ? 'none' : `rgb(${red},${green},${blue})`;
}

/** The paper under the ink. */
function ground(svg: SVGSVGElement, paper: string): SVGElement {
  const rect = document.createElementNS('http://www.w3.org/2000/svg', 'rect');
  rect.setAttribute('width', svg.getAttribute('width') ?? '100%');
  rect.setAttribute('height', svg.getAttribute('height') ?? '100%');
  rect.setAttribute('fill', paper);
  return rect;
}

/** Sharp on paper and on fine screens. */
const SCALE = 3;

/** Null when the browser cannot draw it. */
export async function pngOf(svg: SVGSVGElement): Promise<Blob | null> {
  const image = new Image();
  // The content policy lets in pictures of our own only under such an address.
  image.src = URL.createObjectURL(new Blob([svgText(svg)], { type: 'image/svg+xml' }));
  try {
    await image.decode();
  } catch {
    return null;
  } finally {
    URL.revokeObjectURL(image.src);
  }
  const canvas = document.createElement('canvas');
  canvas.width = SCALE * image.width;
  canvas.height = SCALE * image.height;
  const context = canvas.getContext('2d');
  if (!context) return null;
  context.scale(SCALE, SCALE);
  context.drawImage(image, 0, 0);
  return new Promise((done) => canvas.toBlob(done, 'image/png'));
}
