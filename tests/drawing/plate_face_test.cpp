// SPDX-License-Identifier: MIT
#include "drawing/studied_room.hpp"
#include "geometry/polygon.hpp"
#include "study/gate_plate.hpp"
#include "support/check.hpp"

#include <algorithm>

using namespace rakeline;
using drawing::Drawing;
using picture::PlateView;
using tests::check_close;
using tests::items_of;
using tests::studied;

namespace {

const tests::Tolerance kExact = tests::absolute(1e-12, "the same number by another route");

Drawing face_of(const study::Study& study, int format, PlateView view) {
    drawing::DrawingChoice choice;
    choice.projector = 0;
    choice.format = format;
    const auto face = drawing::plate_face(study, choice, view);
    if (!face) FAIL(base::text(face.problems()));
    return *face;
}

glm::dvec2 label_at(const Drawing& face, const std::string& text) {
    for (const auto& label : items_of<drawing::Label>(face))
        if (label.text == text) return label.at;
    FAIL("no label " << text);
    return {};
}

bool says(const Drawing& face, const std::string& text) {
    const auto labels = items_of<drawing::Label>(face);
    return std::any_of(labels.begin(), labels.end(), [&](const drawing::Label& label) {
        return label.text.find(text) != std::string::npos;
    });
}

/// The closed line that is not dashed: the opening.
drawing::Line opening_of(const Drawing& face) {
    for (const auto& line : items_of<drawing::Line>(face))
        if (line.closed && !line.dashed) return line;
    FAIL("no opening");
    return {};
}

study::Study hall_with(double allowance_m, double corner_radius_m, double radius_m = 0.0) {
    room::Brief brief = *tests::demo_brief("converted-hall-96");
    brief.layout.screen.radius_m = radius_m;
    for (room::FormatUse& use : brief.layout.projectors.at(0).formats) {
        use.plate_allowance_m = allowance_m;
        use.plate_corner_radius_m = corner_radius_m;
    }
    return study::compute_study(std::make_shared<const room::Brief>(brief));
}

}  // namespace

