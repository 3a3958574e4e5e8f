// SPDX-License-Identifier: MIT
#include "sound/measured_loss.hpp"

#include "base/units.hpp"
#include "sound/perforation.hpp"
#include "sound/random_sheet.hpp"
#include "support/check.hpp"

#include <cmath>

using namespace rakeline;
using namespace rakeline::tests;
using sound::MeasuredLoss;

namespace {

const sound::Air kAir;

const std::vector<room::LossPoint> kTable = {
    {250.0, 0.2}, {1000.0, 0.4}, {4000.0, 1.9}, {8000.0, 5.0}, {12500.0, 7.5}};

/// A sheet whose holes are of no account.
sound::Sheet measured_sheet() {
    sound::Sheet sheet;
    sheet.perforation.pattern = room::PerforationPattern::square;
    sheet.loss_table = kTable;
    return sheet;
}

}  // namespace

TEST_SUITE("sound/measured_loss") {
    TEST_CASE("the curve goes through every point, and holds the end losses beyond the ends") {
        const MeasuredLoss loss(kTable);
        for (const room::LossPoint& point : kTable)
            check_close(loss.normal_db(point.frequency_hz), point.loss_db,
                        absolute(1e-12, "rounding of a cubic"));
        CHECK(loss.normal_db(20.0) == 0.2);
        CHECK(loss.normal_db(20000.0) == 7.5);
    }

    TEST_CASE("property: the curve never leaves the range of its two neighbours") {
        std::mt19937 random(20260311);
        for (int i = 0; i < 300; ++i) {
            INFO("draw ", i, " of seed 20260311");
            std::vector<room::LossPoint> table;
            double at = between(random, 20.0, 200.0);
            for (int k = 0; k < 8; ++k) {
                table.push_back({at, between(random, 0.0, 12.0)});
                at *= between(random, 1.05, 2.5);
            }
            const MeasuredLoss loss(table);
            for (std::size_t k = 0; k + 1 < table.size(); ++k) {
                const double least = std::min(table[k].loss_db, table[k + 1].loss_db);
                const double most = std::max(table[k].loss_db, table[k + 1].loss_db);
                const double f = std::lerp(table[k].frequency_hz, table[k + 1].frequency_hz,
                                           between(random, 0.0, 1.0));
                CHECK(loss.normal_db(f) >= least - 1e-12);
                CHECK(loss.normal_db(f) <= most + 1e-12);
            }
        }
    }

    TEST_CASE("two points are a curve that rises from the one to the other") {
        const MeasuredLoss loss({{1000.0, 1.0}, {4000.0, 3.0}});
        check_close(loss.normal_db(2000.0), 2.0, absolute(1e-12, "half way in octaves"));
        CHECK(loss.normal_db(1200.0) > 1.0);
    }

    TEST_CASE("a measured loss stands in place of holes and mass, straight on") {
        const sound::Sheet sheet = measured_sheet();
        sound::Sheet other = sheet;
        other.perforation.hole_diameter_m = 0.0004;
        other.mass_kg_m2 = 5.0;
        const MeasuredLoss loss(kTable);
        for (const double f : {100.0, 700.0, 5000.0, 16000.0}) {
            check_close(sound::screen_loss_db(sheet, f, 0.0, kAir), loss.normal_db(f),
                        absolute(1e-9, "there and back through a power of ten"));
            CHECK(sound::screen_loss_db(other, f, 0.5, kAir) ==
                  sound::screen_loss_db(sheet, f, 0.5, kAir));
        }
    }

    TEST_CASE("at an angle it loses as a mass does") {
        // 6 dB straight on: |x|^2 = 10^0.6 - 1 = 2.98; at 60 degrees 1 + 2.98/4 = 1.745.
        check_close(sound::transmission_loss_db(sound::mass_that_loses(6.0), 0.5), 2.42,
                    printed_digits(2));
        sound::Sheet limp;
        limp.mass_kg_m2 = 1.3;
        limp.perforation.pattern = room::PerforationPattern::none;
        for (const double angle : {0.2, 0.7, 1.3}) {
            const double straight = sound::screen_loss_db(limp, 900.0, 0.0, kAir);
            check_close(
                sound::transmission_loss_db(sound::mass_that_loses(straight), std::cos(angle)),
                sound::screen_loss_db(limp, 900.0, angle, kAir),
                absolute(1e-9, "a limp sheet is a mass; rounding"));
        }
    }

    TEST_CASE("no loss is no sheet") {
        CHECK(sound::mass_that_loses(0.0) == 0.0);
    }
}
