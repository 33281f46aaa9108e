/** The lines that an SVG file draws, each with the transforms that lead to millimetres. */
import { pathDataOf } from './svg-shapes.ts';
import { fitViewBox, millimetresPerPx, outerViewport, viewBoxOf } from './svg-units.ts';

/** The little of an element that is read, so that this runs without a browser too. */
export interface SvgElement {
  readonly localName: string;
  readonly children: Iterable<SvgElement>;
  readonly textContent?: string | null;
  getAttribute(name: string): string | null;
}

export interface DrawnPath {
  /** What the file calls it, or what it is. */
  readonly name: string;
  readonly data: string;
  /** In the words of SVG, the innermost first; the last leads to millimetres, y down. */
  readonly transforms: readonly string[];
}

/** What is defined in these is drawn only where something refers to it. */
const undrawn = new Set([
  'defs',
  'clipPath',
  'mask',
  'marker',
  'pattern',
  'symbol',
  'metadata',
  'style',
  'script',
]);

/** Many more than anybody chooses from; a hostile file of nested references ends here. */
const mostPaths = 400;
const mostNesting = 64;

/** @param root the outermost `svg` of a file */
export function pathsOf(root: SvgElement): DrawnPath[] {
  const named = new Map<string, SvgElement>();
  collectNames(root, named, 0);
  const paths: DrawnPath[] = [];
  const { matrix } = outerViewport((name) => root.getAttribute(name));
  walkChildren(root, [`matrix(${matrix.join(' ')})`], { named, paths, depth: 0 });
  return paths;
}

interface Walk {
  readonly named: ReadonlyMap<string, SvgElement>;
  readonly paths: DrawnPath[];
  readonly depth: number;
}

function collectNames(element: SvgElement, named: Map<string, SvgElement>, depth: number): void {
  const id = element.getAttribute('id');
  if (id !== null && !named.has(id)) named.set(id, element);
  if (depth > mostNesting) return;
  for (const child of element.children) collectNames(child, named, depth + 1);
}

function walkChildren(element: SvgElement, outer: readonly string[], walk: Walk): void {
  if (walk.depth > mostNesting) return;
  for (const child of element.children) walkElement(child, outer, { ...walk, depth: walk.depth + 1 });
}

function walkElement(element: SvgElement, outer: readonly string[], walk: Walk): void {
  const tag = element.localName;
  if (undrawn.has(tag) || isHidden(element) || walk.paths.length >= mostPaths) return;
  const own = element.getAttribute('transform') ?? '';
  const transforms = own.trim() === '' ? outer : [own, ...outer];
  if (tag === 'use') walkReferred(element, transforms, walk);
  else if (tag === 'svg') walkChildren(element, [...innerViewport(element, element), ...transforms], walk);
  else {
    const data = pathDataOf(tag, (name) => element.getAttribute(name));
    if (data === undefined) walkChildren(element, transforms, walk);
    else if (data.trim() !== '') walk.paths.push({ name: nameOf(element), data, transforms });
  }
}

/** Something drawn once more at another place. */
function walkReferred(use: SvgElement, outer: readonly string[], walk: Walk): void {
  const href = use.getAttribute('href') ?? use.getAttribute('xlink:href') ?? '';
  const referred = href.startsWith('#') ? walk.named.get(href.slice(1)) : undefined;
  if (referred === undefined || walk.depth > mostNesting) return;
  const deeper = { ...walk, depth: walk.depth + 1 };
  const moved = [`translate(${use.getAttribute('x') ?? 0} ${use.getAttribute('y') ?? 0})`, ...outer];
  if (referred.localName === 'symbol')
    walkChildren(referred, [...innerViewport(referred, use), ...moved], deeper);
  else walkElement(referred, moved, deeper);
}

/** The view box of a nested `svg` or a symbol in the box that is given to it, as transforms. */
function innerViewport(element: SvgElement, sized: SvgElement): string[] {
  const size = (name: string) => Number.parseFloat(sized.getAttribute(name) ?? '');
  const place = element === sized ? `translate(${size('x') || 0} ${size('y') || 0})` : '';
  const box = viewBoxOf(element.getAttribute('viewBox'));
  const [width, height] = [size('width'), size('height')];
  const fits = box !== undefined && width > 0 && height > 0;
  const fit = fits ? fitViewBox(box, width, height, element.getAttribute('preserveAspectRatio')) : undefined;
  return [fit === undefined ? '' : `matrix(${fit.join(' ')})`, place].filter((transform) => transform !== '');
}

function isHidden(element: SvgElement): boolean {
  const style = element.getAttribute('style') ?? '';
  return element.getAttribute('display') === 'none' || /(?:^|;)\s*display\s*:\s*none/.test(style);
}

function nameOf(element: SvgElement): string {
  const title = [...element.children].find(({ localName }) => localName === 'title')?.textContent?.trim();
  return title || element.getAttribute('id') || element.localName;
}

/** Path data that was pasted by itself counts in px, as it would in a file without a view box. */
export function pastedPath(data: string): DrawnPath {
  return { name: 'path', data, transforms: [`scale(${millimetresPerPx})`] };
}
