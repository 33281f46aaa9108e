// A colour that rises and falls like the breath of someone asleep: in quickly, out slowly.
uniform lowp vec3 tint;
uniform mediump float period;
uniform lowp float lowest;

lowp vec3 light() {
  lowp float breath = fract(time / period);
  lowp float full = smoothstep(0.0, 0.4, breath) - smoothstep(0.4, 1.0, breath);
  return tint * mix(lowest, 1.0, clamp(full, 0.0, 1.0));
}
