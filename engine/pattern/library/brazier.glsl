// Flames: hot and quiet at the root, cooler and restless towards the tip.
uniform mediump float pace;
uniform lowp float reach;

lowp vec3 light() {
  mediump float rise = mod(time * pace, 256.0);
  lowp float flicker = noise(vec2(along * 5.0 - rise * 2.0, rise + float(seed % 64)));
  lowp float lick = noise(float(pixel) * 0.7 + rise * 3.0);
  mediump float steepness = 0.75 / max(reach, 0.1);
  lowp float fuel = 1.15 - min(along * steepness, 1.1);
  lowp float heat = clamp(fuel * (0.35 + 0.45 * flicker + 0.35 * lick), 0.0, 1.0);
  return gradient_heat(heat);
}
