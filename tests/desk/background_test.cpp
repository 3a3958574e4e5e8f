// SPDX-License-Identifier: MIT
#include "desk/background.hpp"

#include "desk/rake_worker.hpp"
#include "headless.hpp"
#include "support/check.hpp"

#include <doctest/doctest.h>

#include <atomic>
#include <vector>

namespace rakeline::desk {
namespace {

/// Holds work up until it is let through.
class Gate {
public:
    void pass() {
        std::unique_lock lock(mutex_);
        ++arrived_;
        changed_.notify_all();
        changed_.wait(lock, [this] { return open_; });
    }
    void open() {
        const std::scoped_lock lock(mutex_);
        open_ = true;
        changed_.notify_all();
    }
    void wait_for_arrival() {
        std::unique_lock lock(mutex_);
        changed_.wait(lock, [this] { return arrived_ > 0; });
    }

private:
    std::mutex mutex_;
    std::condition_variable changed_;
    int arrived_ = 0;
    bool open_ = false;
};

}  // namespace

TEST_SUITE_BEGIN("desk/background");

TEST_CASE("a question that is overtaken before its turn is never worked on") {
    Gate gate;
    std::atomic<int> worked = 0;
    Background<int, int> behind(
        [&](const int& n, const std::stop_token&) {
            gate.pass();
            ++worked;
            return std::optional(10 * n);
        },
        {});
    behind.ask(1);
    gate.wait_for_arrival();
    for (int n = 2; n <= 9; ++n)
        behind.ask(n);
    CHECK(behind.busy());
    gate.open();
    behind.wait_until_idle();
    CHECK(*behind.newest().answer == 90);
    CHECK(behind.newest().serial == 2);
    CHECK(worked == 2);
}

TEST_CASE("what was under way when all was forgotten never arrives") {
    Gate gate;
    Background<int, int> behind(
        [&](const int& n, const std::stop_token&) {
            gate.pass();
            return std::optional(n);
        },
        {});
    behind.ask(1);
    gate.wait_for_arrival();
    behind.forget();
    gate.open();
    behind.wait_until_idle();
    CHECK(behind.newest().answer == nullptr);
    behind.ask(2);
    behind.wait_until_idle();
    CHECK(*behind.newest().answer == 2);
}

TEST_CASE("waiting with patience comes back though the work goes on") {
    Gate gate;
    Background<int, int> behind(
        [&](const int& n, const std::stop_token&) {
            gate.pass();
            return std::optional(n);
        },
        {});
    behind.ask(1);
    behind.wait_until_idle(std::chrono::milliseconds(1));
    CHECK(behind.busy());
    gate.open();
}

TEST_CASE("work that is overtaken is told to stop, and where it leaves off the old answer stays") {
    Gate gate;
    std::atomic<int> stopped = 0;
    Background<int, int> behind(
        [&](const int& n, const std::stop_token& stop) {
            if (n > 0) gate.pass();
            if (!stop.stop_requested()) return std::optional(n);
            ++stopped;
            return std::optional<int>();
        },
        {});
    behind.ask(-1);
    behind.wait_until_idle();
    behind.ask(1);
    gate.wait_for_arrival();
    behind.ask(2);
    CHECK(*behind.newest().answer == -1);
    gate.open();
    behind.wait_until_idle();
    CHECK(stopped == 1);
    CHECK(*behind.newest().answer == 2);
    CHECK(behind.newest().serial == 2);
}

TEST_CASE("a question asked twice in a row is worked on once, unless it was cancelled before") {
    Gate gate;
    std::atomic<int> begun = 0;
    Background<int, int> behind(
        [&](const int& n, const std::stop_token& stop) {
            ++begun;
            gate.pass();
            return stop.stop_requested() ? std::nullopt : std::optional(n);
        },
        {});
    behind.ask(1);
    gate.wait_for_arrival();
    behind.ask(1);
    behind.cancel();
    gate.open();
    behind.wait_until_idle();
    CHECK(begun == 1);
    CHECK(behind.newest().answer == nullptr);
    behind.ask(1);
    behind.wait_until_idle();
    CHECK(*behind.newest().answer == 1);
    behind.cancel();  // nothing is under way: the answer stands
    behind.ask(1);
    behind.wait_until_idle();
    CHECK(begun == 2);
    CHECK(behind.newest().serial == 1);
}

TEST_CASE("the program can end in the midst of work that asks whether to stop") {
    std::atomic<bool> begun = false;
    Background<int, int> behind(
        [&](const int&, const std::stop_token& stop) {
            begun = true;
            while (!stop.stop_requested())
                std::this_thread::yield();
            return std::optional<int>();
        },
        {});
    behind.ask(1);
    while (!begun)
        std::this_thread::yield();
}

TEST_CASE("the solver behind the window builds a floor over which every row has its C") {
    const auto brief = open_document(demo("converted-hall-96"))->current();
    const auto study = std::make_shared<const study::Study>(study::compute_study(brief));
    RakeQuestion question{study, 0, study::rake_options(*study, 0, base::UnitSystem::metric)};
    question.options.wanted_c_m = 0.09;
    const auto answer = solve_rake(question, {});
    REQUIRE(answer);
    REQUIRE(answer->plan);
    REQUIRE(answer->plan->built().meets);
    const auto built = study::raked_layout(brief->layout, 0, answer->plan->built().floor_m);
    REQUIRE(built);
    const auto after = study::compute_study(
        std::make_shared<const room::Brief>(room::Brief{*built, brief->limits}));
    int rows = 0;
    for (const study::Figure& figure : after.figures) {
        if (std::string_view(figure.definition->id) != "sight.c_value") continue;
        for (const study::Value& value : figure.values) {
            ++rows;
            CHECK(value.si > 0.09 - 1e-9);
        }
    }
    CHECK(rows > 0);
}

TEST_CASE("the rake window asks once for each question, and another option asks again") {
    Headless headless;
    Session session(quiet_options(demo("converted-hall-96")));
    session.wait_for_study();
    session.workspace().rake.open = true;
    headless.frame(session);
    session.wait_for_rake();
    session.take_study();
    const auto first = session.rake();
    REQUIRE(first != nullptr);
    CHECK(first->question.study == session.study());
    headless.frame(session);
    session.wait_for_rake();
    session.take_study();
    CHECK(session.rake() == first);
    session.workspace().rake.options.wanted_c_m = 0.05;
    headless.frame(session);
    session.wait_for_rake();
    session.take_study();
    REQUIRE(session.rake() != first);
    tests::check_close(session.rake()->question.options.wanted_c_m, 0.05,
                       tests::absolute(0.0, "handed on as it is"));
}

TEST_SUITE_END();

}  // namespace rakeline::desk
