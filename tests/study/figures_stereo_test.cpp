// SPDX-License-Identifier: MIT
#include "study/study.hpp"
#include "support/check.hpp"
#include "support/demo_rooms.hpp"

#include <algorithm>

using namespace rakeline;

namespace {

/// A digital room whose flat picture reads `wanted_cdm2` at the reference seat.
room::Brief silver_room(double wanted_cdm2) {
    room::Brief brief = *tests::demo_brief("steep-240");
    brief.layout.screen.surface.keeps_polarisation = true;
    const study::Study before = study::compute_study(std::make_shared<const room::Brief>(brief));
    const double now = before.light.lights.front().reference_cdm2.value();
    for (room::Projector& projector : brief.layout.projectors) {
        REQUIRE(projector.kind == room::SourceKind::digital);
        projector.flux.entry = room::FluxEntry::measured;
        projector.flux.measured_flux_lm = before.light.lights.front().chain_flux_lm *
                                          (wanted_cdm2 / now) /
                                          before.light.lights.front().setting_fraction;
    }
    return brief;
}

study::Study study_of(room::Brief brief) {
    return study::compute_study(std::make_shared<const room::Brief>(std::move(brief)));
}

const study::Figure* figure(const study::Study& study, const char* id) {
    study::Place place;
    place.projector = 0;
    place.format = study.picture.pictures.front().format;
    return study::find_figure(study, id, place);
}

double value(const study::Study& study, const char* id) {
    const study::Figure* found = figure(study, id);
    REQUIRE_MESSAGE(found, id);
    return study::value_at(*found).value();
}

/// Findings about stereo of the first picture's format.
std::vector<study::Finding> stereo_findings(const study::Study& study) {
    std::vector<study::Finding> out;
    for (const study::Finding& finding : study.findings) {
        const bool about =
            finding.figure == "light.stereo_low" || finding.figure == "light.stereo_high";
        if (about && finding.place.format == study.picture.pictures.front().format)
            out.push_back(finding);
    }
    return out;
}

}  // namespace

TEST_SUITE("study/figures_stereo") {
    TEST_CASE(
        "golden: 110 to 150 cd/m2 on the sheet are 16 at the eye (booth guide, as reported)") {
        const tests::Tolerance rounding = tests::relative(1e-9, "rounding of the flux set");
        tests::check_close(value(study_of(silver_room(150.0)), "light.stereo_low"), 16.0, rounding);
        tests::check_close(value(study_of(silver_room(110.0)), "light.stereo_high"), 16.0,
                           rounding);
    }

    TEST_CASE("stereo is shown with all the light, whatever the format's flat setting") {
        room::Brief brief = silver_room(130.0);
        const double open = value(study_of(brief), "light.stereo_low");
        for (room::FormatUse& use : brief.layout.projectors.front().formats)
            use.light_fraction *= 0.5;
        const study::Study dimmed = study_of(brief);
        tests::check_close(value(dimmed, "light.luminance_reference"), 65.0,
                           tests::relative(1e-9, "half the light"));
        tests::check_close(value(dimmed, "light.stereo_low"), open,
                           tests::relative(1e-12, "rounding"));
    }

    TEST_CASE("a flat picture of 48 cd/m2 leaves too little in stereo, by every source") {
        const study::Study dim = study_of(silver_room(48.0));
        const auto found = stereo_findings(dim);
        REQUIRE(found.size() == 1);
        CHECK(found.front().figure == "light.stereo_high");
        CHECK(found.front().verdict == study::Verdict::missed);
        CHECK(found.front().against.find("sources disagree") != std::string::npos);
        CHECK(stereo_findings(study_of(silver_room(130.0))).empty());
        const auto bright = stereo_findings(study_of(silver_room(400.0)));
        REQUIRE(bright.size() == 1);
        CHECK(bright.front().figure == "light.stereo_low");
    }

    TEST_CASE("a sheet that does not keep polarisation has no such figures, nor has film") {
        room::Brief brief = silver_room(130.0);
        brief.layout.screen.surface.keeps_polarisation = false;
        CHECK(figure(study_of(brief), "light.stereo_low") == nullptr);
        room::Brief film = *tests::demo_brief("converted-hall-96");
        film.layout.screen.surface.keeps_polarisation = true;
        REQUIRE(film.layout.projectors.front().kind == room::SourceKind::film);
        CHECK(figure(study_of(film), "light.stereo_high") == nullptr);
    }
}
