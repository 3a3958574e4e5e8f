// SPDX-License-Identifier: MIT
// One segment an instance, drawn as a strip of constant width on the display.
layout(location = 0) in vec3 from;
layout(location = 1) in vec3 to;
layout(location = 2) in vec4 line_colour;  // linear; w: cover
layout(location = 3) in vec3 face_a;       // normals of the faces that meet here, or zero
layout(location = 4) in vec3 face_b;

uniform mat4 clip_from_room;
uniform vec3 eye;
uniform vec2 half_size;  // of the view, pixels
uniform float half_width;  // pixels

out float across;
out vec4 colour_in;

void main() {
    vec4 a = clip_from_room * vec4(from, 1.0);
    vec4 b = clip_from_room * vec4(to, 1.0);
    // The part behind the eye is cut off, or it would fold over.
    const float kNear = 0.05;
    if (a.w < kNear && b.w > kNear) a = mix(a, b, (kNear - a.w) / (b.w - a.w));
    if (b.w < kNear && a.w > kNear) b = mix(b, a, (kNear - b.w) / (a.w - b.w));
    vec2 along = half_size * (b.xy / b.w - a.xy / a.w);
    float length_px = length(along);
    vec2 side = length_px > 1e-4 ? vec2(-along.y, along.x) / length_px : vec2(0.0, 1.0);
    float reach = half_width + 1.0;
    float sign_across = (gl_VertexID & 1) == 0 ? -1.0 : 1.0;
    vec4 at = (gl_VertexID & 2) == 0 ? a : b;
    at.xy += sign_across * reach * side / half_size * at.w;
    at.z -= 4e-5 * at.w;  // in front of the faces that meet in the edge
    across = sign_across * reach;
    colour_in = line_colour;
    bool faceless = dot(face_a, face_a) + dot(face_b, face_b) == 0.0;
    bool seen = faceless || dot(face_a, eye - from) > 0.0 || dot(face_b, eye - from) > 0.0;
    bool behind = a.w < kNear && b.w < kNear;
    gl_Position = behind || !seen ? vec4(2.0, 2.0, 2.0, 1.0) : at;
}
