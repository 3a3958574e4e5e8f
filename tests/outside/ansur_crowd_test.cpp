// SPDX-License-Identifier: MIT
// Reference: ANSUR II (2012), 4082 men and 1986 women, report NATICK/TR-15/007; means, sample
// deviations and percentiles computed from the public data. The mix of half men and half women,
// and the chances over a level floor, are computed from the same people.
#include "sight/people.hpp"
#include "sight/row_clearance.hpp"
#include "support/check.hpp"

#include <algorithm>
#include <cmath>
#include <functional>
#include <vector>

using namespace rakeline;
using namespace rakeline::tests;
using sight::Person;

namespace {

constexpr int kPeople = 200000;

std::vector<Person> people(double women_fraction, std::uint64_t seed) {
    std::vector<Person> out;
    out.reserve(kPeople);
    for (std::uint64_t i = 0; i < kPeople; ++i)
        out.push_back(sight::draw_person(base::CountedRandom{seed, i}, women_fraction));
    return out;
}

using Take = std::function<double(const Person&)>;
double eye_mm(const Person& p) {
    return 1e3 * p.sitting_eye_m;
}
double height_mm(const Person& p) {
    return 1e3 * (p.sitting_eye_m + p.eye_to_crown_m);
}
double crown_mm(const Person& p) {
    return 1e3 * p.eye_to_crown_m;
}
double breadth_mm(const Person& p) {
    return 1e3 * p.head_breadth_m;
}

std::vector<double> sorted(const std::vector<Person>& all, const Take& take) {
    std::vector<double> out;
    for (const Person& p : all)
        out.push_back(take(p));
    std::ranges::sort(out);
    return out;
}

struct Summary {
    double mean = 0.0, deviation = 0.0;
};

Summary summary(const std::vector<double>& values) {
    const auto n = static_cast<double>(values.size());
    Summary out;
    for (const double x : values)
        out.mean += x / n;
    double squares = 0.0;
    for (const double x : values)
        squares += (x - out.mean) * (x - out.mean);
    out.deviation = std::sqrt(squares / (n - 1.0));
    return out;
}

double correlation(const std::vector<Person>& all, const Take& a, const Take& b) {
    const Summary of_a = summary(sorted(all, a));
    const Summary of_b = summary(sorted(all, b));
    double sum = 0.0;
    for (const Person& p : all)
        sum += (a(p) - of_a.mean) * (b(p) - of_b.mean);
    return sum / (static_cast<double>(all.size()) * of_a.deviation * of_b.deviation);
}

/// A row of the survey's table, mm.
struct Row {
    const char* name;
    Take take;
    double mean, deviation;
    std::vector<std::pair<double, double>> percentiles;  ///< share, value
};

void check_row(const std::vector<Person>& all, const Row& row) {
    INFO(row.name);
    const std::vector<double> values = sorted(all, row.take);
    const Summary found = summary(values);
    const double n = kPeople;
    check_close(found.mean, row.mean,
                absolute(0.005 + 4.0 * row.deviation / std::sqrt(n), "printed to 0.01; sampling"));
    check_close(found.deviation, row.deviation,
                absolute(0.005 + 4.0 * row.deviation / std::sqrt(2.0 * n), "the same"));
    for (const auto& [share, value] : row.percentiles) {
        INFO("percentile ", share);
        check_close(values[static_cast<std::size_t>(share * n)], value,
                    absolute(1.5, "printed to 1 mm; the survey's tails are not quite normal"));
    }
}

}  // namespace

