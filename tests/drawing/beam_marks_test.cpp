// SPDX-License-Identifier: MIT
#include "drawing/beam_marks.hpp"

#include "drawing/room_mesh.hpp"
#include "drawing/studied_room.hpp"
#include "support/check.hpp"

#include <algorithm>

using namespace rakeline;
using drawing::BeamMark;
using drawing::BeamNear;
using drawing::Ink;
using tests::check_close;
using tests::items_of;
using tests::studied;

namespace {

const tests::Tolerance kExact = tests::absolute(1e-9, "the same number by another route");

/// The grand house with its balcony raised into the beam and the first port beside its light.
const study::Study& spoiled() {
    static const study::Study kept = [] {
        auto brief = std::make_shared<room::Brief>(*tests::demo_brief("grand-620"));
        brief->layout.seating[1].first_row_up_m = 7.3;
        brief->layout.projectors[0].port.across_m = -1.9;
        return study::compute_study(brief);
    }();
    return kept;
}

std::vector<BeamMark> marks_of(const study::Study& study) {
    return drawing::beam_marks(study, drawing::chosen(study, {}), base::UnitSystem::metric);
}

const char* figure_of(BeamNear to) {
    switch (to) {
        case BeamNear::floor:
            return "picture.beam_clearance";
        case BeamNear::balcony:
            return "picture.balcony_clearance";
        case BeamNear::ceiling:
            return "picture.ceiling_clearance";
        case BeamNear::wall:
            return "picture.wall_clearance";
    }
    return "";
}

std::vector<std::string> labels_with(const drawing::Drawing& drawing, const std::string& words) {
    std::vector<std::string> found;
    for (const auto& label : items_of<drawing::Label>(drawing))
        if (label.text.find(words) != std::string::npos) found.push_back(label.text);
    return found;
}

const study::Place kFirst{.projector = 0, .format = 0};

}  // namespace

TEST_SUITE("drawing/beam_marks") {
    TEST_CASE("marks stand at the distance of their figures and between their two points") {
        for (const char* name : tests::kDemoRooms) {
            INFO(name);
            const study::Study& study = studied(name);
            const auto marks = marks_of(study);
            CHECK_FALSE(marks.empty());
            for (const BeamMark& mark : marks) {
                const double si = tests::figure_value(study, figure_of(mark.to), kFirst);
                check_close(mark.distance_m, si, kExact);
                check_close(glm::length(mark.beam - mark.part), std::abs(si), kExact);
            }
        }
    }

    TEST_CASE("the section shows the lowest place over the floor in the ink of its verdict") {
        const study::Study& study = studied("screening-24");
        const BeamMark mark = marks_of(study).front();
        REQUIRE(mark.verdict == study::Verdict::missed);
        const drawing::Drawing section = drawing::long_section(study, {});
        const auto lines = items_of<drawing::Line>(section);
        const auto drawn = std::ranges::find_if(lines, [&](const drawing::Line& line) {
            return line.points.size() == 2 &&
                   line.points[0] == glm::dvec2(mark.part.z, mark.part.y) &&
                   line.points[1] == glm::dvec2(mark.beam.z, mark.beam.y);
        });
        REQUIRE(drawn != lines.end());
        CHECK(drawn->ink == Ink::missed);
        CHECK(labels_with(section, "1.24 m over the floor").size() == 1);
        drawing::DrawingChoice feet;
        feet.units = base::UnitSystem::imperial;
        CHECK(labels_with(drawing::long_section(study, feet), "4.07 ft over the floor").size() ==
              1);
    }

    TEST_CASE("a balcony in the beam is said so in section and plan, and stands in the 3D view") {
        const study::Study& study = spoiled();
        CHECK(labels_with(drawing::long_section(study, {}), "into the beam").size() == 1);
        CHECK(labels_with(drawing::plan(study, {}), "into the beam").size() == 1);
        const auto marks = marks_of(study);
        const auto balcony = std::ranges::find(marks, BeamNear::balcony, &BeamMark::to);
        REQUIRE(balcony != marks.end());
        drawing::DrawingChoice first;
        first.projector = 0;
        first.format = 0;
        const drawing::RoomMesh mesh = drawing::room_mesh(study, first);
        CHECK(std::ranges::any_of(mesh.edges, [&](const drawing::Edge& edge) {
            return edge.kind == drawing::EdgeKind::cut && edge.from == balcony->part &&
                   edge.to == balcony->beam;
        }));
    }

    TEST_CASE("each level of a plan shows the marks that belong to it") {
        const study::Study& study = spoiled();
        drawing::DrawingChoice floor, balcony;
        floor.raised = false;
        balcony.raised = true;
        // The beam is lowest over the balcony's own floor here.
        CHECK(labels_with(drawing::plan(study, floor), "over the floor").empty());
        CHECK(labels_with(drawing::plan(study, balcony), "over the floor").size() == 1);
        CHECK(labels_with(drawing::plan(study, floor), "into the beam").empty());
        CHECK(labels_with(drawing::plan(study, balcony), "into the beam").size() == 1);
    }

    TEST_CASE("the opening needed stands in the wall of section and plan as long as its figures") {
        for (const char* name : tests::kDemoRooms) {
            INFO(name);
            const study::Study& study = studied(name);
            const double z = study.layout().hall.length_m;
            drawing::Drawing up, across;
            drawing::add_section_port_needed(study, drawing::chosen(study, {}), up);
            drawing::add_plan_port_needed(study, drawing::chosen(study, {}), across);
            const auto length = [](const drawing::Drawing& d) {
                const auto line = items_of<drawing::Line>(d).at(0);
                return glm::length(line.points[1] - line.points[0]);
            };
            check_close(length(up),
                        tests::figure_value(study, "picture.port_height_needed", kFirst), kExact);
            check_close(length(across),
                        tests::figure_value(study, "picture.port_width_needed", kFirst), kExact);
            CHECK(items_of<drawing::Line>(up).at(0).points[0].x == z);
            CHECK(items_of<drawing::Line>(across).at(0).points[0].y == z);
        }
    }
}

