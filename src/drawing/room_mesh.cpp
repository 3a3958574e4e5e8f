// SPDX-License-Identifier: MIT
#include "drawing/room_mesh.hpp"

namespace rakeline::drawing {

RoomMesh room_mesh(const study::Study& study, const DrawingChoice& choice) {
    const std::size_t format_count = study.picture.openings.size();
    std::optional<int> format = choice.format;
    if (!format && format_count > 0) format = 0;
    RL_ASSERT(!format || static_cast<std::size_t>(*format) < format_count);

    RoomMesh mesh;
    add_floor(study, mesh);
    add_hall(study, mesh);
    add_booth(study, mesh);
    add_screen(study, format, mesh);
    add_loudspeakers(study, mesh);
    add_seats(study, mesh);
    add_heads(study, mesh);
    add_beams(study, choice.projector, format, mesh);
    return mesh;
}

}  // namespace rakeline::drawing
