// SPDX-License-Identifier: MIT
// One triangle over the whole view.
out vec2 view_uv;

void main() {
    vec2 corner = vec2(float((gl_VertexID & 1) * 2), float((gl_VertexID >> 1) * 2));
    view_uv = corner;
    gl_Position = vec4(2.0 * corner - 1.0, 0.0, 1.0);
}
