// SPDX-License-Identifier: MIT
flat in uint part_shows;
out uint shows;

void main() {
    shows = part_shows;
}
