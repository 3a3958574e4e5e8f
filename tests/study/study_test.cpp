// SPDX-License-Identifier: MIT
#include "study/study.hpp"

#include "support/check.hpp"
#include "support/demo_rooms.hpp"

#include <cmath>
#include <functional>
#include <random>

using namespace rakeline;
using namespace rakeline::study;
using tests::demo_brief;
using tests::kDemoRooms;

namespace {

using Edit = std::function<void(room::Layout&, double)>;

/// Small edits in every part of the layout; `by` in -1 ... 1.
const Edit kEdits[] = {
    [](room::Layout& x, double by) { x.hall.height_m += 0.3 * by; },
    [](room::Layout& x, double by) { x.hall.temperature_c += by; },
    [](room::Layout& x, double by) { x.screen.sill_m += 0.1 * by; },
    [](room::Layout& x, double by) { x.screen.surface.peak_gain *= 1.0 + 0.1 * by; },
    [](room::Layout& x, double by) { x.screen.surface.retro_gain = 0.2 * std::abs(by); },
    [](room::Layout& x, double by) {
        x.screen.surface.lobe = room::LobeKind::mirror;
        x.screen.surface.gain_table = {{0.0, 1.2 + 0.1 * by}, {0.5, 0.9}, {1.0, 0.6}};
    },
    [](room::Layout& x, double by) { x.screen.surface.keeps_polarisation = by > 0.0; },
    [](room::Layout& x, double by) { x.screen.sheet_mass_kg_m2 *= 1.0 + 0.1 * by; },
    [](room::Layout& x, double by) {
        x.screen.perforation = {.pattern = room::PerforationPattern::woven,
                                .hole_diameter_m = 0.0003 + 0.0001 * by,
                                .pitch_m = 0.0015};
    },
    [](room::Layout& x, double by) { x.screen.perforation.angle_rad = 0.3 * by; },
    [](room::Layout& x, double by) { x.formats.front().aspect_ratio *= 1.0 + 0.01 * by; },
    [](room::Layout& x, double by) { x.projectors.front().up_m += 0.1 * by; },
    [](room::Layout& x, double by) { x.projectors.back().flux.measured_flux_lm *= 1.0 + 0.1 * by; },
    [](room::Layout& x, double by) { x.projectors.front().port.panes = by > 0 ? 2 : 1; },
    [](room::Layout& x, double by) {
        x.projectors.front().formats.front().light_fraction = 1.0 - 0.3 * std::abs(by);
    },
    [](room::Layout& x, double by) { x.projectors.front().contrast *= 1.0 + 0.1 * by; },
    [](room::Layout& x, double by) {
        x.projectors.back().flux.tolerances.gain = 0.05 * std::abs(by);
    },
    [](room::Layout& x, double by) {
        x.projectors.front().supply.exhaust_flow_m3_s = 0.2 + 0.1 * by;
    },
    [](room::Layout& x, double by) {
        x.projectors.back().supply.end_flux_fraction = 0.7 + 0.1 * by;
    },
    [](room::Layout& x, double by) { x.programme.energy_price = 0.3 + 0.1 * by; },
    [](room::Layout& x, double by) { x.stray_light.wall_reflectance = 0.1 + 0.05 * by; },
    [](room::Layout& x, double by) { x.stray_light.audience_reflectance = 0.1 + 0.05 * by; },
    [](room::Layout& x, double by) {
        x.stray_light.lights = {{.name = "Exit", .up_m = 2.0, .back_m = 4.0 + by}};
    },
    [](room::Layout& x, double by) { x.hall.length_m += 0.1 * by; },
    [](room::Layout& x, double by) { x.hall.splay_rad += 0.01 * by; },
    [](room::Layout& x, double by) { x.seating.front().riser_m += 0.01 * by; },
    [](room::Layout& x, double by) { x.seating.front().first_row_back_m += 0.05 * by; },
    [](room::Layout& x, double by) { x.seating.front().row_spacing_m += 0.01 * by; },
    [](room::Layout& x, double by) {
        room::SeatBlock& block = x.seating.front();
        if (x.hall.floor_profile.size() > 1)
            x.hall.floor = by > 0 ? room::FloorMode::by_seating : room::FloorMode::by_profile;
        block.floor = room::BlockFloor::flights;
        block.flights.resize(3, {2, 0.1});
        block.flights[1].riser_m += 0.02 * by;
    },
    [](room::Layout& x, double by) { x.seating.front().seat_pitch_m += 0.01 * by; },
    [](room::Layout& x, double by) { x.audience.eye_height_m += 0.02 * by; },
    [](room::Layout& x, double by) { x.audience.head_breadth_m += 0.01 * by; },
    [](room::Layout& x, double by) { x.audience.eye_to_crown_m += 0.01 * by; },
    [](room::Layout& x, double by) { x.seating.front().seat_back_m += 0.05 * by; },
    [](room::Layout& x, double by) { x.audience.crowd.slump_m = 0.05 + 0.05 * by; },
    [](room::Layout& x, double by) { x.audience.crowd.taken_fraction = 0.5 + 0.5 * by; },
    [](room::Layout& x, double by) { x.audience.standing_height_m += 0.02 * by; },
    [](room::Layout& x, double by) { x.audience.wheelchair_eye_low_m -= 0.01 * std::abs(by); },
    [](room::Layout& x, double by) { x.audience.wheelchair_eye_high_m += 0.01 * std::abs(by); },
    [](room::Layout& x, double by) {
        x.seating.front().cross_aisles = {{2, 1.1 + 0.1 * std::abs(by)}};
    },
    [](room::Layout& x, double by) {
        x.seating.front().wheelchair_places = {{"B", by > 0.0 ? 2 : 3}};
    },
    [](room::Layout& x, double by) { x.hall.width_m += 0.05 * std::abs(by); },
    [](room::Layout& x, double by) {
        x.projectors.front().formats.front().plate_allowance_m = 1e-4 * std::abs(by);
    },
    [](room::Layout& x, double by) { x.projectors.front().film_resolution_lp_mm += by; },
    [](room::Layout& x, double by) { x.projectors.back().imager.pixel_pitch_m *= 1.0 + 0.01 * by; },
    [](room::Layout& x, double by) {
        x.seating.front().row_radius_m = by > 0.0 ? 15.0 + 5.0 * by : 0.0;
    },
    [](room::Layout& x, double by) { x.loudspeakers.front().pitch_rad += 0.05 * by; },
    [](room::Layout& x, double by) { x.loudspeakers.back().power_w *= 1.0 + 0.1 * by; },
    [](room::Layout& x, double by) {
        x.loudspeakers.front().coverage_table = {{1000.0, 1.5 + 0.1 * by, 0.9},
                                                 {4000.0, 1.2, 0.7 - 0.1 * by}};
    },
    [](room::Layout& x, double by) { x.loudspeakers.front().amplifier_w *= 1.0 + 0.2 * by; },
    [](room::Layout& x, double by) { x.loudspeakers.back().cabinet_depth_m = 0.4 + 0.1 * by; },
    [](room::Layout& x, double by) { x.playback.surround_peak_level_db = 102.0 + by; },
    [](room::Layout& x, double by) { x.playback.sub_bass_gain_db = 10.0 + by; },
    [](room::Layout& x, double by) { x.playback.crest_factor_db = 12.0 + by; },
    [](room::Layout& x, double by) { x.peak_level_db += by; },
    [](room::Layout& x, double by) { x.hall.humidity_fraction = 0.5 + 0.3 * by; },
    [](room::Layout& x, double by) { x.loudspeakers.front().delay_s = 0.01 * std::abs(by); },
    [](room::Layout& x, double by) { x.loudspeakers.front().across_m += 0.2 * by; },
    [](room::Layout& x, double by) {
        x.acoustics.side_walls.by_octave[3] = 0.5 + 0.4 * by;
        x.acoustics.ceiling.by_octave[4] = 0.5 - 0.4 * by;
    },
    [](room::Layout& x, double by) { x.acoustics.taken_fraction = 0.5 + 0.5 * by; },
    [](room::Layout& x, double by) { x.acoustics.noise_target_nc = by > 0.0 ? 20 : 25; },
    [](room::Layout& x, double by) { x.acoustics.baffle.by_octave[3] = 0.5 + 0.4 * by; },
    [](room::Layout& x, double by) { x.playback.equalise_to_hz = 9000.0 + 4000.0 * by; },
    [](room::Layout& x, double by) {
        x.playback.house_curve = by > 0.0 ? room::HouseCurve::flat : room::HouseCurve::x_curve;
    },
    [](room::Layout& x, double by) {
        x.screen.loss_table.clear();
        if (by > -0.5) x.screen.loss_table = {{500.0, 0.3 + 0.1 * by}, {10000.0, 5.0}};
    },
    [](room::Layout& x, double by) { x.screen.sheet_thickness_m *= 1.0 + 0.1 * by; },
    [](room::Layout& x, double) { x.name += "'"; },
};

bool same(const Study& a, const Study& b) {
    return a.seats == b.seats && a.reference_seat == b.reference_seat && a.figures == b.figures &&
           a.findings == b.findings;
}

}  // namespace

