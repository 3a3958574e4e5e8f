// SPDX-License-Identifier: MIT
// Signs over seats, always facing the eye: a cross over one that misses its limit, a pointer over
// the one selected.
layout(location = 0) in vec3 place;
layout(location = 1) in float kind;  // 0 cross, 1 pointer

uniform mat4 clip_from_room;
uniform vec3 eye;
uniform vec2 half_size;    // of the view, pixels
uniform float focal_px;  // pixels a metre at one metre

out vec2 at;
out float pixel;
flat out float mark_kind;

void main() {
    vec4 clip = clip_from_room * vec4(place, 1.0);
    float half_px = clamp(focal_px * 0.13 / max(clip.w, 0.1), 4.5, 15.0);
    if (kind > 0.5) half_px *= 1.35;
    vec2 corner = vec2((gl_VertexID & 1) == 0 ? -1.0 : 1.0, (gl_VertexID & 2) == 0 ? -1.0 : 1.0);
    at = corner * (half_px + 2.0) / half_px;
    pixel = 1.0 / half_px;
    mark_kind = kind;
    // In depth a little nearer, in front of the seat that it stands on.
    vec4 nearer = clip_from_room * vec4(place + 0.4 * normalize(eye - place), 1.0);
    clip.z = nearer.z / max(nearer.w, 1e-3) * clip.w;
    clip.xy += corner * (half_px + 2.0) / half_size * clip.w;
    gl_Position = clip;
}
