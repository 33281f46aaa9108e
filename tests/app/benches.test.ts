/** The benches in a real browser, part by part. Rules L, B, N and M of app/web/SPEC.md. */
import { afterAll, beforeAll, describe } from 'vitest';
import { type House, openHouse } from './browser/house.ts';
import { testPlacing } from './browser/placing.ts';
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

describe('tagging', () => testTagging(house));
describe('placing', () => testPlacing(house));
describe('swatching', () => testSwatching(house));
describe('weaving', () => testWeaving(house));
describe('zoning', () => testZoning(house));
