// SPDX-License-Identifier: MIT
#include "drawing/meter_face.hpp"

#include "drawing/studied_room.hpp"

#include <algorithm>

using namespace rakeline;
using tests::items_of;

namespace {

study::MeterCheck check_of(const std::vector<study::MeterRow>& rows) {
    const auto check = study::check_meter(tests::studied("converted-hall-96"), {}, rows);
    if (!check) FAIL(base::text(check.problems()));
    return *check;
}

std::vector<study::MeterRow> studied_rows() {
    const study::Study& study = tests::studied("converted-hall-96");
    std::vector<study::MeterRow> rows;
    for (int i = 0; i < light::kPointCount; ++i) {
        study::MeterRow row;
        row.point = static_cast<light::PicturePoint>(i);
        row.value =
            light::luminance_cdm2(study.light.lights.front(), *study.reference_seat, *row.point);
        rows.push_back(row);
    }
    return rows;
}

bool has_label(const drawing::Drawing& drawing, const std::string& text) {
    const auto labels = items_of<drawing::Label>(drawing);
    return std::any_of(labels.begin(), labels.end(),
                       [&](const drawing::Label& label) { return label.text == text; });
}

}  // namespace

TEST_SUITE("drawing/meter_face") {
    TEST_CASE("every reading has a disc, what was read and how far off it is, inside the picture") {
        auto rows = studied_rows();
        rows[light::kTopLeft].value += 6.0;
        const auto check = check_of(rows);
        const auto drawing = drawing::meter_face(tests::studied("converted-hall-96"), {}, check);
        CHECK(tests::bounds_hold_all(drawing));
        const geometry::Rectangle& o = check.scene.opening;
        int inside = 0, far = 0;
        for (const auto& label : items_of<drawing::Label>(drawing)) {
            if (label.text.find('%') == std::string::npos || label.ink == drawing::Ink::quiet)
                continue;
            CHECK(label.at.x > o.left);
            CHECK(label.at.x < o.right);
            CHECK(label.at.y > o.bottom);
            CHECK(label.at.y < o.top);
            ++inside;
            far += label.ink == drawing::Ink::missed ? 1 : 0;
        }
        CHECK(inside == 9);
        CHECK(far >= 1);
        CHECK(has_label(drawing, "hot spot"));
    }

    TEST_CASE("without dimensions the residuals stand alone") {
        drawing::DrawingChoice choice;
        choice.dimensions = false;
        const auto drawing = drawing::meter_face(tests::studied("converted-hall-96"), choice,
                                                 check_of(studied_rows()));
        for (const auto& label : items_of<drawing::Label>(drawing))
            CHECK((label.text == "0.0 %" || label.text == "hot spot"));
    }

    TEST_CASE("readings that fit leave no residual and no disc in the missed colour") {
        const auto drawing =
            drawing::meter_face(tests::studied("converted-hall-96"), {}, check_of(studied_rows()));
        CHECK(has_label(drawing, "0.0 %"));
        for (const auto& fill : items_of<drawing::Fill>(drawing))
            CHECK(fill.ink != drawing::Ink::missed);
    }
}
