// SPDX-License-Identifier: MIT
/// What a floor handle under the hand costs: the study of one edit after the other against a study
/// from scratch in the same run, and the processor time of the window's frame, without graphics, as
/// rooms grow. Prints tables; checks nothing. Time of all threads is summed, so that what else runs
/// on the machine counts for little.
#include "base/files.hpp"
#include "bench/timing.hpp"
#include "desk/floor_drag.hpp"
#include "desk/headless.hpp"
#include "drawing/room_mesh.hpp"
#include "room/layout_file.hpp"

#include <cstdio>
#include <functional>

using namespace rakeline;
using bench::median_ms;

namespace {

/// Of all threads of this program, ms.
double all_ms() {
    timespec now{};
    clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &now);
    return 1e3 * static_cast<double>(now.tv_sec) + 1e-6 * static_cast<double>(now.tv_nsec);
}

room::Brief grand() {
    return *study::open_room(desk::demo("grand-620"), base::read_text_file);
}

/// The grand house without its balcony, its stalls grown to about this many seats.
room::Brief stalls(int seats) {
    room::Brief brief = grand();
    room::Layout& layout = brief.layout;
    layout.seating.resize(1);
    layout.audience.reference_seat.clear();
    room::SeatBlock& block = layout.seating.front();
    block.wheelchair_places.clear();
    block.aisles.clear();
    block.cross_aisles.clear();
    block.seats_added_per_row = 0;
    block.seats_per_row = 25;
    block.rows = seats / block.seats_per_row;
    block.row_spacing_m = 0.9;
    block.floor = room::BlockFloor::stepped;
    block.riser_m = 0.08;
    block.first_row_back_m = 8.0;
    const double longer =
        block.first_row_back_m + block.rows * block.row_spacing_m + 2.0 - layout.hall.length_m;
    if (longer > 0.0) {
        layout.hall.length_m += longer;
        for (room::Projector& projector : layout.projectors)
            projector.back_m += longer;
    }
    layout.hall.height_m = 14.0;
    return brief;
}

/// Layouts that a drag goes through: the handle up and down, a little more each time.
std::vector<std::shared_ptr<const room::Brief>> steps_of(const room::Brief& brief,
                                                         const desk::FloorHandle& handle) {
    std::vector<std::shared_ptr<const room::Brief>> out;
    for (int i = 1; i <= 40; ++i) {
        const double by = (i % 2 == 0 ? 0.002 : -0.002) * i;
        const desk::Dragged drag =
            desk::dragged(brief.layout, handle, handle.at + glm::dvec2(by * handle.moves_back, by),
                          {.snap = false});
        out.push_back(std::make_shared<const room::Brief>(room::Brief{drag.layout, brief.limits}));
    }
    return out;
}

void print_drag(const room::Brief& brief, const desk::FloorHandle& handle, const char* name) {
    const auto steps = steps_of(brief, handle);
    std::size_t next = 0;
    const auto scratch = [&] { study::compute_study(steps[next++ % steps.size()]); };
    const double scratch_ms = median_ms(all_ms, scratch, 9, 200.0);
    study::StudyCache cache;
    (void)cache.update(steps.back());
    const auto edit = [&] { (void)cache.update(steps[next++ % steps.size()]); };
    const double edit_ms = median_ms(all_ms, edit, 21, 200.0);
    std::printf("    %-22s edit %6.2f ms, wall %6.2f ms; from scratch %6.2f ms: %4.2f of it\n",
                name, edit_ms, median_ms(bench::wall_ms, edit, 21, 200.0), scratch_ms,
                edit_ms / scratch_ms);
}

void drags(const room::Brief& brief, const char* room) {
    const auto seats = study::compute_study(std::make_shared<const room::Brief>(brief)).seats;
    std::printf("\n%s, %zu seats: a study an edit\n", room, seats.seats.size());
    const auto handles = desk::floor_handles(brief.layout, 0);
    const int last = handles.back().index;
    for (const desk::FloorHandle& handle : handles) {
        using desk::HandleOf;
        if (handle.of == HandleOf::first_row) print_drag(brief, handle, "first row");
        if (handle.of == HandleOf::row && handle.index == last / 2)
            print_drag(brief, handle, "middle row and behind");
        if (handle.of == HandleOf::row && handle.index == last)
            print_drag(brief, handle, "last row");
        if (handle.of == HandleOf::spacing) print_drag(brief, handle, "row spacing");
        if (handle.of == HandleOf::sill) print_drag(brief, handle, "sill");
    }
}

/// One frame of the window on a fresh study, and the parts that were taken off it.
void frame_of(int seats) {
    room::Brief brief = stalls(seats);
    desk::Headless headless;
    desk::Session session(desk::quiet_options(desk::demo("grand-620")));
    session.wait_for_study();
    session.edit({"Grow", brief.layout, {}});
    session.wait_for_study();
    session.workspace().subject = study::Subject::sight;
    const auto still = [&] { headless.frame(session); };
    const double still_ms = median_ms(bench::own_ms, still, 21, 100.0);
    double fresh_ms = 0.0;
    constexpr int kFrames = 20;
    for (int i = 0; i < kFrames; ++i) {
        brief.layout.seating.front().riser_m += 1e-4;
        session.edit({"Lift", brief.layout, "drag"});
        session.wait_for_study();
        const double start = bench::own_ms();
        headless.frame(session);
        fresh_ms += (bench::own_ms() - start) / kFrames;
    }
    const study::Study& study = *session.study();
    drawing::DrawingChoice choice;
    choice.projector = choice.format = 0;
    const double mesh_ms = median_ms(
        bench::own_ms, [&] { drawing::room_mesh(study, choice); }, 9, 50.0);
    std::printf(
        "    %5zu seats: frame %5.2f ms, on a fresh study %5.2f ms; triangles %5.2f ms, "
        "made behind\n",
        study.seats.seats.size(), still_ms, fresh_ms, mesh_ms);
}

}  // namespace

int main() {
    drags(stalls(500), "Stalls");
    drags(grand(), "Grand house");
    std::printf("\nthe window's thread, frame by frame, without graphics\n");
    for (const int seats : {125, 250, 500, 1000, 2000})
        frame_of(seats);
}
