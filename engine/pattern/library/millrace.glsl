// A gradient that flows along the zone like water to the mill.
uniform mediump float period;
uniform mediump float repeats;
uniform bool backwards;

lowp vec3 light() {
  lowp float flow = fract(time / period);
  lowp float moved = backwards ? fract(along * repeats + flow) : fract(along * repeats - flow);
  return gradient_water(moved);
}
