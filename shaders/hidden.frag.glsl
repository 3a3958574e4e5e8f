// SPDX-License-Identifier: MIT
// The hidden part of the picture: a veil through which those who hide it can still be told, and
// lines at 45 degrees across it.
uniform vec3 missed_colour;  // linear
uniform float pitch;         // of the hatching, pixels along a row
out vec4 colour;

void main() {
    float along = mod(gl_FragCoord.x - gl_FragCoord.y, pitch);
    float away = abs(along - 0.5 * pitch) * 0.7071;
    float line = clamp(0.10 * pitch + 0.5 - away, 0.0, 1.0);
    colour = stored(missed_colour, mix(0.34, 0.92, line));
}
