// All colours around the centre, turning slowly.
uniform int petals;
uniform mediump float period;
uniform lowp float richness;

const float FULL_TURN = 6.2831853;

lowp vec3 light() {
  mediump float around = atan(place.y, place.x) / FULL_TURN;
  lowp vec3 colour = hue(fract(around * float(petals) - time / period));
  return mix(vec3(1.0), colour, richness);
}
