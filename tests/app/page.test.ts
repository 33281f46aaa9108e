/** The page in a real browser, built and served as `npm start` does. Rules: app/web/SPEC.md. */
import { afterAll, beforeAll, describe } from 'vitest';
import { testEditing } from './browser/editing.ts';
import { type House, openHouse } from './browser/house.ts';
import { testKeeping } from './browser/keeping.ts';
import { testMaking } from './browser/making.ts';
import { testPlacing } from './browser/placing.ts';
import { testPlaying } from './browser/playing.ts';
import { testStarting } from './browser/starting.ts';
import { testSwatching } from './browser/swatching.ts';
import { testTagging } from './browser/tagging.ts';
import { testWeaving } from './browser/weaving.ts';
import { testZoning } from './browser/zoning.ts';

let open: House;
const house = () => open;

beforeAll(async () => {
  open = await openHouse();
});

afterAll(async () => {
  await open.close();
});

describe('playing', () => testPlaying(house));
describe('editing', () => testEditing(house));
describe('making', () => testMaking(house));
describe('keeping', () => testKeeping(house));
describe('tagging', () => testTagging(house));
describe('placing', () => testPlacing(house));
describe('starting', () => testStarting(house));
describe('swatching', () => testSwatching(house));
describe('weaving', () => testWeaving(house));
describe('zoning', () => testZoning(house));
