// Functions that every pattern may call, in the pattern language itself.

// One of the three colours of the rainbow: full for a third of the way round, none for another third.
lowp float hue_part(lowp float position) {
  lowp float distance_to_half = abs(fract(position) * 2.0 - 1.0);
  return clamp(distance_to_half - 0.33333, 0.0, 0.33333) * 3.0;
}

// A colour of the rainbow: red at 0, green at 1/3, blue at 2/3, and round again.
lowp vec3 hue(lowp float position) {
  return vec3(hue_part(position), hue_part(position - 0.33333), hue_part(position - 0.66667));
}

// Soft hills, 0 to 1: a value for each whole number, eased between neighbours.
lowp float noise(mediump float at) {
  int left = int(floor(at));
  lowp float part = smoothstep(0.0, 1.0, fract(at));
  return mix(hash(left), hash(left + 1), part);
}

// The same in the plane.
lowp float noise(mediump vec2 at) {
  int column = int(floor(at.x));
  int row = int(floor(at.y));
  lowp float across = smoothstep(0.0, 1.0, fract(at.x));
  lowp float up = smoothstep(0.0, 1.0, fract(at.y));
  lowp float lower = mix(hash(column, row), hash(column + 1, row), across);
  lowp float upper = mix(hash(column, row + 1), hash(column + 1, row + 1), across);
  return mix(lower, upper, up);
}
