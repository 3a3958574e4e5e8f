// SPDX-License-Identifier: MIT
in float across;
in vec4 colour_in;
uniform float half_width;
out vec4 colour;

void main() {
    float cover = clamp(half_width + 0.5 - abs(across), 0.0, 1.0);
    colour = stored(colour_in.rgb, colour_in.a * cover);
}
