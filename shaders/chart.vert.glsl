// SPDX-License-Identifier: MIT
out vec2 chart_uv;

void main() {
    chart_uv = uv;
    gl_Position = clip_position(placed_position());
}
