import { describe, expect, it } from 'vitest';
import { myCodeOf, printMyCode } from '../../codegen/player/my-code.ts';

const body = '  if (shown.look == look_dusk) digitalWrite(13, HIGH);\n\n    // odd   spaces stay\n';

describe('the code that a maker wrote', () => {
  it('S3 survives a new generation, byte for byte', () => {
    const sketch = `before\n${printMyCode(body, 'look_dusk')}after\n`;
    expect(myCodeOf(sketch)).toEqual({ body, diagnostics: [] });
    expect(printMyCode(myCodeOf(sketch).body, 'look_dawn')).toContain(body);
  });

  it('S3 survives an editor with other line ends', () => {
    const sketch = printMyCode(body, 'look_dusk').replaceAll('\n', '\r\n');
    expect(myCodeOf(sketch).body).toBe(body);
  });

  it('S3 is nothing at first', () => {
    expect(myCodeOf(undefined)).toEqual({ body: '', diagnostics: [] });
    expect(myCodeOf(printMyCode('', 'look_dusk')).body).toBe('');
  });

  it('S3 says so when the marks are gone', () => {
    const { body: found, diagnostics } = myCodeOf('void loop() {}');
    expect(found).toBe('');
    expect(diagnostics).toMatchObject([{ code: 'my-code-not-found', severity: 'warning' }]);
  });
});