TEST_SUITE("drawing/port_face") {
    TEST_CASE("bounds hold every point of every item, for every projector") {
        for (const char* name : tests::kDemoRooms) {
            const study::Study& study = studied(name);
            for (std::size_t p = 0; p < study.layout().projectors.size(); ++p) {
                INFO(name, ", projector ", p);
                drawing::DrawingChoice choice;
                choice.projector = static_cast<int>(p);
                CHECK(tests::bounds_hold_all(drawing::port_face(study, choice)));
            }
        }
        CHECK(tests::bounds_hold_all(drawing::port_face(spoiled(), {})));
    }

    TEST_CASE("dimensions equal the figures and the layout") {
        const study::Study& study = studied("grand-620");
        const drawing::Drawing face = drawing::port_face(study, {});
        const auto needed = tests::dimension(face, "needed ");
        const auto high = tests::dimension(face, "");
        const auto port = tests::dimension(face, "port ");
        REQUIRE(needed);
        REQUIRE(high);
        REQUIRE(port);
        check_close(drawing::length_m(*needed),
                    tests::figure_value(study, "picture.port_width_needed", kFirst), kExact);
        check_close(drawing::length_m(*high),
                    tests::figure_value(study, "picture.port_height_needed", kFirst), kExact);
        check_close(drawing::length_m(*port), study.layout().projectors[0].port.width_m, kExact);
    }

    TEST_CASE("it is seen from the hall: what stands at the house's left lies at the right") {
        const study::Study& study = studied("grand-620");
        const drawing::Drawing face = drawing::port_face(study, {});
        REQUIRE(study.layout().projectors[0].port.across_m < 0.0);
        CHECK(face.low.x > 0.0);
    }

    TEST_CASE("every format's light is drawn, inside the opening needed; cut light as missed") {
        for (const bool cut : {false, true}) {
            const study::Study& study = cut ? spoiled() : studied("grand-620");
            const auto opening = picture::port_opening(study.picture, 0);
            REQUIRE(opening);
            int drawn = 0;
            for (const auto& line : items_of<drawing::Line>(drawing::port_face(study, {}))) {
                if (line.points.size() < 10) continue;
                ++drawn;
                CHECK(line.ink == (cut ? Ink::missed : Ink::beam));
                for (const glm::dvec2& p : line.points) {
                    CHECK(-p.x >= opening->left - 1e-9);
                    CHECK(-p.x <= opening->right + 1e-9);
                    CHECK(p.y >= opening->bottom - 1e-9);
                    CHECK(p.y <= opening->top + 1e-9);
                }
            }
            CHECK(drawn == 3);
            CHECK(labels_with(drawing::port_face(study, {}), "wall cuts in by").size() ==
                  (cut ? 3u : 0u));
        }
    }

    TEST_CASE("a room without projectors has no port to show") {
        room::Brief empty;
        const auto study = study::compute_study(std::make_shared<const room::Brief>(empty));
        CHECK(drawing::port_face(study, {}).items.empty());
    }
}
