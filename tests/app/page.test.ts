/** The page in a real browser, built and served as `npm start` does. Rules: app/web/SPEC.md. */
import { afterAll, beforeAll, describe } from 'vitest';
import { testEditing } from './browser/editing.ts';
import { type House, openHouse } from './browser/house.ts';
import { testKeeping } from './browser/keeping.ts';
import { testMaking } from './browser/making.ts';
import { testPlaying } from './browser/playing.ts';
import { testStarting } from './browser/starting.ts';

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
describe('starting', () => testStarting(house));
