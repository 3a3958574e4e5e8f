// SPDX-License-Identifier: MIT
in vec3 lit_colour;
out vec4 colour;

void main() {
    colour = stored(lit_colour, 1.0);
}
