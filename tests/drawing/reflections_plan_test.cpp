// SPDX-License-Identifier: MIT
#include "drawing/reflections_plan.hpp"

#include "drawing/studied_room.hpp"
#include "support/check.hpp"

#include <algorithm>

using namespace rakeline;
using namespace rakeline::drawing;
using tests::items_of;
using tests::studied;

namespace {

std::vector<Line> thick_paths(const Drawing& drawing) {
    auto lines = items_of<Line>(drawing);
    std::erase_if(lines, [](const Line& l) {
        return l.ink != Ink::sound || l.weight != Weight::cut || l.points.size() < 3;
    });
    return lines;
}

}  // namespace

TEST_SUITE("drawing/reflections_plan") {
    TEST_CASE("every screen loudspeaker has its strongest reflection, from it to the seat") {
        for (const char* name : tests::kDemoRooms) {
            const study::Study& study = studied(name);
            DrawingChoice choice;
            choice.seat = *study.reference_seat;
            const auto drawn = reflections_plan(study, choice);
            REQUIRE(drawn);
            const auto paths = thick_paths(*drawn);
            const auto& all = study.layout().loudspeakers;
            std::size_t heard = 0;
            for (const auto& seats : study.sound.hall->reflections)
                heard += !seats.empty() &&
                         seats.at(static_cast<std::size_t>(*choice.seat)).strongest.has_value();
            CHECK(paths.size() == heard);
            const glm::dvec3 eye = study.seats.seats.at(static_cast<std::size_t>(*choice.seat)).eye;
            for (const Line& path : paths) {
                const auto& from = all.at(static_cast<std::size_t>(path.shows.index));
                CHECK(path.points.front() == glm::dvec2(from.across_m, from.back_m));
                CHECK(path.points.back() == glm::dvec2(eye.x, eye.z));
            }
        }
    }

    TEST_CASE("a reflection of a side wall meets it at equal angles on the page") {
        const study::Study& study = studied("steep-240");  // its side walls are parallel
        DrawingChoice choice;
        int met = 0;
        for (int seat = 0; seat < static_cast<int>(study.seats.seats.size()); seat += 17) {
            choice.seat = seat;
            const auto drawn = reflections_plan(study, choice);
            REQUIRE(drawn);
            for (const Line& path : thick_paths(*drawn)) {
                const glm::dvec2 at = path.points[1];
                if (path.points.size() != 3 ||
                    std::abs(std::abs(at.x) - 0.5 * study.layout().hall.width_m) > 1e-9)
                    continue;
                const glm::dvec2 in = at - path.points[0], out = path.points[2] - at;
                tests::check_close(in.y / std::abs(in.x), out.y / std::abs(out.x),
                                   tests::absolute(1e-9, "rounding of some metres"));
                ++met;
            }
        }
        CHECK(met > 0);
    }

    TEST_CASE("refuses: no seat, or no loudspeaker of the screen") {
        const study::Study& study = studied("steep-240");
        CHECK_FALSE(reflections_plan(study, {}));
        auto brief = std::make_shared<room::Brief>(*tests::demo_brief("steep-240"));
        brief->layout.loudspeakers.clear();
        DrawingChoice choice;
        choice.seat = 3;
        CHECK_FALSE(reflections_plan(study::compute_study(brief), choice));
    }
}
