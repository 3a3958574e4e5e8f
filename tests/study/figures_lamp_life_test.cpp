// SPDX-License-Identifier: MIT
//
// From the lamp to the bill, as figures: the chain multiplies up, settings and ageing scale it, and
// what hangs on it (supply, exhaust, stray light) follows.
#include "study/random_layout.hpp"
#include "support/check.hpp"

#include <algorithm>

using namespace rakeline;
using namespace rakeline::study;
using tests::check_close;
using tests::Dice;

namespace {

const tests::Tolerance kRounding = tests::relative(1e-12, "rounding");

Place at(int projector, int format) {
    return {.projector = projector,
            .format = format,
            .loudspeaker = {},
            .seat = {},
            .row = {},
            .band = {}};
}

std::optional<double> figure(const Study& study, const char* id, const Place& place) {
    const Figure* found = find_figure(study, id, place);
    return found ? value_at(*found) : std::nullopt;
}

/// The demo room after one edit.
template <class Edit>
Study edited(const char* room, const Edit& edit) {
    auto brief = std::make_shared<room::Brief>(*tests::demo_brief(room));
    edit(brief->layout);
    return compute_study(brief);
}

}  // namespace

TEST_SUITE("study/figures_lamp_life") {
    TEST_CASE("the factors of the chain multiply up to the flux on the screen") {
        const Study study = compute_study(tests::demo_brief("grand-620"));
        int chains = 0;
        for (const picture::ProjectedPicture& p : study.picture.pictures) {
            const Place place = at(p.projector, p.format);
            if (!figure(study, "light.lamp_flux_new", place)) continue;
            ++chains;
            double flux = *figure(study, "light.lamp_flux_new", place);
            for (const char* id : {"light.ageing", "light.collection", "light.shutter",
                                   "light.gate_passes", "light.lens_passes", "light.setting",
                                   "light.gate_in_use", "light.port_transmittance"})
                flux *= figure(study, id, place).value();
            check_close(flux, figure(study, "light.flux", place).value(), kRounding);
            CHECK(figure(study, "light.flux_in_opening", place).value() <= flux * (1.0 + 1e-9));
        }
        CHECK(chains == 4);  // three formats on 35 mm, one on 70 mm
        // The digital machine's flux is measured: no chain, but a setting and a part in use.
        CHECK_FALSE(figure(study, "light.collection", at(2, 0)));
        CHECK(figure(study, "light.setting", at(2, 0)) == 1.0);
    }

    TEST_CASE("half the light in one format's setting halves its readings and no other's") {
        const char* room = "converted-hall-96";
        const Study before = compute_study(tests::demo_brief(room));
        const Study after =
            edited(room, [](room::Layout& x) { x.projectors[0].formats[0].light_fraction = 0.5; });
        for (const char* id : {"light.flux_lens", "light.flux", "light.flux_in_opening",
                               "light.illuminance", "light.luminance_reference",
                               "light.reading_low", "light.reading_high", "light.reading_end"}) {
            check_close(figure(after, id, at(0, 0)).value(),
                        0.5 * figure(before, id, at(0, 0)).value(), kRounding);
            CHECK(figure(after, id, at(0, 1)) == figure(before, id, at(0, 1)));
        }
        for (const char* id : {"light.lamp_current_wanted", "light.lamp_power_end"})
            check_close(figure(after, id, at(0, 0)).value(),
                        2.0 * figure(before, id, at(0, 0)).value(), kRounding);
        CHECK(figure(after, "light.reading_uncertainty", at(0, 0)) ==
              figure(before, "light.reading_uncertainty", at(0, 0)));
    }

    TEST_CASE("lamp, duct and bill of the converted hall's film machine, worked by hand") {
        const Study study = compute_study(tests::demo_brief("converted-hall-96"));
        const room::Supply& supply = study.layout().projectors[0].supply;
        REQUIRE(supply.lamp_power_most_w == 3000.0);
        REQUIRE(supply.end_flux_fraction == 0.75);
        const Place film = at(0, 0);
        // 24 V x 70 A; / 0.85 from the mains; over 3000 W.
        check_close(*figure(study, "light.lamp_power", film), 1680.0, kRounding);
        check_close(*figure(study, "light.mains_power", film), 1680.0 / 0.85, kRounding);
        check_close(*figure(study, "light.lamphouse_load", film), 0.56, kRounding);
        // (0.85 - 0.75) / (1 - 0.75) of 1800 h.
        check_close(*figure(study, "light.lamp_time_remaining", film), 720.0 * 3600.0, kRounding);
        // 1344 W into 0.12 m3/s of 1.20411 kg/m3 at 20 degrees: 9.2460 K.
        check_close(*figure(study, "light.exhaust_rise", film), 9.2460, tests::printed_digits(3));
        check_close(*figure(study, "light.exhaust_load", film), 9.24603 / 30.0,
                    tests::printed_digits(4));
        // 480 x 2.2 / 1800 = 0.586667; 1.976471 kW x 2.2 h x 0.25 = 1.087059; 900 shows.
        check_close(*figure(study, "light.cost_show", film), 1.673725, tests::printed_digits(6));
        check_close(*figure(study, "light.cost_year", film), 1506.353, tests::printed_digits(3));
        // Root of 2^2 + 3 x 5^2 + 2^2 + 3^2 + 2^2 + 2^2 + 5^2 = 125, in per cent.
        check_close(*figure(study, "light.reading_uncertainty", film), 0.1118034,
                    tests::printed_digits(7));
    }

    TEST_CASE("the margin at the lamp's end is held against the room's own least reading") {
        const Study study = compute_study(tests::demo_brief("converted-hall-96"));
        check_close(*figure(study, "light.end_margin", at(0, 0)),
                    *figure(study, "light.reading_end", at(0, 0)) / 41.0, kRounding);
        check_close(*figure(study, "light.end_margin", at(1, 0)),
                    *figure(study, "light.reading_end", at(1, 0)) / 37.8, kRounding);
        auto brief = std::make_shared<room::Brief>(*tests::demo_brief("converted-hall-96"));
        brief->limits.limits.clear();
        CHECK_FALSE(figure(compute_study(brief), "light.end_margin", at(0, 0)));
    }

    TEST_CASE("a lamp over its lamphouse and a duct too weak are found, with what to do") {
        const Study study = edited("converted-hall-96", [](room::Layout& x) {
            x.projectors[0].supply.lamp_power_most_w = 1600.0;
            x.projectors[0].supply.exhaust_flow_m3_s = 0.03;
        });
        for (const char* id : {"light.lamphouse_load", "light.exhaust_load"}) {
            INFO(id);
            const auto found = std::find_if(study.findings.begin(), study.findings.end(),
                                            [&](const Finding& f) { return f.figure == id; });
            REQUIRE(found != study.findings.end());
            CHECK(found->verdict == Verdict::missed);
            CHECK_FALSE(found->mend.empty());
        }
    }

    TEST_CASE(
        "property: on random rooms, readings lie in their range and contrasts under the "
        "machine's") {
        for (unsigned seed = 8710; seed < 8722; ++seed) {
            Dice dice(seed);
            room::Layout layout = tests::random_layout(dice);
            layout.stray_light.lights = {{.name = "Exit", .up_m = 2.0, .back_m = 3.0}};
            const Study before = compute_study(tests::brief_of(layout));
            for (double* r :
                 {&layout.stray_light.wall_reflectance, &layout.stray_light.audience_reflectance})
                *r += 0.2;
            const Study lighter = compute_study(tests::brief_of(layout));
            for (const picture::ProjectedPicture& p : before.picture.pictures) {
                const Place place = at(p.projector, p.format);
                const auto reading = figure(before, "light.luminance_reference", place);
                const auto low = figure(before, "light.reading_low", place);
                if (!reading || !low) continue;
                INFO("seed ", seed, ", projector ", p.projector, ", format ", p.format);
                CHECK(*low < *reading);
                CHECK(*figure(before, "light.reading_high", place) > *reading);
                const double machine =
                    layout.projectors[static_cast<std::size_t>(p.projector)].contrast;
                const double contrast = *figure(before, "light.sequential_contrast", place);
                CHECK(contrast < machine);
                CHECK(*figure(before, "light.in_picture_contrast", place) <= contrast);
                CHECK(*figure(lighter, "light.in_picture_contrast", place) <
                      *figure(before, "light.in_picture_contrast", place));
                CHECK(*figure(lighter, "light.black_level", place) >
                      *figure(before, "light.black_level", place));
                CHECK(*figure(lighter, "light.luminance_reference", place) == *reading);
            }
        }
    }

    TEST_CASE("wherever lamp, current or duct are named, the derivation carries its caution") {
        const auto caution = [](const Study& study, const char* id) {
            const Figure* found = find_figure(study, id, at(0, 0));
            REQUIRE_MESSAGE(found, id);
            const auto notes = derive(study, *found).notes;
            REQUIRE_FALSE(notes.empty());
            return notes.back();
        };
        const Study xenon = compute_study(tests::demo_brief("converted-hall-96"));
        for (const char* id :
             {"light.lamp_power", "light.lamp_power_new", "light.lamp_power_end", "light.lamp_size",
              "light.lamp_size_load", "light.lamp_current_end", "light.lamp_current_wanted",
              "light.mains_power", "light.lamphouse_load"})
            CHECK(caution(xenon, id).starts_with("caution: a xenon lamp is under pressure"));
        for (const char* id : {"light.exhaust_heat", "light.exhaust_flow_needed",
                               "light.exhaust_rise", "light.exhaust_load"})
            CHECK(caution(xenon, id).find("ozone") != std::string::npos);
        const Study laser = edited("converted-hall-96", [](room::Layout& layout) {
            layout.projectors.front().flux.lamp = room::LampKind::laser;
        });
        CHECK(caution(laser, "light.lamp_power").find("laser source") != std::string::npos);
    }
}
