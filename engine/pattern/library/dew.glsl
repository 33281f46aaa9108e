// Drops light up here and there, each in its own time.
uniform lowp vec3 drop;
uniform lowp float share;
uniform mediump float period;

lowp vec3 light() {
  lowp float offset = hash(pixel, seed);
  mediump float age = time / period + offset;
  int turn_of_drop = int(floor(mod(age, 4096.0)));
  lowp float ripe = fract(age);
  lowp float shines = step(hash(pixel + seed, turn_of_drop), share);
  lowp float swell = smoothstep(0.0, 0.2, ripe) * (1.0 - ripe);
  return drop * (shines * swell);
}
