// SPDX-License-Identifier: MIT
#include "picture/lens_pick.hpp"
#include "picture/throw.hpp"
#include "study/study.hpp"
#include "support/check.hpp"
#include "support/demo_rooms.hpp"

#include <algorithm>
#include <cmath>

using namespace rakeline;
using namespace rakeline::tests;

namespace {

std::optional<double> value(const study::Study& study,
                            const char* id,
                            const picture::ProjectedPicture& p) {
    const auto* figure =
        study::find_figure(study, id, {.projector = p.projector, .format = p.format});
    return figure ? study::value_at(*figure) : std::nullopt;
}

study::Study studied(room::Brief brief) {
    return study::compute_study(std::make_shared<const room::Brief>(std::move(brief)));
}

const study::Finding* finding_on(const study::Study& study, const std::string& figure) {
    const auto& all = study.findings;
    const auto found =
        std::find_if(all.begin(), all.end(), [&](const auto& f) { return f.figure == figure; });
    return found == all.end() ? nullptr : &*found;
}

const Tolerance kRounding = relative(1e-12, "rounding");

}  // namespace

TEST_SUITE("study/figures_lens") {
    TEST_CASE("the figures of a fitted lens are those by which the lens pick judges it") {
        int fitted = 0;
        for (const char* name : kDemoRooms) {
            INFO(name);
            const auto study = study::compute_study(demo_brief(name));
            const room::Layout& layout = study.layout();
            const picture::PictureInput in{.screen = layout.screen,
                                           .formats = layout.formats,
                                           .projectors = layout.projectors,
                                           .lenses = layout.lenses,
                                           .platforms = {},
                                           .booth_wall_back_m = layout.hall.length_m};
            for (const auto& p : study.picture.pictures) {
                if (!p.lens) continue;
                const auto pick = picture::pick_lens(in, p.projector, p.format, layout.lenses);
                REQUIRE(pick);
                const auto choice = std::find_if(pick->choices.begin(), pick->choices.end(),
                                                 [&](const auto& c) { return c.lens == *p.lens; });
                REQUIRE(choice != pick->choices.end());
                const picture::LensReach& reach = choice->reach;
                CHECK(value(study, "picture.shift_short", p) == reach.shift_short());
                CHECK(value(study, "picture.field_lost", p) == reach.field_lost);
                CHECK(value(study, "picture.image_circle_spare", p) == reach.image_circle_spare_m);
                if (layout.lenses[static_cast<std::size_t>(*p.lens)].kind == room::LensKind::zoom) {
                    CHECK(value(study, "picture.throw_ratio_short", p) == reach.throw_ratio_short);
                    CHECK(value(study, "picture.throw_ratio_long", p) == reach.throw_ratio_long);
                } else {
                    CHECK_FALSE(value(study, "picture.throw_ratio_short", p));
                }
                ++fitted;
            }
        }
        CHECK(fitted >= 10);
    }

    TEST_CASE("without a fitted lens there is nothing to judge") {
        room::Brief brief = *demo_brief("converted-hall-96");
        for (auto& projector : brief.layout.projectors)
            for (auto& use : projector.formats)
                use.lens.clear();
        const auto study = studied(brief);
        for (const char* id : {"picture.shift_short", "picture.field_lost",
                               "picture.image_circle_spare", "picture.throw_ratio_short"}) {
            INFO(id);
            CHECK(study::find_figure(study, id) == nullptr);
        }
    }

    TEST_CASE("a shift past the lens's own is found, by hand, and costs that share of the gate") {
        room::Brief brief = *demo_brief("screening-24");
        for (auto& lens : brief.layout.lenses) {
            lens.shift_up_max = 0.10;
            lens.shift_across_max = 0.05;
        }
        for (auto& projector : brief.layout.projectors) {
            for (auto& use : projector.formats) {
                use.shift_up = -0.15;     // 0.05 more than the lens has
                use.shift_across = 0.07;  // 0.02 more
            }
        }
        const auto study = studied(brief);
        REQUIRE_FALSE(study.picture.pictures.empty());
        for (const auto& p : study.picture.pictures) {
            check_close(*value(study, "picture.shift_short", p), 0.05, kRounding);
            check_close(*value(study, "picture.field_lost", p), 1.0 - 0.95 * 0.98, kRounding);
        }
        const auto* finding = finding_on(study, "picture.shift_short");
        REQUIRE(finding);
        CHECK(finding->verdict == study::Verdict::missed);
        CHECK(finding->what.find("lacks 5.0 %") != std::string::npos);
    }

    TEST_CASE("an image circle too small for the gate's corners is found, by hand") {
        room::Brief brief = *demo_brief("screening-24");
        for (auto& lens : brief.layout.lenses)
            lens.image_circle_m = 0.020;
        const auto study = studied(brief);
        for (const auto& p : study.picture.pictures) {
            const glm::dvec2 shift = glm::abs(p.map.pose().shift_m);
            const double wanted =
                2.0 * std::hypot(0.5 * p.gate_size_m.x + shift.x, 0.5 * p.gate_size_m.y + shift.y);
            check_close(*value(study, "picture.image_circle_spare", p), 0.020 - wanted, kRounding);
        }
        const auto* finding = finding_on(study, "picture.image_circle_spare");
        REQUIRE(finding);
        CHECK(finding->mend.find("larger image circle") != std::string::npos);
    }

    TEST_CASE("a zoom's range takes in the throw ratio of the picture that it makes") {
        int zooms = 0;
        for (const char* name : kDemoRooms) {
            INFO(name);
            const auto study = study::compute_study(demo_brief(name));
            for (const auto& p : study.picture.pictures) {
                const auto least = value(study, "picture.throw_ratio_short", p);
                const auto most = value(study, "picture.throw_ratio_long", p);
                if (!least || !most) continue;
                ++zooms;
                const double squeeze = p.map.pose().squeeze;
                const double made =
                    p.throw_m / picture::picture_width(squeeze * p.gate_size_m.x, p.throw_m,
                                                       p.focal_length_used_m);
                CHECK(*least <= made * (1.0 + 1e-12));
                CHECK(made <= *most * (1.0 + 1e-12));
            }
        }
        CHECK(zooms >= 5);
    }
}
