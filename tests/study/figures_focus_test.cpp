// SPDX-License-Identifier: MIT
#include "study/study.hpp"
#include "support/check.hpp"
#include "support/demo_rooms.hpp"

#include <cmath>
#include <map>

using namespace rakeline;
using namespace rakeline::tests;

namespace {

/// One value of a figure in a demo room, with what its derivation shows.
struct Shown {
    const study::Study& study;
    const study::Figure& figure;
    double value = 0.0;
    std::map<std::string, double> in;

    const room::Projector& projector() const {
        return study.layout().projectors.at(static_cast<std::size_t>(*figure.projector));
    }
    std::optional<double> other(const char* id) const {
        const auto* found =
            study::find_figure(study, id, {.projector = figure.projector, .format = figure.format});
        return found ? study::value_at(*found) : std::nullopt;
    }
};

/// Looks at each value of the figure in the demo rooms; says how many there are.
template <class Look>
int look_at(const std::string& id, Look look) {
    int seen = 0;
    for (const char* name : kDemoRooms) {
        INFO(name);
        const auto study = study::compute_study(demo_brief(name));
        for (const auto& figure : study.figures) {
            const auto value = study::value_at(figure);
            if (figure.definition->id != id || !value) continue;
            Shown shown{.study = study, .figure = figure, .value = *value, .in = {}};
            for (const auto& step : study::derive(study, figure).inputs)
                shown.in[step.symbol] = step.si;
            look(shown);
            ++seen;
        }
    }
    return seen;
}

const Tolerance kRounding = relative(1e-12, "rounding");

}  // namespace

TEST_SUITE("study/figures_focus") {
    TEST_CASE("the worst blur follows by its formula from the inputs that its derivation shows") {
        const int seen = look_at("picture.blur", [](const Shown& s) {
            const double near = s.in.at("D_n");
            const double far = s.in.at("D_f");
            check_close(s.value, s.in.at("f") / s.in.at("N") * (far - near) / (far + near),
                        relative(1e-9, "rounding of the difference"));
            check_close(s.in.at("D_0"), 0.5 * (near + far), relative(1e-14, "rounding"));
        });
        CHECK(seen >= 10);
    }

    TEST_CASE("best focus lies midway between the nearest and the farthest part") {
        const int seen = look_at("picture.focus_distance", [](const Shown& s) {
            check_close(s.value, 0.5 * (s.in.at("D_n") + s.in.at("D_f")), kRounding);
            check_close(s.value - *s.other("picture.throw"), s.in.at("D_0 - D"),
                        absolute(1e-12, "rounding of metres"));
        });
        CHECK(seen >= 10);
    }

    TEST_CASE("the blur in the gate follows by its formula") {
        const int seen = look_at("picture.blur_gate", [](const Shown& s) {
            const double f = s.in.at("f");
            const double near = s.in.at("D_n");
            const double best = s.in.at("D_0");
            check_close(s.value, f / s.in.at("N") * f * (best - near) / (near * (best - f)),
                        relative(1e-9, "rounding of the difference"));
        });
        CHECK(seen >= 10);
    }

    TEST_CASE("without a lens there is no f-number, so no blur") {
        room::Brief brief = *demo_brief("converted-hall-96");
        for (auto& projector : brief.layout.projectors)
            for (auto& use : projector.formats)
                use.lens.clear();
        const auto study = study::compute_study(std::make_shared<const room::Brief>(brief));
        REQUIRE_FALSE(study.picture.pictures.empty());
        for (const char* id : {"picture.focus_distance", "picture.blur", "picture.blur_gate",
                               "picture.blur_ratio"}) {
            INFO(id);
            CHECK(study::find_figure(study, id) == nullptr);
        }
        CHECK(study::find_figure(study, "picture.film_detail") != nullptr);
    }

    TEST_CASE("a pixel's size is there for digital projectors alone, from pitch and map") {
        const int seen = look_at("picture.pixel_size", [](const Shown& s) {
            CHECK(s.projector().kind == room::SourceKind::digital);
            check_close(s.value, s.in.at("A") / s.in.at("n") * std::sqrt(s.in.at("J")), kRounding);
        });
        CHECK(seen >= 10);
    }

    TEST_CASE("the film's detail is there for film alone, from its resolution and the map") {
        const int seen = look_at("picture.film_detail", [](const Shown& s) {
            CHECK(s.projector().kind == room::SourceKind::film);
            CHECK(s.in.at("R") == s.projector().film_resolution_lp_mm);
            check_close(s.value, 0.0005 / s.in.at("R") * std::sqrt(s.in.at("J") / s.in.at("q")),
                        kRounding);
        });
        CHECK(seen >= 3);
    }

    TEST_CASE("the blur's ratio is to a pixel, or to the film's detail") {
        int films = 0;
        const int seen = look_at("picture.blur_ratio", [&](const Shown& s) {
            const bool film = s.projector().kind == room::SourceKind::film;
            films += film ? 1 : 0;
            const auto detail = s.other(film ? "picture.film_detail" : "picture.pixel_size");
            REQUIRE(detail);  // no demo room shows digital pictures through an anamorphic lens
            check_close(s.value, *s.other("picture.blur") / *detail, kRounding);
        });
        CHECK(films >= 3);
        CHECK(seen - films >= 10);
    }

    TEST_CASE("a blur wider than a detail is found, and the finding says how to mend it") {
        room::Brief brief = *demo_brief("converted-hall-96");
        for (auto& projector : brief.layout.projectors)
            projector.film_resolution_lp_mm = 400.0;
        const auto study = study::compute_study(std::make_shared<const room::Brief>(brief));
        const auto& all = study.findings;
        const auto found = std::find_if(all.begin(), all.end(), [](const study::Finding& finding) {
            return finding.figure == "picture.blur_ratio";
        });
        REQUIRE(found != all.end());
        CHECK(found->verdict == study::Verdict::missed);
        CHECK(found->what.find("times its finest detail") != std::string::npos);
        CHECK(found->mend.find("f-number") != std::string::npos);
    }
}