TEST_SUITE("drawing/plate_face") {
    TEST_CASE("the opening is the plate's outline as seen, the dashed line its aperture") {
        const study::Study& study = studied("converted-hall-96");
        for (int format = 0; format < 3; ++format) {
            const auto plate = study::gate_plate(study, 0, format);
            REQUIRE(plate);
            for (const auto view : {PlateView::from_lamp, PlateView::from_lens}) {
                const Drawing face = face_of(study, format, view);
                CHECK(opening_of(face).points == picture::outline_seen(*plate, view));
                for (const auto& line : items_of<drawing::Line>(face)) {
                    if (!line.dashed) continue;
                    CHECK(line.closed);
                    check_close(geometry::signed_area(line.points),
                                plate->aperture_m.x * plate->aperture_m.y, kExact);
                }
                CHECK(tests::bounds_hold_all(face));
            }
        }
    }

    TEST_CASE("dimensions are the sides between the corners, read to 0.01 mm, inside the opening") {
        const study::Study& study = studied("converted-hall-96");
        const auto plate = study::gate_plate(study, 0, 0);
        REQUIRE(plate);
        const Drawing face = face_of(study, 0, PlateView::from_lamp);
        const auto dimensions = items_of<drawing::Dimension>(face);
        REQUIRE(dimensions.size() == 4);
        double around = 0.0;
        for (std::size_t i = 0; i < 4; ++i) {
            around += glm::length(plate->corners_m[(i + 1) % 4] - plate->corners_m[i]);
            const auto line = drawing::dimension_line(dimensions[i]);
            const glm::dvec2 middle = 0.5 * (line.from + line.to);
            CHECK(glm::all(glm::lessThan(glm::abs(middle), 0.5 * plate->aperture_m)));
            CHECK(dimensions[i].unit == base::Unit::millimetre);
        }
        double drawn = 0.0;
        for (const auto& d : dimensions)
            drawn += drawing::length_m(d);
        check_close(drawn, around, kExact);
        CHECK(drawing::dimension_text(dimensions[0], base::UnitSystem::metric) == "20.61 mm");
        CHECK(drawing::dimension_text(dimensions[0], base::UnitSystem::imperial) == "0.8115 in");
    }

    TEST_CASE("from the lamp the picture's top is below and its left at the right") {
        const Drawing face = face_of(studied("converted-hall-96"), 0, PlateView::from_lamp);
        CHECK(label_at(face, "picture's top").y < 0.0);
        CHECK(label_at(face, "picture's bottom").y > 0.0);
        CHECK(label_at(face, "picture's left").x > 0.0);
        CHECK(label_at(face, "picture's right").x < 0.0);
        CHECK(says(face, "seen from the lamp"));
    }

    TEST_CASE("from the lens the picture's top is below and its left at the left") {
        const Drawing face = face_of(studied("converted-hall-96"), 0, PlateView::from_lens);
        CHECK(label_at(face, "picture's top").y < 0.0);
        CHECK(label_at(face, "picture's left").x < 0.0);
        CHECK(label_at(face, "picture's right").x > 0.0);
        CHECK(says(face, "seen from the lens"));
    }

    TEST_CASE("each corner's place is written beside it, and is a corner of the outline") {
        const study::Study& study = studied("converted-hall-96");
        const auto plate = study::gate_plate(study, 0, 2);
        REQUIRE(plate);
        const Drawing face = face_of(study, 2, PlateView::from_lens);
        REQUIRE(opening_of(face).points.size() == 4);
        for (const glm::dvec2 corner : opening_of(face).points) {
            const auto mm = [](double m) {
                return base::quantity(m, base::Unit::millimetre, base::UnitSystem::metric, 1)
                    .number;
            };
            const glm::dvec2 at = label_at(face, mm(corner.x) + ", " + mm(corner.y));
            CHECK(at.x * corner.x > 0.0);
            CHECK(at.y * corner.y > 0.0);
        }
    }

    TEST_CASE("the layout's allowance and corner radius reach the drawing") {
        const study::Study study = hall_with(5e-5, 0.1);
        const Drawing plain = face_of(studied("converted-hall-96"), 0, PlateView::from_lamp);
        const Drawing face = face_of(study, 0, PlateView::from_lamp);
        CHECK(says(face, "allowance 0.05 mm"));
        CHECK(says(face, "corners on the screen 100.0 mm"));
        CHECK(opening_of(face).points.size() > 8);
        const auto area = [](const Drawing& d) {
            return geometry::signed_area(opening_of(d).points);
        };
        CHECK(area(face) < area(plain));
        // The sides stand 0.05 mm inward at both ends: their lengths shrink by 0.1 mm, and by what
        // the lean of the neighbouring sides adds, a few per cent of that.
        const auto side = [](const Drawing& d) {
            return drawing::length_m(items_of<drawing::Dimension>(d).at(0));
        };
        check_close(side(plain) - side(face), 1e-4, tests::relative(0.05, "leaning sides"));
    }

    TEST_CASE("without dimensions the lines alone are left") {
        drawing::DrawingChoice choice;
        choice.dimensions = false;
        const auto face =
            drawing::plate_face(studied("converted-hall-96"), choice, PlateView::from_lamp);
        REQUIRE(face);
        CHECK(items_of<drawing::Label>(*face).empty());
        CHECK(items_of<drawing::Dimension>(*face).empty());
        CHECK(items_of<drawing::Line>(*face).size() == 4);
    }

    TEST_CASE(
        "refuses: a digital machine, an opening past the aperture, an empty room, with a "
        "mend") {
        const auto refused = [](const study::Study& study, int projector, int format,
                                const std::string& what) {
            drawing::DrawingChoice choice;
            choice.projector = projector;
            choice.format = format;
            const auto face = drawing::plate_face(study, choice, PlateView::from_lamp);
            REQUIRE_FALSE(face);
            INFO(base::text(face.problems()));
            CHECK(face.problems().front().what.find(what) != std::string::npos);
            CHECK_FALSE(face.problems().front().mend.empty());
        };
        refused(studied("converted-hall-96"), 1, 0, "a digital projector has no gate plate");
        refused(studied("grand-620"), 0, 1, "outside the aperture");
        refused(studied("grand-620"), 1, 0, "does not show");
        const auto empty = study::compute_study(std::make_shared<const room::Brief>(room::Brief{}));
        refused(empty, 0, 0, "one projector and one format");
    }
}
