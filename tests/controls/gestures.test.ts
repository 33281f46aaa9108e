import { describe, expect, test } from 'vitest';
import { pieceWithButtons, played } from './play.ts';

const next = { do: 'next-look' } as const;
const pause = { do: 'pause' } as const;
const blackout = { do: 'blackout' } as const;

const plain = pieceWithButtons([{ name: 'brooch', pin: 2, press: next }]);
const withHold = pieceWithButtons([{ name: 'brooch', pin: 2, press: next, hold: pause }]);
const withDouble = pieceWithButtons([{ name: 'brooch', pin: 2, press: next, double: pause }]);
const withBoth = pieceWithButtons([{ name: 'brooch', pin: 2, press: next, hold: blackout, double: pause }]);

describe('debounce', () => {
  test('C3 a level counts 20 ms after it changed, not 19', () => {
    expect(played(plain, '100 down; 119 end')).toEqual([]);
    expect(played(plain, '100 down; 120 end')).toEqual(['120 look Ebb']);
  });

  test('C3 a press that is over within the debounce time is none, a longer one is', () => {
    expect(played(plain, '100 down; 120 up; 500 end')).toEqual([]);
    expect(played(plain, '100 down; 121 up; 500 end')).toEqual(['120 look Ebb']);
  });

  test('C3 bounce puts off the press to 20 ms after the last change', () => {
    const bouncing = '100 down; 101 up; 103 down; 107 up; 109 down; 300 up; 302 down; 305 up; 900 end';
    expect(played(plain, bouncing)).toEqual(['129 look Ebb']);
  });

  test('C3 the debounce time is a field of the piece', () => {
    const slow = pieceWithButtons([{ name: 'brooch', pin: 2, press: next }], {
      controls: { debounceMilliseconds: 50 },
    });
    expect(played(slow, '100 down; 200 up; 300 end')).toEqual(['150 look Ebb']);
    const quick = pieceWithButtons([{ name: 'brooch', pin: 2, press: next }], {
      controls: { debounceMilliseconds: 1 },
    });
    expect(played(quick, '100 down; 200 up; 300 end')).toEqual(['101 look Ebb']);
  });

  test('C14 a contact that closes at 0 is felt in step 1', () => {
    expect(played(plain, '0 down; 100 end')).toEqual(['21 look Ebb']);
    expect(played(plain, '1 down; 100 end')).toEqual(['21 look Ebb']);
  });
});

describe('press', () => {
  test('C4 acts on the way down when the button has nothing else', () => {
    expect(played(plain, '100 down; 5000 up; 9000 end')).toEqual(['120 look Ebb']);
  });

  test('C4 acts on release when there is a hold', () => {
    expect(played(withHold, '100 down; 400 up; 9000 end')).toEqual(['420 look Ebb']);
  });

  test('C4 acts 300 ms after the release when there is a double press', () => {
    expect(played(withDouble, '100 down; 200 up; 519 end')).toEqual([]);
    expect(played(withDouble, '100 down; 200 up; 520 end')).toEqual(['520 look Ebb']);
  });

  test('C4 a long press is still a press when there is a double but no hold', () => {
    expect(played(withDouble, '100 down; 3000 up; 9000 end')).toEqual(['3320 look Ebb']);
  });

  test('C4 an action that is not given does nothing', () => {
    const holdOnly = pieceWithButtons([{ name: 'brooch', pin: 2, hold: pause }]);
    expect(played(holdOnly, '100 down; 400 up; 1000 down; 2000 up; 3000 end')).toEqual(['1620 pause on']);
  });
});

describe('hold', () => {
  test('C5 acts once, 600 ms after the debounced press, and cancels it', () => {
    expect(played(withHold, '100 down; 719 end')).toEqual([]);
    expect(played(withHold, '100 down; 5000 up; 9000 end')).toEqual(['720 pause on']);
  });

  test('C5 with a double press as well, a hold cancels both', () => {
    expect(played(withBoth, '100 down; 1000 up; 1100 down; 1200 up; 3000 end')).toEqual([
      '720 blackout on',
      '1520 blackout off',
    ]);
  });

  test('C7 a release at the very hold time is a hold, one before is a press', () => {
    expect(played(withHold, '100 down; 699 up; 2000 end')).toEqual(['719 look Ebb']);
    expect(played(withHold, '100 down; 700 up; 2000 end')).toEqual(['720 pause on']);
  });
});

describe('double', () => {
  test('C6 acts on the second way down, and that one is neither press nor hold', () => {
    expect(played(withBoth, '100 down; 200 up; 300 down; 5000 up; 9000 end')).toEqual(['320 pause on']);
  });

  test('C6 a third press begins anew', () => {
    expect(played(withDouble, '100 down;150 up;200 down;250 up;300 down;350 up;2000 end')).toEqual([
      '220 pause on',
      '670 look Ebb',
    ]);
  });

  test('C7 a second press at the very end of the time comes after the first', () => {
    expect(played(withDouble, '100 down; 200 up; 499 down; 600 up; 2000 end')).toEqual(['519 pause on']);
    expect(played(withDouble, '100 down; 200 up; 500 down; 600 up; 2000 end')).toEqual([
      '520 look Ebb',
      '920 look Flood',
    ]);
  });
});

describe('caught in a bag', () => {
  test('C8 longer than 8 s down gives no press on release', () => {
    const onRelease = pieceWithButtons([{ name: 'brooch', pin: 2, press: next, hold: pause }], {
      controls: { holdMilliseconds: 5000, caughtMilliseconds: 1000 },
    });
    expect(played(onRelease, '100 down; 1100 up; 9000 end')).toEqual(['1120 look Ebb']);
    expect(played(onRelease, '100 down; 1101 up; 9000 end')).toEqual([]);
    expect(played(onRelease, '100 down; 8000 up; 9000 end')).toEqual([]);
  });

  test('C8 nor a wait for a second press', () => {
    expect(played(withDouble, '100 down; 8100 up; 20000 end')).toEqual(['8420 look Ebb']);
    expect(played(withDouble, '100 down; 8101 up; 20000 end')).toEqual([]);
  });

  test('C8 once released, the button works again', () => {
    expect(played(withDouble, '100 down; 9000 up; 9100 down; 9200 up; 20000 end')).toEqual(['9520 look Ebb']);
  });
});
