// SPDX-License-Identifier: MIT
#include "study/seat_view.hpp"

#include "support/check.hpp"
#include "support/demo_rooms.hpp"

#include <doctest/doctest.h>

using namespace rakeline;

TEST_SUITE("study/seat_view") {
    TEST_CASE("property: the shares by seat sum to the hidden part, the largest first") {
        for (const char* name : {"screening-24", "converted-hall-96"}) {
            const study::Study study = study::compute_study(tests::demo_brief(name));
            for (int seat = 0; seat < static_cast<int>(study.seats.seats.size()); seat += 3) {
                double sum = 0.0, last = 1.0;
                for (const auto& share : study::shares_by_seat(study::seat_view(study, 0, seat))) {
                    CHECK(share.fraction <= last);
                    CHECK(share.seat != seat);
                    last = share.fraction;
                    sum += share.fraction;
                }
                INFO(name, " seat ", seat);
                tests::check_close(
                    sum,
                    study.sight.formats[0].hidden[static_cast<std::size_t>(seat)].hidden_fraction,
                    tests::absolute(0.0015, "128 columns against 512"));
            }
        }
    }
}
