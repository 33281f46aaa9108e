/** What the reference compiler of the GLSL standard says of shaders: Khronos glslang, many files a call. */

import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

export interface Verdict {
  readonly accepted: boolean;
  /** The first complaint. */
  readonly complaint: string;
}

const filesPerCall = 400;

/** One verdict a shader, in order. */
export function judgeShaders(shaders: readonly string[]): Verdict[] {
  const folder = mkdtempSync(join(tmpdir(), 'weftlight-glslang-'));
  try {
    const verdicts: Verdict[] = [];
    for (let from = 0; from < shaders.length; from += filesPerCall) {
      verdicts.push(...judge(folder, shaders.slice(from, from + filesPerCall)));
    }
    return verdicts;
  } finally {
    rmSync(folder, { recursive: true });
  }
}

/** glslang prints each file's name and behind it what is wrong with that file. */
function judge(folder: string, shaders: readonly string[]): Verdict[] {
  const files = shaders.map((text, i) => {
    const file = join(folder, `${String(i).padStart(4, '0')}.frag`);
    writeFileSync(file, text);
    return file;
  });
  const { stdout, error } = spawnSync('glslangValidator', ['-S', 'frag', ...files], {
    encoding: 'utf8',
    maxBuffer: 1 << 28,
  });
  if (error !== undefined) throw error;
  const complaints = new Map<string, string>();
  let current = '';
  const known = new Set(files);
  for (const line of stdout.split('\n')) {
    if (known.has(line.trim())) current = line.trim();
    else if (/^(ERROR|\(\d+\))/.test(line) && !complaints.has(current)) complaints.set(current, line);
  }
  return files.map((file) => {
    const complaint = complaints.get(file);
    return { accepted: complaint === undefined, complaint: complaint ?? '' };
  });
}

export function glslangVersion(): string {
  return execFileSync('glslangValidator', ['--version'], { encoding: 'utf8' }).split('\n')[0]!;
}
