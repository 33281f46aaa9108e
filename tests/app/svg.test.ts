/** Drawings in SVG as curves: L22 of app/web/SPEC.md. */
import { describe, expect, test } from 'vitest';
import { isClosed, nodesOf } from '../../app/web/place/curve/nodes.ts';
import { linesOfPath } from '../../app/web/place/curve/path-data.ts';
import { pathsOf, type SvgElement } from '../../app/web/place/curve/svg-drawing.ts';
import { fitViewBox, lengthInMillimetres, outerViewport } from '../../app/web/place/curve/svg-units.ts';
import { distance, type Place, pointOnCubic } from '../../engine/layout/cubic.ts';
import { cubicsOf } from '../../engine/layout/path.ts';

function element(
  localName: string,
  attributes: Record<string, string> = {},
  ...children: SvgElement[]
): SvgElement {
  return { localName, children, getAttribute: (name) => attributes[name] ?? null };
}

/** In SVG's own units: y down, one unit a millimetre. */
function plain(data: string) {
  return linesOfPath({ name: '', data, transforms: ['scale(1 -1)'] });
}

const nearby = (a: Place, b: Place, within: number) => expect(distance(a, b)).toBeLessThan(within);

describe('path data', () => {
  // Examples of SVG 2, chapter 9 (triangle01, cubic01, quad01, arcs01), from memory.
  test('L22 lines and a closing line become pieces of a closed curve', () => {
    const [triangle] = plain('M 100 100 L 300 100 L 200 300 z').lines;
    expect(isClosed(triangle!)).toBe(true);
    expect(nodesOf(triangle!).map(({ at }) => at)).toEqual([
      [100, 100],
      [300, 100],
      [200, 300],
    ]);
  });

  test('L22 a shorthand takes the reflected handle of the piece before', () => {
    const [wave] = plain('M100,200 C100,100 250,100 250,200 S400,300 400,200').lines;
    expect(cubicsOf(wave!)).toEqual([
      { start: [100, 200], firstControl: [100, 100], secondControl: [250, 100], end: [250, 200] },
      { start: [250, 200], firstControl: [250, 300], secondControl: [400, 300], end: [400, 200] },
    ]);
  });

  test('L22 quadratic curves and their shorthand are raised to cubic ones', () => {
    const [hills] = plain('M200,300 Q400,50 600,300 T1000,300').lines;
    const [up, down] = cubicsOf(hills!);
    nearby(pointOnCubic(up!, 0.5), [400, 175], 1e-9);
    nearby(pointOnCubic(down!, 0.5), [800, 425], 1e-9);
  });

  test('L22 an arc stays within 0.03 % of its radius', () => {
    const [pie] = plain('M300,200 h-150 a150,150 0 1,0 150,-150 z').lines;
    const round = cubicsOf(pie!).slice(1, -1);
    expect(round.length).toBeGreaterThanOrEqual(3);
    for (const piece of round) {
      for (let i = 0; i <= 20; i++) {
        expect(Math.abs(distance(pointOnCubic(piece, i / 20), [300, 200]) - 150)).toBeLessThan(150 * 3e-4);
      }
    }
    nearby(round.at(-1)!.end, [300, 50], 1e-9);
  });

  test('L22 arcs bend the same way however they are transformed', () => {
    const mirrored = {
      name: '',
      data: 'M40 0 A40 40 0 0 1 0 40',
      transforms: ['rotate(30)', 'scale(-2 1.500)'],
    };
    const [quarter] = linesOfPath(mirrored).lines;
    for (const cubic of cubicsOf(quarter!)) {
      for (let i = 0; i <= 10; i++) {
        const [x, y] = pointOnCubic(cubic, i / 10);
        expect(Math.abs(Math.hypot(x / 2, y / 1.5) - 40)).toBeLessThan(40 * 3e-4);
      }
    }
    const [x, y] = pointOnCubic(cubicsOf(quarter!)[0]!, 0.5);
    const turned = (75 * Math.PI) / 180;
    nearby([x, y], [-80 * Math.cos(turned), -60 * Math.sin(turned)], 0.05);
  });

  test('L22 each stretch between two lifts of the pen is a curve of its own', () => {
    const { lines, fault } = plain('m0 0 h10 m10 0 v10 l-5 0');
    expect(fault).toBe('');
    expect(lines.map((line) => nodesOf(line).at(-1)!.at)).toEqual([
      [10, 0],
      [15, 10],
    ]);
  });

  test('L22 a curve that is closed where it began has no piece that goes nowhere', () => {
    const [ring] = plain('M0 0 C0 10 20 10 20 0 C20 -10 0 -10 0 0 Z').lines;
    expect(isClosed(ring!)).toBe(true);
    expect(nodesOf(ring!)).toHaveLength(2);
  });

  test('L22 faulty data is drawn up to the fault, which is told', () => {
    const { lines, fault } = plain('M0 0 L10 0 L20 ?');
    expect(nodesOf(lines[0]!)).toHaveLength(2);
    expect(fault).not.toBe('');
    expect(plain('hello').lines).toEqual([]);
  });

  test('L22 y points up on the table', () => {
    const { lines } = linesOfPath({ name: '', data: 'M0 0 L0 10', transforms: [] });
    expect(nodesOf(lines[0]!)[1]!.at).toEqual([0, -10]);
  });
});

