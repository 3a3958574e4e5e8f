// SPDX-License-Identifier: MIT
// Source: Industrial Perforators Association, acoustics handbook (T. Schultz): losses measured at
// 10 kHz through perforated metal, 0.9 dB and 4.4 dB.
#include "base/units.hpp"
#include "room/perforation.hpp"
#include "sound/perforation.hpp"
#include "support/check.hpp"

#include <cmath>

using namespace rakeline;
using sound::HoleInteraction;
using sound::Sheet;

namespace {

/// A steel plate with holes in a square pattern of the printed open area.
Sheet plate(double diameter_in, double thickness_in, double open_fraction) {
    Sheet sheet;
    sheet.perforation.pattern = room::PerforationPattern::square;
    sheet.perforation.hole_diameter_m = diameter_in * base::kMetresPerInch;
    sheet.perforation.pitch_m =
        sheet.perforation.hole_diameter_m * std::sqrt(base::kPi / (4.0 * open_fraction));
    sheet.thickness_m = thickness_in * base::kMetresPerInch;
    sheet.mass_kg_m2 = 7850.0 * sheet.thickness_m * (1.0 - open_fraction);
    return sheet;
}

double loss_at_10_khz(Sheet sheet, HoleInteraction interaction) {
    sheet.form.interaction = interaction;
    return sound::screen_loss_db(sheet, 10000.0, 0.0, sound::Air{});
}

}  // namespace

TEST_SUITE("outside/ipa_perforated_metal") {
    TEST_CASE("golden: measured losses lie between the models with and without hole interaction") {
        struct MetalRow {
            Sheet sheet;
            double measured_db;
        };
        for (const MetalRow& row : {MetalRow{plate(0.023, 0.0184, 0.1645), 0.9},
                                    MetalRow{plate(0.188, 0.0598, 0.325), 4.4}}) {
            INFO("measured ", row.measured_db, " dB");
            CHECK(loss_at_10_khz(row.sheet, HoleInteraction::fok) < row.measured_db);
            CHECK(loss_at_10_khz(row.sheet, HoleInteraction::none) > row.measured_db);
        }
    }

    TEST_CASE("golden: the plates have the printed open area") {
        tests::check_close(room::open_area(plate(0.023, 0.0184, 0.1645).perforation), 0.1645,
                           tests::printed_digits(4));
    }
}
