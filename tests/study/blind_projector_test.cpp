// SPDX-License-Identifier: MIT
// A machine that can make no picture takes nothing from the rest of the study.
#include "study/study.hpp"
#include "support/check.hpp"
#include "support/demo_rooms.hpp"

#include <algorithm>
#include <functional>

using namespace rakeline;
using namespace rakeline::study;
using namespace rakeline::tests;

namespace {

/// A way to ask something that has no picture for an answer, and what the finding says.
struct Blinding {
    const char* name;
    std::function<void(room::Projector&)> edit;
    const char* why;
};

const Blinding kBlindings[] = {
    {"the axis points beside the screen",
     [](room::Projector& p) {
         p.aim = {.mode = room::AimMode::angles, .yaw_rad = base::radians(60.0)};
     },
     "falls wholly outside the opening"},
    {"the axis points at the ceiling of the booth",
     [](room::Projector& p) {
         p.aim = {.mode = room::AimMode::angles, .pitch_rad = base::radians(-60.0)};
     },
     "falls wholly outside the opening"},
    {"the shift is larger than the picture",
     [](room::Projector& p) {
         for (room::FormatUse& use : p.formats)
             use.shift_across = 2.0;
     },
     "falls wholly outside the opening"},
};

std::shared_ptr<room::Brief> hall() {
    return std::make_shared<room::Brief>(*demo_brief("converted-hall-96"));
}

/// Figures that do not speak of this projector, in the study's order.
std::vector<Figure> figures_of_the_rest(const Study& study, int projector) {
    std::vector<Figure> out;
    for (const Figure& figure : study.figures) {
        if (figure.projector != projector) out.push_back(figure);
    }
    return out;
}

int findings_on_blind(const Study& study, int projector, const std::string& why) {
    const std::string& name =
        study.layout().projectors.at(static_cast<std::size_t>(projector)).name;
    int found = 0;
    for (const Finding& finding : study.findings) {
        if (!finding.figure.empty() || finding.place.projector != projector) continue;
        ++found;
        INFO(finding.what);
        CHECK(finding.verdict == Verdict::missed);
        CHECK(finding.what.starts_with(name + " gives no picture in "));
        CHECK(finding.what.find(why) != std::string::npos);
        CHECK_FALSE(finding.mend.empty());
        CHECK(finding.place.format);
    }
    return found;
}

bool has_subject(const std::vector<Figure>& figures, Subject subject) {
    return std::ranges::any_of(figures,
                               [&](const Figure& f) { return f.definition->subject == subject; });
}

}  // namespace

TEST_SUITE("study/blind_projector") {
    TEST_CASE("a projector that sees no screen is named, and all else stands bit for bit") {
        const Study whole = compute_study(hall());
        for (const Blinding& blinding : kBlindings) {
            for (const int which : {0, 1}) {
                INFO(std::string(blinding.name), ", projector ", which);
                auto brief = hall();
                room::Projector& p = brief->layout.projectors[static_cast<std::size_t>(which)];
                blinding.edit(p);
                REQUIRE(room::check_layout(brief->layout).empty());
                const Study blind = compute_study(brief);
                CHECK(findings_on_blind(blind, which, blinding.why) ==
                      static_cast<int>(p.formats.size()));
                const auto rest = figures_of_the_rest(blind, which);
                CHECK(rest == figures_of_the_rest(whole, which));
                for (const Subject subject : kSubjects)
                    CHECK(has_subject(rest, subject));
                CHECK(blind.seats == whole.seats);
            }
        }
    }

    TEST_CASE("where no projector sees the screen, seats, sight and sound are as before") {
        const Study whole = compute_study(hall());
        auto brief = hall();
        for (room::Projector& p : brief->layout.projectors)
            kBlindings[0].edit(p);
        const Study blind = compute_study(brief);
        CHECK(blind.picture.pictures.empty());
        for (const Subject subject : {Subject::room, Subject::sight, Subject::sound}) {
            std::vector<Figure> before, after;
            // Pixels and lines at the eye are a projector's own: they go with its picture.
            for (const Figure& f : whole.figures)
                if (f.definition->subject == subject && !f.projector) before.push_back(f);
            for (const Figure& f : blind.figures)
                if (f.definition->subject == subject) after.push_back(f);
            CHECK_FALSE(after.empty());
            CHECK(after == before);
        }
        CHECK(subject_verdict(blind, Subject::picture) == Verdict::missed);
    }
}
