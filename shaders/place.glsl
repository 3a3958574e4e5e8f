// SPDX-License-Identifier: MIT
// Where a vertex of a solid goes, and whether it is drawn at all.
layout(location = 0) in vec3 position;
layout(location = 1) in vec3 normal;
layout(location = 2) in vec2 uv;
layout(location = 3) in float material;  // drawing::Material
layout(location = 4) in mat4 room_from_part;
layout(location = 8) in vec4 paint;  // linear colour; w: 0 where the instance is not drawn
layout(location = 9) in uint shows;  // kind in the upper eight bits, index in the others
layout(location = 10) in vec3 wall;  // inward normal of the wall it goes with, or zero

uniform mat4 clip_from_room;
uniform vec3 eye;
uniform int cut_walls;  // 1: leaves out what goes with a wall that shows the eye its back

vec3 placed_position() {
    return (room_from_part * vec4(position, 1.0)).xyz;
}

vec3 placed_normal() {
    // Columns are at right angles but may be stretched: dividing twice inverts the stretch.
    mat3 m = mat3(room_from_part);
    m = mat3(m[0] / dot(m[0], m[0]), m[1] / dot(m[1], m[1]), m[2] / dot(m[2], m[2]));
    return normalize(m * normal);
}

vec4 clip_position(vec3 at) {
    bool cut = cut_walls == 1 && dot(wall, eye - at) < 0.0;
    if (paint.w == 0.0 || cut) return vec4(2.0, 2.0, 2.0, 1.0);
    return clip_from_room * vec4(at, 1.0);
}
