// SPDX-License-Identifier: MIT
#include "desk/figure_view.hpp"

#include "desk/document.hpp"
#include "desk/seat_colours.hpp"
#include "desk/study_worker.hpp"
#include "headless.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <set>

namespace rakeline::desk {
namespace {

study::Study demo_study(const char* name) {
    return study::compute_study(open_document(demo(name))->current());
}

}  // namespace

TEST_SUITE_BEGIN("desk/figure_view");

TEST_CASE("least and greatest are the extremes and the worst has the worst mark") {
    const study::Study study = demo_study("converted-hall-96");
    int looked_at = 0;
    for (const study::Figure& figure : study.figures) {
        const auto e = extent(study, figure);
        if (!e) continue;
        INFO(figure.definition->id);
        for (std::size_t i = 0; i < figure.values.size(); ++i) {
            CHECK(e->least.si <= figure.values[i].si);
            CHECK(e->greatest.si >= figure.values[i].si);
            CHECK(e->worst.verdict >= figure.verdicts[i]);
        }
        CHECK(e->worst.verdict == figure.worst);
        ++looked_at;
    }
    CHECK(looked_at > 50);
}

TEST_CASE("every group holds figures of the open subject at the chosen place alone") {
    const study::Study study = demo_study("converted-hall-96");
    Workspace w;
    w.projector = 1;
    w.format = 2;
    for (const study::Subject subject : study::kSubjects) {
        w.subject = subject;
        for (const FigureGroup& group : figure_groups(study, w)) {
            for (const study::Figure* figure : group.figures) {
                CHECK(figure->definition->subject == subject);
                CHECK(figure->projector.value_or(1) == 1);
                CHECK(figure->format.value_or(2) == 2);
            }
        }
    }
}

TEST_CASE("among findings as bad those of the open subject come first, else in the study's order") {
    study::Study study = demo_study("screening-24");
    study.findings.clear();
    const auto add = [&](study::Subject subject, study::Verdict verdict) {
        study::Finding finding;
        finding.subject = subject;
        finding.verdict = verdict;
        study.findings.push_back(finding);
    };
    using study::Subject, study::Verdict;
    add(Subject::light, Verdict::missed);
    add(Subject::sight, Verdict::missed);
    add(Subject::light, Verdict::missed);
    add(Subject::sight, Verdict::missed);
    add(Subject::room, Verdict::near);
    add(Subject::sight, Verdict::near);
    using Order = std::vector<std::size_t>;
    CHECK(finding_order(study, Subject::room) == Order{0, 1, 2, 3, 4, 5});
    CHECK(finding_order(study, Subject::sight) == Order{1, 3, 0, 2, 5, 4});
    CHECK(finding_order(study, Subject::light) == Order{0, 2, 1, 3, 4, 5});
    CHECK(finding_order(study, Subject::sound) == Order{0, 1, 2, 3, 4, 5});
}

TEST_CASE("limits that hold and that are missed add up to all") {
    const study::Study study = demo_study("steep-240");
    const LimitCount count = count_limits(study);
    const auto missed =
        std::count_if(study.figures.begin(), study.figures.end(),
                      [](const auto& f) { return f.worst == study::Verdict::missed; });
    CHECK(count.all > 0);
    CHECK(count.hold + missed == count.all);
}

TEST_CASE("choices are kept within what the study has") {
    const study::Study study = demo_study("screening-24");
    Workspace w;
    w.projector = 7;
    w.format = -3;
    w.band = 40;
    w.selected = {drawing::Shows::Kind::seat, 5000};
    clamp_choices(w, study);
    CHECK(w.projector == 0);
    CHECK(w.format == 0);
    CHECK(w.band == 8);
    CHECK(w.selected.kind == drawing::Shows::Kind::nothing);
}

TEST_CASE("seats that miss their limit are marked, whatever their colour") {
    const study::Study study = demo_study("converted-hall-96");
    Workspace w;
    w.subject = study::Subject::sight;
    const SeatColours colours = seat_colours(study, w);
    REQUIRE(colours.figure != nullptr);
    REQUIRE(colours.figure->worst == study::Verdict::missed);
    for (std::size_t i = 0; i < colours.figure->values.size(); ++i) {
        const auto seat = static_cast<std::size_t>(colours.figure->values[i].index);
        CHECK(colours.seats[seat].missed ==
              (colours.figure->verdicts[i] == study::Verdict::missed));
    }
}

TEST_CASE("the figure that the user chose colours the seats; plain seats have none") {
    const study::Study study = demo_study("screening-24");
    Workspace w;
    w.seat_figure = "sight.off_axis";
    REQUIRE(colouring_figure(study, w) != nullptr);
    CHECK(std::string(colouring_figure(study, w)->definition->id) == "sight.off_axis");
    w.seat_figure = kPlainSeats;
    CHECK(colouring_figure(study, w) == nullptr);
}

TEST_CASE("a worker that is given many briefs ends on the newest one") {
    StudyWorker worker;
    const Document document = *open_document(demo("screening-24"));
    BriefPtr last;
    for (int i = 0; i < 30; ++i) {
        room::Brief brief = *document.current();
        brief.layout.hall.width_m += 0.01 * i;
        last = std::make_shared<const room::Brief>(brief);
        worker.post(last);
    }
    worker.wait_until_idle();
    REQUIRE(worker.newest().study != nullptr);
    CHECK(worker.newest().study->brief == last);
    CHECK_FALSE(worker.busy());
    worker.forget();
    CHECK(worker.newest().study == nullptr);
}

TEST_CASE("a worker draws the crowd of the study that it ends on, and keeps it while it may") {
    constexpr std::chrono::seconds kLong{60};
    StudyWorker worker;
    const Document document = *open_document(demo("screening-24"));
    worker.post(document.current());
    worker.wait_until_idle();
    REQUIRE(worker.wait_until_sampled(kLong));
    const auto first = worker.newest();
    CHECK(first.serial == 2);
    CHECK(*first.study->crowd == *study::sample_crowd(*first.study));
    CHECK(find_figure(*first.study, "sight.clear_chance") != nullptr);
    // Nothing that the crowd reads: it is there with the study, at once.
    auto renamed = std::make_shared<room::Brief>(*document.current());
    renamed->layout.name += "'";
    worker.post(renamed);
    worker.wait_until_idle();
    CHECK(worker.newest().serial == 3);
    CHECK(worker.newest().study->crowd == first.study->crowd);
    CHECK_FALSE(worker.sampling());
}

TEST_CASE("a new brief ends the drawing of a crowd at once, and no study shows another's") {
    StudyWorker worker;
    const Document document = *open_document(demo("screening-24"));
    room::Brief slow = *document.current();
    slow.layout.audience.crowd.precision = 0.001;
    worker.post(std::make_shared<const room::Brief>(slow));
    worker.wait_until_idle();
    CHECK(worker.newest().study->crowd == nullptr);
    slow.layout.seating.front().riser_m += 0.05;
    const auto second = std::make_shared<const room::Brief>(slow);
    worker.post(second);
    worker.wait_until_idle();
    CHECK(worker.newest().study->brief == second);
    CHECK(worker.newest().study->crowd == nullptr);
    worker.forget();
    CHECK(worker.newest().study == nullptr);
    CHECK_FALSE(worker.sampling());
}

TEST_CASE("while its crowd is awaited a study lists the same figures in the same groups") {
    const study::Study plain = demo_study("screening-24");
    const study::Study whole = study::with_crowd(plain, study::sample_crowd(plain));
    Workspace w;
    w.subject = study::Subject::sight;
    const auto before = figure_groups(plain, w);
    const auto after = figure_groups(whole, w);
    REQUIRE(before.size() == after.size());
    std::size_t awaited = 0;
    for (std::size_t i = 0; i < before.size(); ++i) {
        CHECK(before[i].title == after[i].title);
        CHECK(before[i].figures.size() + before[i].awaited.size() == after[i].figures.size());
        CHECK(after[i].awaited.empty());
        awaited += before[i].awaited.size();
    }
    CHECK(awaited == 8);
    w.seat_figure = "sight.clear_chance";
    CHECK(colouring_figure(plain, w) == nullptr);
    REQUIRE(colouring_figure(whole, w) != nullptr);
}

TEST_SUITE_END();

}  // namespace rakeline::desk
