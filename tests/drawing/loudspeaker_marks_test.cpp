// SPDX-License-Identifier: MIT
#include "drawing/loudspeaker_marks.hpp"

#include "base/units.hpp"
#include "drawing/studied_room.hpp"
#include "sound/hall_sound.hpp"
#include "support/check.hpp"

#include <algorithm>
#include <cmath>

using namespace rakeline;
using namespace rakeline::tests;
using drawing::Drawing;
using drawing::DrawingChoice;
using drawing::Line;
using drawing::Shows;

namespace {

const auto kExact = absolute(1e-9, "the same number by another route");

/// Bodies (closed) or rays (two points) of one loudspeaker.
std::vector<Line> lines_of(const Drawing& drawing, int loudspeaker, bool closed) {
    std::vector<Line> out;
    for (const Line& line : items_of<Line>(drawing))
        if (line.shows == Shows{Shows::Kind::loudspeaker, loudspeaker} && line.closed == closed)
            out.push_back(line);
    return out;
}

glm::dvec2 extent(const Line& line) {
    glm::dvec2 low(1e9), high(-1e9);
    for (const glm::dvec2& p : line.points) {
        low = glm::dvec2(std::min(low.x, p.x), std::min(low.y, p.y));
        high = glm::dvec2(std::max(high.x, p.x), std::max(high.y, p.y));
    }
    return high - low;
}

double angle_of(const Line& ray) {
    const glm::dvec2 way = ray.points.at(1) - ray.points.at(0);
    return std::atan2(way.x, way.y);
}

/// The steep room with its centre loudspeaker level and straight ahead.
study::Study straight_room() {
    room::Brief brief = *demo_brief("steep-240");
    brief.layout.loudspeakers[1].pitch_rad = 0.0;
    return study::compute_study(std::make_shared<const room::Brief>(brief));
}

}  // namespace

TEST_SUITE("drawing/loudspeaker_marks") {
    TEST_CASE("cabinets stand in plan and section at their own size") {
        const study::Study study = straight_room();
        const room::Loudspeaker& l = study.layout().loudspeakers[1];
        const auto plan = lines_of(drawing::plan(study, {}), 1, true);
        REQUIRE(plan.size() == 1);
        CHECK(plan[0].points.size() == 4);
        check_close(extent(plan[0]).x, l.cabinet_width_m, kExact);
        check_close(extent(plan[0]).y, l.cabinet_depth_m, kExact);
        const auto section = lines_of(drawing::long_section(study, {}), 1, true);
        REQUIRE(section.size() == 1);
        check_close(extent(section[0]).x, l.cabinet_depth_m, kExact);
        check_close(extent(section[0]).y, l.cabinet_height_m, kExact);
    }

    TEST_CASE("coverage is the axis and both -6 dB edges, as wide as the loudspeaker sends") {
        const study::Study study = straight_room();
        DrawingChoice choice;
        choice.coverage = true;
        choice.loudspeaker = 1;
        const auto coverage = sound::coverage_at(study.layout().loudspeakers[1], sound::kOctaves[6],
                                                 study::air_of(study));
        REQUIRE(coverage);
        auto rays = lines_of(drawing::plan(study, choice), 1, false);
        REQUIRE(rays.size() == 3);
        check_close(angle_of(rays[0]), 0.0, kExact);
        check_close(angle_of(rays[2]) - angle_of(rays[1]), coverage->across_rad, kExact);
        rays = lines_of(drawing::long_section(study, choice), 1, false);
        REQUIRE(rays.size() == 3);
        check_close(std::abs(angle_of(rays[2]) - angle_of(rays[1])), coverage->up_rad, kExact);
        // Asked of one alone, the others keep to their short axis.
        CHECK(lines_of(drawing::plan(study, choice), 0, false).size() == 1);
    }

    TEST_CASE("without a choice all screen loudspeakers show their coverage, inside the hall") {
        for (const char* name : kDemoRooms) {
            INFO(name);
            const study::Study& study = studied(name);
            const room::Layout& layout = study.layout();
            DrawingChoice choice;
            choice.coverage = true;
            const Drawing section = drawing::long_section(study, choice);
            CHECK(bounds_hold_all(section));
            for (int i = 0; i < static_cast<int>(layout.loudspeakers.size()); ++i) {
                const auto& l = layout.loudspeakers[static_cast<std::size_t>(i)];
                const auto rays = lines_of(section, i, false);
                if (!sound::is_screen_channel(l.channel)) continue;
                CHECK(rays.size() >= 1);
                for (const Line& ray : lines_of(drawing::plan(study, choice), i, false))
                    CHECK(std::abs(ray.points[1].x) <=
                          room::half_width_at(layout.hall, ray.points[1].y) + 1e-9);
                for (const Line& ray : rays) {
                    CHECK(ray.points[1].y >= -1e-9);
                    CHECK(ray.points[1].y <= layout.hall.height_m + 1e-9);
                    CHECK(ray.points[1].x <= layout.hall.length_m + 1e-9);
                }
            }
        }
    }
}
