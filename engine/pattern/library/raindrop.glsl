// Rings spread from the point where a drop has fallen.
uniform lowp vec3 ring;
uniform lowp vec3 pool;
uniform lowp float atX;
uniform lowp float atY;
uniform mediump float period;
uniform mediump float spacing;

lowp vec3 light() {
  mediump float far = distance(place, vec2(atX, atY));
  mediump float rings = 1.0 / spacing;
  lowp float wave = fract(far * rings - time / period);
  lowp float crest = smoothstep(0.55, 0.85, wave) - smoothstep(0.85, 1.0, wave);
  lowp float fading = clamp(1.2 - far * 0.5, 0.0, 1.0);
  return mix(pool, ring, clamp(crest * fading, 0.0, 1.0));
}
