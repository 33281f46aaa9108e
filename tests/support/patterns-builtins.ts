/** A small pattern for each built-in function and for what our library adds: smooth, and inside of 0 to 1. */
import { lightOf } from './patterns.ts';

const channels = (red: string, green = red, blue = red, before = '') =>
  lightOf(`vec3(${red}, ${green}, ${blue})`, before);

export const builtinPatterns: Readonly<Record<string, string>> = {
  'sums and differences': channels('along + turn * 0.5', 'place.x - place.y', '1.0 - along - 0.25'),
  products: channels('along * turn', 'place.x * place.y + 0.5', 'along * 1.7 * turn'),
  quotients: channels('along / (turn + 0.5)', '0.3 / (along + 0.3)', 'place.x / 3.7 + 0.5'),
  vectors: lightOf('vec3(place, along) * 0.5 * vec3(turn, 1.0, 2.0) + vec3(0.25)'),
  'whole numbers': channels(
    'float(pixel % 17) / 17.0',
    'float((pixel * 7 + seed) % 64) / 64.0',
    'float(pixel / 3) * 0.0015',
  ),
  abs: channels('abs(place.x)', 'abs(place.y * 3.0) * 0.33', 'float(abs(pixel - 900)) / 1100.0'),
  sign: channels(
    'sign(place.x) * 0.5 + 0.5',
    'float(sign(pixel - 9)) * 0.25 + 0.5',
    'sign(along - 0.513) * 0.4 + 0.5',
  ),
  floor: channels(
    'floor(along * 7.3) / 8.0',
    'floor(place.x * 4.0) * 0.125 + 0.5',
    'floor(turn * 3.0) * 0.3',
  ),
  ceil: channels(
    'ceil(along * 7.3 + 0.11) / 8.5',
    'ceil(place.x * 4.0) * 0.125 + 0.5',
    'ceil(turn * 3.0) * 0.3',
  ),
  fract: channels('fract(along * 5.7)', 'fract(time)', 'fract(place.x * 2.3 - turn)'),
  mod: channels('mod(along * 8.0, 2.3) / 2.3', 'mod(place.x * 3.0, 0.7)', 'mod(time, 7.5) / 7.5'),
  min: channels('min(along, turn)', 'min(place.x, 0.3)', 'min(place, vec2(turn)).y'),
  max: channels('max(along, turn)', 'max(place.x, 0.3)', 'max(place, turn).y'),
  clamp: channels(
    'clamp(place.x * 3.0, 0.0, 1.0)',
    'clamp(along, 0.2, 0.6)',
    'clamp(place, vec2(turn * 0.5), vec2(0.8)).x',
  ),
  mix: channels(
    'mix(0.2, 0.9, along)',
    'mix(place.x, place.y, turn)',
    'mix(vec2(0.1, 0.2), vec2(1.0, 0.3), along).y',
  ),
  step: channels('step(0.37, along)', 'step(place.x, place.y) * 0.7', 'step(vec2(0.5), place).x'),
  smoothstep: channels(
    'smoothstep(0.2, 0.8, along)',
    'smoothstep(-0.5, turn, place.x)',
    'smoothstep(0.0, 1.0, fract(time))',
  ),
  sqrt: channels('sqrt(along)', 'sqrt(along * 20.0) / 5.0', 'sqrt(abs(place.x)) * turn'),
  inversesqrt: channels(
    'inversesqrt(along * 4.0 + 0.3) * 0.5',
    'inversesqrt(time + 1.5)',
    'inversesqrt(turn + 1.0) * 0.9',
  ),
  sin: channels(
    'sin(along * 20.0) * 0.5 + 0.5',
    'sin(time * 3.0) * 0.5 + 0.5',
    'sin(place.x * 3.14159) * 0.4 + 0.5',
  ),
  cos: channels(
    'cos(along * 20.0) * 0.5 + 0.5',
    'cos(time - place.x) * 0.5 + 0.5',
    'cos(turn * 6.2831853) * 0.4 + 0.5',
  ),
  'atan of two': channels(
    'abs(atan(place.y, place.x)) / 3.2',
    'atan(along, turn + 0.1) * 0.6',
    'abs(atan(place.x, 0.7)) * 0.5',
  ),
  'atan of one': channels('atan(place.x) * 0.5 + 0.5', 'atan(time) * 0.6', 'atan(along * 9.0) * 0.6'),
  pow: channels('pow(along, 2.2)', 'pow(turn + 0.5, 1.3) * 0.5', 'pow(abs(place.x), along + 0.5)'),
  'whole powers': channels('pow(along, 2.0)', 'pow(along, 3.0)', 'pow(turn, 4.0)'),
  exp2: channels('exp2(along * -4.0)', 'exp2(along * 5.0) / 32.0', 'exp2(place.x) * 0.45'),
  log2: channels('log2(along * 8.0 + 1.0) / 3.5', 'log2(time + 1.0) / 16.0', 'log2(turn + 1.0)'),
  length: channels('length(place) * 0.7', 'length(vec3(place, along)) * 0.57', 'length(along)'),
  distance: channels(
    'distance(place, vec2(0.3, -0.2)) * 0.5',
    'distance(vec3(place, turn), vec3(along)) * 0.4',
    'distance(along, turn)',
  ),
  dot: channels(
    'dot(place, place) * 0.5',
    'dot(vec3(place, turn), vec3(0.2, 0.3, 0.4)) + 0.3',
    'dot(along, turn)',
  ),
  normalize: channels(
    'normalize(place + vec2(1.5)).x',
    'normalize(vec3(place, 0.6)).z',
    'normalize(vec3(along, turn, 1.0)).x * 0.5 + 0.5',
  ),
  radians: channels('radians(along * 57.0)', 'radians(turn * 50.0)', 'radians(place.x * 25.0) + 0.45'),
  degrees: channels('degrees(along) / 60.0', 'degrees(turn * 0.015)', 'degrees(place.x) * 0.007 + 0.5'),
  hash: channels('hash(pixel)', 'hash(pixel, seed)', 'hash(int(time), pixel)'),
  'noise of one': channels('noise(along * 9.0)', 'noise(time)', 'noise(place.x * 5.0 - 40.0)'),
  'noise of two': channels(
    'noise(place * 3.0)',
    'noise(vec2(along * 20.0, time))',
    'noise(vec2(time, turn) * 0.3)',
  ),
  hue: lightOf('hue(along + turn)'),
  'hue of time': lightOf('hue(time * 0.1 - along * 3.0) * 0.8'),
  conversions: channels(
    'float(int(along * 8.7 + 0.13)) / 9.0',
    'float(place.x > 0.2) * 0.6',
    'float(bool(pixel)) * 0.4',
  ),
  choices: channels(
    'along > turn ? along : turn',
    'place.x < place.y && along > 0.5 ? 0.8 : 0.1',
    '!(pixel == 3) ? 0.5 : 0.9',
  ),
};
