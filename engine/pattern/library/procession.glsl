// Lanterns walk one behind the other: some pixels lit, some dark, and a step forward at every beat.
uniform lowp vec3 lantern;
uniform lowp vec3 night;
uniform int lit;
uniform int gap;
uniform mediump float beat;

lowp vec3 light() {
  int group = lit + gap;
  mediump float round = fract(time / (beat * float(group)));
  int steps = int(floor(round * float(group)));
  int position = (pixel - steps + group) % group;
  return position < lit ? lantern : night;
}
