// A bright bow runs along the zone and leaves a wake that fades behind it.
uniform lowp vec3 bow;
uniform lowp vec3 water;
uniform mediump float period;
uniform lowp float tail;
uniform bool backwards;

lowp vec3 light() {
  lowp float head = fract(time / period);
  lowp float behind = backwards ? fract(along - 1.0 + head) : fract(head - along);
  mediump float reach = 1.0 / max(tail, 0.02);
  lowp float glow = clamp(1.0 - min(behind * reach, 1.0), 0.0, 1.0);
  glow = glow * glow;
  lowp float crest = glow * glow;
  return mix(water * glow, bow, crest * crest);
}
