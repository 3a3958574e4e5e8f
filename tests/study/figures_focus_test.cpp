// SPDX-License-Identifier: MIT
#include "study/study.hpp"
#include "support/check.hpp"
#include "support/demo_rooms.hpp"

#include <cmath>
#include <map>

using namespace rakeline;
using namespace rakeline::tests;

namespace {

std::map<std::string, double> inputs(const study::Study& study, const study::Figure& figure) {
    std::map<std::string, double> out;
    for (const auto& step : study::derive(study, figure).inputs)
        out[step.symbol] = step.si;
    return out;
}

room::SourceKind kind_of(const study::Study& study, const study::Figure& figure) {
    return study.layout().projectors.at(static_cast<std::size_t>(*figure.projector)).kind;
}

}  // namespace

TEST_SUITE("study/figures_picture, focus") {
    TEST_CASE("the worst blur follows by its formula from the inputs that its derivation shows") {
        int seen = 0;
        for (const char* name : kDemoRooms) {
            INFO(name);
            const auto study = study::compute_study(demo_brief(name));
            for (const auto& figure : study.figures) {
                const auto value = study::value_at(figure);
                if (figure.definition->id != std::string("picture.blur") || !value) continue;
                ++seen;
                const auto in = inputs(study, figure);
                const double near = in.at("D_n");
                const double far = in.at("D_f");
                check_close(*value, in.at("f") / in.at("N") * (far - near) / (far + near),
                            relative(1e-9, "rounding of the difference"));
                check_close(in.at("D_0"), 0.5 * (near + far), relative(1e-14, "rounding"));
            }
        }
        CHECK(seen >= 10);
    }

    TEST_CASE("without a lens there is no f-number, so no blur") {
        room::Brief brief = *demo_brief("converted-hall-96");
        for (auto& projector : brief.layout.projectors)
            for (auto& use : projector.formats)
                use.lens.clear();
        const auto study = study::compute_study(std::make_shared<const room::Brief>(brief));
        REQUIRE_FALSE(study.picture.pictures.empty());
        const auto* figure = study::find_figure(study, "picture.blur");
        CHECK((figure == nullptr || figure->values.empty()));
    }

    TEST_CASE("a pixel's size is there for digital projectors alone, from pitch and map") {
        int digital = 0;
        for (const char* name : kDemoRooms) {
            INFO(name);
            const auto study = study::compute_study(demo_brief(name));
            for (const auto& figure : study.figures) {
                const auto value = study::value_at(figure);
                if (figure.definition->id != std::string("picture.pixel_size") || !value) continue;
                CHECK(kind_of(study, figure) == room::SourceKind::digital);
                ++digital;
                const auto in = inputs(study, figure);
                check_close(*value, in.at("A") / in.at("n") * std::sqrt(in.at("J")),
                            relative(1e-12, "rounding"));
            }
        }
        CHECK(digital >= 10);
    }
}
