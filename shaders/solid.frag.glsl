// SPDX-License-Identifier: MIT
in vec3 room_position;
flat in vec3 room_normal;
flat in vec3 albedo;
out vec4 colour;

void main() {
    vec3 n = gl_FrontFacing ? room_normal : -room_normal;
    colour = stored(albedo * (house_light(n) + picture_glow(room_position, n)), 1.0);
}