TEST_SUITE("outside/ansur_crowd") {
    TEST_CASE("golden: means, deviations and percentiles of the survey's men") {
        const auto men = people(0.0, 1);
        check_row(
            men,
            {"sitting eye height", eye_mm, 804.51, 33.16, {{0.05, 750}, {0.5, 804}, {0.95, 860}}});
        check_row(
            men,
            {"sitting height", height_mm, 918.29, 35.70, {{0.05, 860}, {0.5, 918}, {0.95, 977}}});
        check_row(men, {"eye to crown", crown_mm, 113.78, 8.99, {{0.05, 100}, {0.95, 129}}});
        check_row(
            men,
            {"head breadth", breadth_mm, 154.33, 5.53, {{0.05, 146}, {0.5, 154}, {0.95, 163}}});
    }

    TEST_CASE("golden: means, deviations and percentiles of the survey's women") {
        const auto women = people(1.0, 2);
        check_row(
            women,
            {"sitting eye height", eye_mm, 747.69, 30.38, {{0.05, 698}, {0.5, 748}, {0.95, 799}}});
        check_row(
            women,
            {"sitting height", height_mm, 856.63, 33.05, {{0.05, 803}, {0.5, 857}, {0.95, 912}}});
        check_row(women, {"eye to crown", crown_mm, 108.94, 8.16, {{0.05, 96}, {0.95, 123}}});
        check_row(
            women,
            {"head breadth", breadth_mm, 147.77, 5.19, {{0.05, 140}, {0.5, 147}, {0.95, 156}}});
    }

    TEST_CASE(
        "golden: eye and crown hang together as the three deviations say, breadth with none") {
        // (35.70^2 - 33.16^2 - 8.99^2) / (2 x 33.16 x 8.99) and the same for women.
        const auto tolerance =
            absolute(0.003 + 4.0 / std::sqrt(kPeople), "deviations printed to 0.01; sampling");
        check_close(correlation(people(0.0, 3), eye_mm, crown_mm), 0.158, tolerance);
        check_close(correlation(people(1.0, 4), eye_mm, crown_mm), 0.207, tolerance);
        check_close(correlation(people(0.0, 5), eye_mm, breadth_mm), 0.0, tolerance);
        check_close(correlation(people(0.0, 5), crown_mm, breadth_mm), 0.0, tolerance);
    }

    TEST_CASE("golden: half men and half women have the mix's mean and deviation") {
        const auto mix = people(0.5, 6);
        const Summary height = summary(sorted(mix, height_mm));
        const Summary eye = summary(sorted(mix, eye_mm));
        const auto tolerance =
            absolute(0.05 + 4.0 * 46.0 / std::sqrt(kPeople), "printed to 0.1; sampling");
        check_close(height.mean, 887.5, tolerance);
        check_close(height.deviation, 46.2, tolerance);
        check_close(eye.mean, 776.1, tolerance);
        check_close(eye.deviation, 42.6, tolerance);
        const auto women = std::ranges::count_if(mix, &Person::woman);
        check_close(static_cast<double>(women) / kPeople, 0.5,
                    absolute(2.0 / std::sqrt(kPeople), "four deviations of a count"));
    }

    TEST_CASE("golden: over a level floor the crown in front is in the way as often as printed") {
        const auto front = people(0.5, 7);
        const auto rear = people(0.5, 8);
        struct Printed {
            double c_mm, chance;
        };
        for (const Printed& printed : {Printed{60, 0.788}, Printed{90, 0.629}, Printed{120, 0.446},
                                       Printed{150, 0.274}, Printed{180, 0.142}}) {
            INFO(printed.c_mm, " mm");
            int by_heights = 0;
            int by_c_value = 0;
            for (std::size_t i = 0; i < kPeople; ++i) {
                const double c_mm = printed.c_mm;
                if (height_mm(front[i]) - eye_mm(rear[i]) > c_mm) ++by_heights;
                // The sight line to a far point clears the eye in front by C, level: the crown is
                // over that line by what the head has more than C.
                const glm::dvec3 rear_eye{0.0, rear[i].sitting_eye_m, 1.0};
                const glm::dvec3 front_eye{0.0, front[i].sitting_eye_m, 0.0};
                const glm::dvec3 far_focus{0.0, 0.0, -1e7};
                const auto c_m = sight::clearance(rear_eye, front_eye, far_focus);
                REQUIRE(c_m);
                if (crown_mm(front[i]) - 1e3 * *c_m > c_mm) ++by_c_value;
            }
            const auto tolerance =
                absolute(0.0005 + 4.0 * 0.5 / std::sqrt(kPeople) + 0.002,
                         "printed to 0.001; sampling; the survey's tails are not quite normal");
            check_close(static_cast<double>(by_heights) / kPeople, printed.chance, tolerance);
            check_close(static_cast<double>(by_c_value) / kPeople, printed.chance, tolerance);
        }
    }
}
