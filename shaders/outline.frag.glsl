// SPDX-License-Identifier: MIT
uniform vec3 outline_colour;  // linear
out vec4 colour;

void main() {
    colour = stored(outline_colour, 0.0);
}
