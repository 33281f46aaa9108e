import { describe, expect, it } from 'vitest';
import { select } from '../../codegen/player/select.ts';

describe('leaving out lines', () => {
  const text = ['a', '//? light', 'b', '//? !heavy', 'c', '//.', '//.', '//? heavy', 'd', '//.', 'e'].join(
    '\n',
  );

  it('keeps the lines of the features that are there', () => {
    expect(select(text, { light: true, heavy: false })).toBe('a\nb\nc\ne');
    expect(select(text, { light: true, heavy: true })).toBe('a\nb\nd\ne');
    expect(select(text, { light: false, heavy: false })).toBe('a\ne');
  });

  it('stumbles over mistakes of ours', () => {
    expect(() => select(text, { light: true })).toThrow('heavy');
    expect(() => select('//? a\nb', { a: true })).toThrow('never ends');
    expect(() => select('b\n//.', {})).toThrow('never began');
  });
});