describe('units', () => {
  // CSS Values and Units 4, 6.2: 1in = 2.54cm = 96px, 1pc = 1/6in, 1pt = 1/72in, 1Q = 1/40cm.
  test.each([
    ['2.54cm', 25.4],
    ['1in', 25.4],
    ['96px', 25.4],
    ['96', 25.4],
    ['6pc', 25.4],
    ['72pt', 25.4],
    ['40q', 10],
    ['-.5e1mm', -5],
  ])('L22 %s in millimetres', (text, millimetres) => {
    expect(lengthInMillimetres(text)).toBeCloseTo(millimetres, 12);
  });

  test.each(['100%', '3em', 'auto', '', '1 mm mm'])(
    'L22 %s is no length that a file has by itself',
    (text) => {
      expect(lengthInMillimetres(text)).toBeUndefined();
    },
  );

  test('L22 a view box of 1200 by 400 on 12cm by 4cm has a tenth of a millimetre to the unit', () => {
    const attributes: Record<string, string> = { width: '12cm', height: '4cm', viewBox: '0 0 1200 400' };
    expect(outerViewport((name) => attributes[name] ?? null).matrix[0]).toBeCloseTo(0.1, 12);
  });

  test('L22 one length alone follows the view box; none at all counts in px', () => {
    const read = (attributes: Record<string, string>) => outerViewport((name) => attributes[name] ?? null);
    expect(read({ width: '50mm', viewBox: '0 0 100 40' })).toMatchObject({ heightMillimetres: 20 });
    expect(read({ viewBox: '0 0 96 48' }).heightMillimetres).toBeCloseTo(12.7, 12);
    expect(read({ width: '100%', height: '100%', viewBox: '0 0 96 48' }).widthMillimetres).toBeCloseTo(25.4);
  });

  test('L22 a view box is fitted as preserveAspectRatio says', () => {
    const box = { x: 10, y: 0, width: 30, height: 40 };
    expect(fitViewBox(box, 60, 40, null)).toEqual([1, 0, 0, 1, 5, 0]);
    expect(fitViewBox(box, 60, 40, 'xMinYMin meet')).toEqual([1, 0, 0, 1, -10, 0]);
    expect(fitViewBox(box, 60, 40, 'xMaxYMax slice')).toEqual([2, 0, 0, 2, -20, -40]);
    expect(fitViewBox(box, 60, 40, 'none')).toEqual([2, 0, 0, 1, -20, -0]);
  });
});

describe('files', () => {
  const page = { width: '100mm', height: '100mm', viewBox: '0 0 100 100' };
  const starts = (root: SvgElement) =>
    pathsOf(root).map((line) =>
      linesOfPath(line).lines[0]!.start.map((value) => Math.round(value * 100) / 100),
    );

  test('L22 transforms of ancestors are applied from the inside out', () => {
    // SVG 1.1, 7.5, nested transformations: the product is [.707 -.707 .707 .707 255.03 111.21].
    const root = element(
      'svg',
      { width: '400mm', height: '400mm', viewBox: '0 0 400 400' },
      element(
        'g',
        { transform: 'translate(50,90)' },
        element(
          'g',
          { transform: 'rotate(-45)' },
          element('g', { transform: 'translate(130,160)' }, element('path', { d: 'M0 0 L10 0' })),
        ),
      ),
    );
    expect(starts(root)).toEqual([[255.06, -111.21]]);
  });

  test('L22 what is only defined is drawn where it is referred to', () => {
    const root = element(
      'svg',
      page,
      element('defs', {}, element('line', { id: 'seam', x1: '1', y1: '2', x2: '5', y2: '2' })),
      element('use', { href: '#seam', x: '10', y: '20' }),
      element('use', { 'xlink:href': '#seam', transform: 'scale(2)' }),
      element('use', { href: '#nowhere' }),
    );
    expect(starts(root)).toEqual([
      [11, -22],
      [2, -4],
    ]);
  });

  test('L22 an svg in an svg has its own view box', () => {
    const inner = { x: '10', y: '10', width: '50', height: '50', viewBox: '0 0 10 10' };
    const root = element('svg', page, element('svg', inner, element('path', { d: 'M2 2 L4 4' })));
    expect(starts(root)).toEqual([[20, -20]]);
  });

  test('L22 references in a circle end', () => {
    const root = element('svg', page, element('g', { id: 'a' }, element('use', { href: '#a' })));
    expect(pathsOf(root)).toEqual([]);
  });

  test('L22 hidden elements are left out; basic shapes are lines like others', () => {
    const root = element(
      'svg',
      page,
      element('rect', { width: '10', height: '4' }),
      element('rect', { x: '1', width: '10', height: '4', rx: '9', ry: '1' }),
      element('circle', { cx: '50', cy: '50', r: '10' }),
      element('ellipse', { rx: '3' }),
      element('polyline', { points: '0,0 5,5 10' }),
      element('polygon', { points: '7 0 5 5 10 1' }),
      element('g', { style: 'fill:none; display: none' }, element('path', { d: 'M0 0L1 1' })),
      element('text', {}),
    );
    expect(starts(root)).toEqual([
      [0, 0],
      [6, 0],
      [60, -50],
      [3, 0],
      [0, 0],
      [7, 0],
    ]);
  });
});
