// SPDX-License-Identifier: MIT

void main() {
    gl_Position = clip_position(placed_position());
}
