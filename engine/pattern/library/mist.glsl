// Banks of mist drift over the plane, slowly; the sky repeats after hours. Five sixteenths are held exactly:
// after hours a rounded 0.3 would have drifted away.
uniform mediump float size;
uniform mediump float pace;

lowp vec3 light() {
  mediump float drift = mod(time * pace, 4096.0);
  mediump vec2 at = place * size + vec2(drift, drift * 0.3125);
  lowp float bank = noise(at) * 0.65 + noise(at * 2.0 + vec2(17.0, 5.0)) * 0.35;
  return gradient_mist(clamp(bank * 1.4 - 0.2, 0.0, 1.0));
}
