// One colour washes over another with a soft edge, once through the clip.
uniform lowp vec3 over;
uniform lowp vec3 under;
uniform lowp float softness;
uniform bool backwards;

lowp vec3 light() {
  lowp float position = backwards ? 1.0 - along : along;
  lowp float shore = turn * (1.0 + softness);
  lowp float wet = smoothstep(shore - softness, shore, position);
  return mix(over, under, wet);
}
