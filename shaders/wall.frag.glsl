// SPDX-License-Identifier: MIT
in vec3 room_position;
in vec2 along_and_height;
flat in vec3 room_normal;
out vec4 colour;

// Scallops of warm light along the side walls, over the heads.
vec3 wall_lamps() {
    const float kEvery = 3.4;
    vec2 d = vec2(mod(along_and_height.x, kEvery) - 0.5 * kEvery, along_and_height.y - 2.35);
    float away = dot(d * vec2(1.5, 0.85), d * vec2(1.5, 0.85));
    float pool = 1.0 / ((1.0 + away) * (1.0 + away));
    return vec3(1.0, 0.66, 0.36) * (1.5 * pool * smoothstep(2.5, 7.0, along_and_height.x));
}

void main() {
    vec3 n = gl_FrontFacing ? room_normal : -room_normal;
    vec3 light = house_light(n) + picture_glow(room_position, n) + wall_lamps();
    // Toward the ceiling the light fades.
    float high = smoothstep(7.5, 1.5, along_and_height.y);
    colour = stored(vec3(0.050, 0.043, 0.041) * light * mix(0.45, 1.0, high), 1.0);
}
