// A gradient laid along the zone.
uniform mediump float repeats;
uniform lowp float shift;

lowp vec3 light() {
  return gradient_ribbon(fract(along * repeats + shift));
}
