// One colour, the same everywhere and always.
uniform lowp vec3 tint;

lowp vec3 light() {
  return tint;
}
