/** Sources made to hurt a compiler: each is short enough to be read, and some are patterns after all. */

const many = (count: number, piece: (i: number) => string, between = '') =>
  Array.from({ length: count }, (_, i) => piece(i)).join(between);
const light = (statements: string) => `lowp vec3 light() {${statements}}`;
const grey = (expression: string, before = '') => light(`${before}return vec3(${expression});`);
/** As many repetitions of a piece as fit, with a head and a tail around them. */
const filled = (head: string, piece: string, tail: string, bytes = 8192) =>
  head + piece.repeat(Math.floor((bytes - head.length - tail.length) / piece.length)) + tail;
/** Each function calls the one before twice: a thousand million calls by the thirtieth. */
const doubling = (functions: number, first: string, last: string) =>
  `float f0(float x){return ${first};}${many(functions, (i) => `float f${i + 1}(float x){return f${i}(x)+f${i}(x);}`)}${last}`;

export const hostileSources: Readonly<Record<string, string>> = {
  nothing: '',
  'white space': ' \n\t\r\n'.repeat(1000),
  'a zero byte': '\0',
  'a lone surrogate': '\ud800',
  'two thousand parentheses': grey(`${'('.repeat(2000)}1.0${')'.repeat(2000)}`),
  'parentheses never closed': filled('lowp vec3 light(){return ', '(', ''),
  'parentheses never opened': filled('lowp vec3 light(){return ', ')', ''),
  'braces never closed': filled('lowp vec3 light()', '{', ''),
  'braces never opened': filled('', '}', ''),
  'blocks in blocks': light('{'.repeat(2000) + '}'.repeat(2000)),
  brackets: filled('', '[', ''),
  'an endless sum': filled('lowp vec3 light(){return vec3(along', '+along', ');}'),
  'an endless difference of times': filled('lowp vec3 light(){return vec3(fract(time', '-time', '));}'),
  'an endless product': filled('lowp vec3 light(){return vec3(along', '*turn', ');}'),
  'an endless quotient': filled('lowp vec3 light(){return vec3(time', '/turn', ');}'),
  'an endless comparison': filled('lowp vec3 light(){return vec3(along', '<along', ');}'),
  'an endless logic': filled('lowp vec3 light(){bool b=along<.5;return vec3(b', '^^b', ');}'),
  'an endless remainder': filled('lowp vec3 light(){return vec3(pixel', '%pixel', ');}'),
  'endless signs': filled('lowp vec3 light(){return vec3(', '- ', 'along);}'),
  'endless denials': filled('lowp vec3 light(){bool b=', '!', 'true;return vec3(b);}'),
  'endless choices': filled('lowp vec3 light(){return vec3(', 'along>.1?1.:', '0.);}'),
  'endless choices to the left': grey(`${'along>.1?'.repeat(400)}1.${':0.'.repeat(400)}`),
  'endless else if': light(`${'if(along>.1)return vec3(0.);else '.repeat(240)}return vec3(1.);`),
  'endless swizzles': filled('lowp vec3 light(){return hue(.1)', '.zyx', ';}'),
  'endless arguments': filled('lowp vec3 light(){return vec3(1.', ',1.', ');}'),
  'endless parameters': `float f(${many(900, (i) => `int a${i}`, ',')}){return 1.;}${grey('1.')}`,
  'calls in calls': grey(`${'abs('.repeat(1000)}along${')'.repeat(1000)}`),
  'thousands of declarations': filled('lowp vec3 light(){', 'int a;', 'return vec3(1.);}'),
  'hundreds of variables': light(`${many(600, (i) => `int a${i};`)}return vec3(1.);`),
  'hundreds of constants': `${many(480, (i) => `const int a${i}=1;`)}${grey('1.')}`,
  'hundreds of uniforms': `${many(400, (i) => `uniform int a${i};`)}${grey('1.')}`,
  'hundreds of functions': `${many(250, (i) => `float f${i}(){return 1.;}`)}${grey('1.')}`,
  'hundreds of overloads of one name': `${many(200, (i) => `float f(${many(1 + (i % 9), () => 'int a', ',')}){return 1.;}`)}${grey('1.')}`,
  semicolons: filled('', ';', ''),
  'semicolons in a body': filled('lowp vec3 light(){', ';', 'return vec3(1.);}'),
  'stars and slashes': filled('', '/*/', ''),
  'a comment never closed': filled('/*', ' *', ''),
  'many comments never closed': filled('', '/*\n', ''),
  'a huge name': grey('x', `float ${'x'.repeat(4000)}=1.;`),
  'a huge name that is called': grey(`${'x'.repeat(4000)}()`),
  'a huge number': grey(`${'9'.repeat(4000)}.0`),
  'a huge whole number': grey(`float(${'9'.repeat(4000)})`),
  'a huge exponent': grey(`1e${'9'.repeat(4000)}`),
  'a small number': grey(`1e-${'9'.repeat(4000)}`),
  'a long fraction': grey(`.${'3'.repeat(4000)}`),
  points: filled('', '.', ''),
  hashes: filled('', '#\n', ''),
  backslashes: filled('', '\\\n', ''),
  emoji: filled('', '😀', '', 4096),
  quotes: filled('', '"', ''),
  'one turn too many': light('float s=0.;for(int i=0;i<1025;i++)s+=.1;return vec3(s);'),
  'a loop without an end': light('float s=0.;for(int i=0;i<9;i--)s+=.1;return vec3(s);'),
  'a loop that stands still': light('float s=0.;for(int i=0;i<9;i+=0)s+=.1;return vec3(s);'),
  'a loop that wraps': light('float s=0.;for(int i=1;i!=0;i*=3)s+=.1;return vec3(s);'),
  'loops in loops': light(
    `float s=0.;${many(12, (i) => `for(int i${i}=0;i${i}<2;i${i}++)`)}s+=.1;return vec3(s);`,
  ),
  'loops in loops, as many as allowed': light(
    `float s=0.;${many(10, (i) => `for(int i${i}=0;i${i}<2;i${i}++)`)}s+=sin(s+float(pixel));return vec3(s);`,
  ),
  'loops one behind the other': light(
    `float s=0.;${'for(int i=0;i<1024;i++)s+=sin(s);'.repeat(200)}return vec3(s);`,
  ),
  'a loop with a long body': filled(
    'lowp vec3 light(){float s=0.;for(int i=0;i<1024;i++){',
    's+=along;',
    '}return vec3(s);}',
  ),
  'a fraction of a long running sum': filled(
    'lowp vec3 light(){float s=0.;for(int i=0;i<1024;i++){',
    's+=time;',
    '}return vec3(fract(s));}',
    1800,
  ),
  'a sum of itself, again and again': light(`float s=time;${'s+=s;'.repeat(1000)}return vec3(fract(s));`),
  'a sine of a sum of itself': light(`float s=time;${'s=s+s+.1;'.repeat(500)}return vec3(sin(s));`),
  'a square of itself, again and again': light(`float s=along;${'s*=s;'.repeat(1000)}return vec3(fract(s));`),
  'a scaled sum of itself': light(`float s=time;${'s=2.*(s+s);'.repeat(500)}return vec3(fract(s));`),
  'loops with many variables and conditions': light(
    `${many(200, (i) => `int a${i}=pixel;`)}for(int i=0;i<1024;i++){if(pixel>i)a0+=i;else a1-=i;}return vec3(a0+a1);`,
  ),
  'loops with deep conditions': light(
    `${many(200, (i) => `int a${i}=pixel;`)}for(int i=0;i<300;i++){${many(20, (i) => `if(a${i}>i){`)}a0++;${'}'.repeat(20)}}return vec3(a0);`,
  ),
  'early returns in a loop': light(
    'float s=along;for(int i=0;i<1024;i++){if(s>.9)return vec3(s);s=fract(s*1.7+.1);}return vec3(s);',
  ),
  'doubling functions': doubling(100, 'x', grey('f100(along)')),
  'doubling functions of noise': doubling(30, 'noise(vec2(x,time))', grey('f30(along)')),
  'doubling functions of soft steps': doubling(
    30,
    'smoothstep(vec3(x),vec3(time),vec3(along)).x',
    grey('f30(turn)'),
  ),
  'doubling functions and many constants': doubling(
    60,
    'x',
    `${many(300, (i) => `const int a${i}=1;`)}${grey('f60(along)')}`,
  ),
  'many constants and a loop of calls': `${many(350, (i) => `const int a${i}=1;`)}float f(float x){return x;}${light(
    'float s=along;for(int i=0;i<1024;i++){s=f(f(f(f(f(f(f(f(s))))))));}return vec3(s);',
  )}`,
  'a long chain of functions': `float f0(float x){return x;}${many(180, (i) => `float f${i + 1}(float x){return f${i}(x);}`)}${grey('f180(along)')}`,
  'a long chain of functions, each of them deep': `float f0(float x){return x;}${many(
    56,
    (i) => `float f${i + 1}(float x){return ${'sin('.repeat(20)}f${i}(x)${')'.repeat(20)};}`,
  )}${grey('f56(along)')}`,
  'a chain of functions behind signs': `float f0(float x){return x;}${many(
    85,
    (i) => `float f${i + 1}(float x){return ${'- '.repeat(28)}f${i}(x);}`,
  )}${grey('f85(along)')}`,
  'soft steps of vectors in a loop': light(
    'vec3 c=vec3(along,turn,time);for(int i=0;i<1024;i++){c=smoothstep(c.yzx,c.zxy,c)+normalize(c);}return c;',
  ),
  'powers in a loop': light('vec3 c=vec3(along,turn,time);for(int i=0;i<1024;i++){c=pow(c,c.yzx);}return c;'),
  'noise in a loop': light('float s=0.;for(int i=0;i<1024;i++){s+=noise(vec2(s,time));}return vec3(s);'),
  'the same noise in a loop': light(
    'float s=0.;for(int i=0;i<1024;i++){s+=noise(vec2(along,time));}return vec3(s);',
  ),
  'a gradient that is not there in a loop': light(
    'vec3 c;for(int i=0;i<1024;i++)c+=gradient_reed(along);return c;',
  ),
  'recursion by a detour': `float f(float x){return g(x);}float g(float x){return f(x);}${grey('f(1.)')}`,
  'light calls light': light('return light();'),
  'division by nothing': light('const int a=1/0;const float b=1./0.;return vec3(float(a%0)+b);'),
  'a script': '<script>alert(1)</script>',
  'the names of objects': `float constructor(float toString){return toString;}${grey('constructor(along)', 'float __proto__=1.;float hasOwnProperty=2.;')}`,
  'the names of objects, called': grey('toString(1.)+valueOf(1.)+constructor(1.)+hasOwnProperty(1.)'),
  'fields of objects': grey('place.constructor+place.__proto__+place.length'),
};
