// SPDX-License-Identifier: MIT
// A seat's cloth grown outward by some pixels: behind the seat itself it shows as an outline.
uniform vec2 grow;  // clip units a pixel, times the outline's width in pixels

void main() {
    vec4 clip = clip_position(placed_position());
    vec2 outward = (clip_from_room * vec4(placed_normal(), 0.0)).xy;
    clip.xy += grow * clip.w * outward / max(length(outward), 1e-6);
    gl_Position = uv.x < 0.5 ? vec4(2.0, 2.0, 2.0, 1.0) : clip;
}
