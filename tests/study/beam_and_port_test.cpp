// SPDX-License-Identifier: MIT
#include "study/study.hpp"
#include "support/check.hpp"
#include "support/demo_rooms.hpp"

#include <algorithm>
#include <map>

using namespace rakeline;
using namespace rakeline::study;
using namespace rakeline::tests;

namespace {

/// A demo room spoiled by `spoil`.
template <class Spoil>
Study spoiled(const char* name, Spoil spoil) {
    auto brief = std::make_shared<room::Brief>(*demo_brief(name));
    spoil(brief->layout);
    return compute_study(brief);
}

const Finding* finding_on(const Study& study, std::string_view figure) {
    const auto found =
        std::ranges::find_if(study.findings, [&](const Finding& f) { return f.figure == figure; });
    return found == study.findings.end() ? nullptr : &*found;
}

double value(const Study& study, const char* id, const Place& place = {}) {
    const Figure* figure = find_figure(study, id, place);
    REQUIRE_MESSAGE(figure, id);
    return figure->values.at(0).si;
}

/// Figures of a projector's own picture, such as its pixels at the eye, go with that picture.
int figures_of(const Study& study, Subject subject) {
    return static_cast<int>(std::ranges::count_if(study.figures, [&](const Figure& f) {
        return f.definition->subject == subject && !f.definition->per.projector;
    }));
}

/// Whether the subjects that don't hang on the spoiled part still have all their figures.
void check_rest_stands(const Study& study, const char* name) {
    const Study whole = compute_study(demo_brief(name));
    for (const Subject subject : {Subject::room, Subject::sight, Subject::sound})
        CHECK(figures_of(study, subject) == figures_of(whole, subject));
}

}  // namespace

TEST_SUITE("study/beam_and_port") {
    TEST_CASE("refuses: a port away from the beam is a finding that says how far, and no more") {
        const Study study =
            spoiled("screening-24", [](room::Layout& l) { l.projectors[0].port.across_m = 1.5; });
        const Finding* finding = finding_on(study, "picture.port_margin");
        REQUIRE(finding);
        CHECK(finding->verdict == Verdict::missed);
        CHECK(finding->what.find("Digital laser") != std::string::npos);
        CHECK(finding->mend.find("port") != std::string::npos);
        CHECK(value(study, "picture.port_margin") < -1.0);
        check_rest_stands(study, "screening-24");
        CHECK(find_figure(study, "light.luminance_reference"));
    }

    TEST_CASE("refuses: a projector that can't see the screen has no port to want, the others do") {
        const Study study = spoiled("converted-hall-96", [](room::Layout& l) {
            l.projectors[0].aim = {.mode = room::AimMode::angles, .yaw_rad = base::radians(75.0)};
        });
        CHECK_FALSE(study.picture.none.empty());
        const auto named = std::ranges::find_if(study.findings, [](const Finding& f) {
            return f.figure.empty() && f.what.starts_with("Film 35 mm gives no picture");
        });
        CHECK(named != study.findings.end());
        CHECK_FALSE(find_figure(study, "picture.port_width_needed", {.projector = 0}));
        CHECK(find_figure(study, "picture.port_width_needed", {.projector = 1}));
        check_rest_stands(study, "converted-hall-96");
    }

    TEST_CASE("refuses: a balcony in the beam is a finding that says how deep") {
        const Study study =
            spoiled("grand-620", [](room::Layout& l) { l.seating[1].first_row_up_m = 7.2; });
        const Finding* finding = finding_on(study, "picture.balcony_clearance");
        REQUIRE(finding);
        CHECK(finding->verdict == Verdict::missed);
        CHECK(finding->what.find("clears the balcony by -") != std::string::npos);
        CHECK(finding->what_imperial.find("ft") != std::string::npos);
        check_rest_stands(study, "grand-620");
    }

    TEST_CASE("a beam may pass under a balcony, and says so in its derivation") {
        const Study study = spoiled("grand-620", [](room::Layout& l) {
            for (room::Projector& p : l.projectors) {
                p.up_m = 4.6;
                p.aim.pitch_rad = 0.0;
            }
            l.seating[1].first_row_up_m = 8.5;
        });
        const Figure* figure = find_figure(study, "picture.balcony_clearance");
        REQUIRE(figure);
        CHECK(figure->values.at(0).si > 0.0);
        const auto notes = derive(study, *figure).notes;
        REQUIRE(notes.size() == 1);
        CHECK(notes[0] == "the beam's upper side, under the balcony");
    }

    TEST_CASE("a beam through ceiling and wall is named, each by its own finding") {
        const Study low = spoiled("screening-24", [](room::Layout& l) { l.hall.height_m = 2.55; });
        REQUIRE(finding_on(low, "picture.ceiling_clearance"));
        CHECK(finding_on(low, "picture.ceiling_clearance")->verdict == Verdict::missed);
        const Study tight = spoiled("grand-620", [](room::Layout& l) {
            l.hall.splay_rad = 0.0;
            l.hall.width_m = 15.8;
        });
        REQUIRE(finding_on(tight, "picture.wall_clearance"));
        CHECK(finding_on(tight, "picture.wall_clearance")->verdict == Verdict::missed);
    }

    TEST_CASE("heads and floor tell one truth") {
        for (const char* name : kDemoRooms) {
            INFO(name);
            const Study study = compute_study(demo_brief(name));
            for (const Figure& figure : study.figures) {
                if (figure.definition->id != std::string("picture.head_clearance")) continue;
                const double over_floor =
                    value(study, "picture.beam_clearance",
                          {.projector = figure.projector, .format = figure.format});
                CHECK(figure.values.at(0).si ==
                      over_floor - study.layout().audience.standing_height_m);
            }
        }
    }

    TEST_CASE("a port as large as needed, where it is wanted, just passes the light") {
        for (const char* name : kDemoRooms) {
            const Study before = compute_study(demo_brief(name));
            const Study after = spoiled(name, [&](room::Layout& l) {
                for (std::size_t p = 0; p < l.projectors.size(); ++p) {
                    const Place place{.projector = static_cast<int>(p)};
                    l.projectors[p].port.width_m =
                        value(before, "picture.port_width_needed", place);
                    l.projectors[p].port.height_m =
                        value(before, "picture.port_height_needed", place);
                    l.projectors[p].port.across_m =
                        value(before, "picture.port_centre_across", place);
                    l.projectors[p].port.up_m = value(before, "picture.port_centre_up", place);
                }
            });
            std::map<int, double> least;
            for (const Figure& figure : after.figures) {
                if (figure.definition->id != std::string("picture.port_margin")) continue;
                const double si = figure.values.at(0).si;
                const auto [at, fresh] = least.try_emplace(*figure.projector, si);
                at->second = std::min(at->second, si);
            }
            CHECK(least.size() == after.layout().projectors.size());
            for (const auto& [projector, margin] : least) {
                INFO(name, ", projector ", projector);
                check_close(margin, 0.0, absolute(1e-12, "rounding of lengths of some metres"));
            }
        }
    }
}
