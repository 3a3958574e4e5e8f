#version 330 core
// SPDX-License-Identifier: MIT
// Everything made of triangles: the room's parts, and seats and heads many times over.
layout(location = 0) in vec3 position;
layout(location = 1) in vec3 normal;
layout(location = 2) in vec2 uv;
layout(location = 3) in float material;
layout(location = 4) in mat4 room_from_part;
layout(location = 8) in vec4 paint;  // linear colour; w: 0 where the instance is not drawn
layout(location = 9) in uint shows;  // kind in the upper eight bits, index in the others

uniform mat4 clip_from_room;
uniform vec2 grow;  // outline pass: clip units a pixel, times the outline's width in pixels

out vec3 room_position;
out vec3 room_normal;
out vec2 part_uv;
out float local_height;
flat out float part_material;
flat out vec3 part_paint;
flat out uint part_shows;

void main() {
    vec4 at = room_from_part * vec4(position, 1.0);
    // Columns are at right angles but may be stretched: dividing twice inverts the stretch.
    mat3 m = mat3(room_from_part);
    m = mat3(m[0] / dot(m[0], m[0]), m[1] / dot(m[1], m[1]), m[2] / dot(m[2], m[2]));
    room_normal = normalize(m * normal);
    room_position = at.xyz;
    part_uv = uv;
    local_height = position.y;
    part_material = material;
    part_paint = paint.rgb;
    part_shows = shows;
    gl_Position = clip_from_room * at;
    vec2 outward = (clip_from_room * vec4(room_normal, 0.0)).xy;
    gl_Position.xy += grow * gl_Position.w * outward / max(length(outward), 1e-6);
    if (paint.w == 0.0) gl_Position = vec4(2.0, 2.0, 2.0, 1.0);
}
