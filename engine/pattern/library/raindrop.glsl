// Rings spread from the point where a drop has fallen.
uniform lowp vec3 ring;
uniform lowp vec3 pool;
uniform lowp float atX;
uniform lowp float atY;
uniform mediump float period;
uniform mediump float spacing;

lowp vec3 light() {
  lowp float half_way = length(place * 0.5 - vec2(atX, atY) * 0.5);
  mediump float rings = 2.0 / spacing;
  lowp float wave = fract(half_way * rings - time / period);
  lowp float crest = smoothstep(0.55, 0.85, wave) - smoothstep(0.85, 1.0, wave);
  lowp float fading = clamp(1.2 - half_way, 0.0, 1.0);
  return mix(pool, ring, clamp(crest * fading, 0.0, 1.0));
}
