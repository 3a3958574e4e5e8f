// SPDX-License-Identifier: MIT
flat out uint part_shows;

void main() {
    part_shows = shows;
    gl_Position = clip_position(placed_position());
}
