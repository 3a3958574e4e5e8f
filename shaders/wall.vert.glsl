// SPDX-License-Identifier: MIT
// The hall's walls, with the lamps along them.
out vec3 room_position;
out vec2 along_and_height;
flat out vec3 room_normal;

void main() {
    room_position = placed_position();
    room_normal = placed_normal();
    along_and_height = uv;
    gl_Position = clip_position(room_position);
}