TEST_SUITE("study/study") {
    TEST_CASE("property: edit by edit equals from scratch, exactly") {
        std::mt19937 random(7041);
        std::uniform_real_distribution<double> amount(-1.0, 1.0);
        for (const char* name : {"converted-hall-96", "screening-24"}) {
            auto brief = demo_brief(name);
            StudyCache cache;
            (void)cache.update(brief);
            for (int step = 0; step < 120; ++step) {
                const std::size_t which = random() % std::size(kEdits);
                auto next = std::make_shared<room::Brief>(*brief);
                kEdits[which](next->layout, amount(random));
                brief = next;
                INFO(name, ", step ", step, ", edit ", which);
                REQUIRE(same(cache.update(brief), compute_study(brief)));
            }
        }
    }

    TEST_CASE("the same brief gives the same study twice, bit for bit") {
        for (const char* name : kDemoRooms) {
            const auto brief = demo_brief(name);
            CHECK(same(compute_study(brief), compute_study(brief)));
        }
    }

    TEST_CASE("every value of every figure is finite") {
        for (const char* name : kDemoRooms) {
            const Study study = compute_study(demo_brief(name));
            CHECK(study.figures.size() > 50);
            for (const Figure& figure : study.figures) {
                INFO(name, ": ", figure.definition->id);
                CHECK_FALSE(figure.values.empty());
                for (const Value& value : figure.values)
                    CHECK(std::isfinite(value.si));
            }
        }
    }

    TEST_CASE("a derivation ends in the figure's own value and has a source") {
        for (const char* name : kDemoRooms) {
            const Study study = compute_study(demo_brief(name));
            for (const Figure& figure : study.figures) {
                const Value& value = figure.values.back();
                const Derivation derivation = derive(study, figure, value.index);
                INFO(name, ": ", derivation.what);
                CHECK(derivation.result == value.si);
                const auto lines = derivation_text(derivation, base::UnitSystem::metric);
                CHECK(lines.back().starts_with("source"));
            }
        }
    }

    TEST_CASE("a value that was worked from inputs shows them") {
        const Study study = compute_study(demo_brief("converted-hall-96"));
        const Figure* ratio = find_figure(study, "picture.throw_ratio");
        REQUIRE(ratio != nullptr);
        const Derivation derivation = derive(study, *ratio);
        REQUIRE(derivation.inputs.size() == 2);
        CHECK(derivation.inputs[0].symbol == "D");
        CHECK(derivation.inputs[1].symbol == "W");
        CHECK(*derivation.result == derivation.inputs[0].si / derivation.inputs[1].si);
    }

    TEST_CASE("findings agree with the figures that they speak of") {
        for (const char* name : kDemoRooms) {
            const Study study = compute_study(demo_brief(name));
            for (const Finding& finding : study.findings) {
                INFO(name, ": ", finding.what);
                CHECK(finding.what.find('{') == std::string::npos);
                CHECK_FALSE(finding.against.empty());
                if (finding.figure.empty() || finding.figure == "light.screen_reflectance")
                    continue;
                const Figure* figure = find_figure(study, finding.figure, finding.place);
                REQUIRE(figure != nullptr);
                CHECK(figure->worst >= finding.verdict);
            }
        }
    }

    TEST_CASE("every finding speaks in both unit systems") {
        auto brief = std::make_shared<room::Brief>(*demo_brief("converted-hall-96"));
        brief->layout.projectors.front().aim = {.mode = room::AimMode::angles,
                                                .yaw_rad = base::radians(60.0)};
        const Study study = compute_study(brief);
        bool feet = false;
        for (const Finding& finding : study.findings) {
            for (const auto system : {base::UnitSystem::metric, base::UnitSystem::imperial}) {
                CHECK_FALSE(finding.what_in(system).empty());
                CHECK_FALSE(finding.against_in(system).empty());
            }
            feet = feet || finding.what_imperial.find(" fL") != std::string::npos;
        }
        CHECK(feet);
    }

    TEST_CASE("a C-value follows by hand from the inputs that its working shows") {
        for (const char* name : kDemoRooms) {
            const Study study = compute_study(demo_brief(name));
            const Figure* figure = find_figure(study, "sight.c_value");
            REQUIRE(figure != nullptr);
            for (const Value& value : figure->values) {
                const auto in = derive(study, *figure, value.index).inputs;
                REQUIRE(in.size() == 4);
                const double d = in[0].si, r = in[1].si, t = in[2].si, n = in[3].si;
                tests::check_close(d * (n + r) / (d + t) - r, value.si,
                                   tests::absolute(1e-12, "rounding of lengths of some metres"));
            }
        }
    }

    TEST_CASE("blocks side by side all have a first row, and rows of one letter keep apart") {
        auto brief = std::make_shared<room::Brief>(*demo_brief("screening-24"));
        room::SeatBlock left = brief->layout.seating.front();
        left.wheelchair_places.clear();
        left.seats_per_row = 2;
        room::SeatBlock right = left;
        left.name = "left";
        left.across_m = -1.5;
        right.name = "right";
        right.across_m = 1.5;
        right.first_seat_number = 10;
        brief->layout.seating = {left, right};
        brief->layout.audience.reference_seat.clear();
        brief->limits.limits = {{.figure = "sight.distance_widths",
                                 .scope = room::LimitScope::first_row,
                                 .most = 0.0,
                                 .source = "a test"}};
        const Study study = compute_study(brief);
        const Figure* figure = find_figure(study, "sight.distance_widths");
        CHECK(std::count(figure->verdicts.begin(), figure->verdicts.end(), Verdict::missed) == 4);
        const Figure* riser = find_figure(study, "room.riser");
        REQUIRE(riser != nullptr);
        CHECK(index_name(study, *riser->definition, 1) == "B, left");
        CHECK(index_name(study, *riser->definition, left.rows + 1) == "B, right");
    }

    TEST_CASE("a subject is missed exactly if one of its findings is") {
        for (const char* name : kDemoRooms) {
            const Study study = compute_study(demo_brief(name));
            for (const Subject subject : kSubjects) {
                bool missed = false;
                for (const Finding& finding : study.findings) {
                    missed = missed ||
                             (finding.subject == subject && finding.verdict == Verdict::missed);
                }
                CHECK((subject_verdict(study, subject) == Verdict::missed) == missed);
            }
        }
    }

    TEST_CASE("limits bite at the bound and are near within their margin") {
        auto brief = std::make_shared<room::Brief>(*demo_brief("screening-24"));
        const Study plain = compute_study(brief);
        const double throw_m = *value_at(*find_figure(plain, "picture.throw"));
        const auto verdict_with = [&](double most, double near) {
            auto next = std::make_shared<room::Brief>(*brief);
            next->limits.limits = {
                {.figure = "picture.throw", .most = most, .near = near, .source = "a test"}};
            return find_figure(compute_study(next), "picture.throw")->worst;
        };
        CHECK(verdict_with(throw_m, 0.0) == Verdict::holds);
        CHECK(verdict_with(throw_m - 1e-9, 0.0) == Verdict::missed);
        CHECK(verdict_with(throw_m * (1.0 - 1e-15), 0.0) == Verdict::holds);
        CHECK(verdict_with(throw_m + 0.5, 1.0) == Verdict::near);
        CHECK(verdict_with(throw_m + 1.5, 1.0) == Verdict::holds);
    }

    TEST_CASE("scopes pick the first row, the last row and the reference seat") {
        auto brief = std::make_shared<room::Brief>(*demo_brief("steep-240"));
        const auto missed_seats = [&](room::LimitScope scope) {
            brief->limits.limits = {{.figure = "sight.distance_widths",
                                     .scope = scope,
                                     .most = 0.0,
                                     .source = "a test"}};
            const Study study = compute_study(brief);
            const Figure* figure = find_figure(study, "sight.distance_widths");
            return std::count(figure->verdicts.begin(), figure->verdicts.end(), Verdict::missed);
        };
        const Study study = compute_study(brief);
        CHECK(missed_seats(room::LimitScope::first_row) == study.seats.rows.front().seat_count);
        CHECK(missed_seats(room::LimitScope::last_row) == study.seats.rows.back().seat_count);
        CHECK(missed_seats(room::LimitScope::reference_seat) == 1);
        CHECK(missed_seats(room::LimitScope::every) == static_cast<long>(study.seats.seats.size()));
    }

    TEST_CASE("a projector that sees no screen is named and the rest of the study stands") {
        auto brief = std::make_shared<room::Brief>(*demo_brief("converted-hall-96"));
        brief->layout.projectors.front().aim = {.mode = room::AimMode::angles,
                                                .yaw_rad = base::radians(60.0)};
        const Study study = compute_study(brief);
        CHECK_FALSE(study.picture.none.empty());
        REQUIRE_FALSE(study.findings.empty());
        CHECK(study.findings.front().what.find("gives no picture") != std::string::npos);
        CHECK(find_figure(study, "sight.off_axis") != nullptr);
        CHECK(find_figure(study, "light.luminance_reference", {.projector = 1}) != nullptr);
    }

    TEST_CASE("refuses: a limit on a figure that is not in the register, with the nearest id") {
        const auto read = [](const std::string& path) -> base::Result<std::string> {
            if (path.ends_with("limits.json")) {
                return std::string(
                    R"({"rakeline_limits": 1, "name": "t", "limits": [{"figure": "picture.trow",)"
                    R"( "most": 3, "unit": "m", "authority": "yours", "source": "t"}]})");
            }
            return std::string(R"({"rakeline_layout": 1, "limits_file": "limits.json"})");
        };
        const auto brief = open_room("x.json", read);
        REQUIRE_FALSE(brief);
        CHECK(base::text(brief.problems()).find("did you mean 'picture.throw'?") !=
              std::string::npos);
    }
}
