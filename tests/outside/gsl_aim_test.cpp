// SPDX-License-Identifier: MIT
// Source: GSL's simplex minimiser (Nelder and Mead, gsl_multimin_fminimizer_nmsimplex2), started at
// the aim found and at the aim before: it must not find a better one by more than both can tell.
#include "base/units.hpp"
#include "sound/aim_search.hpp"
#include "support/check.hpp"

#include <algorithm>
#include <gsl/gsl_multimin.h>
#include <memory>

using namespace rakeline;
using namespace rakeline::tests;

namespace {

struct Question {
    const sound::SoundInput& in;
    double up_m = 0.0;
};

double spread(const gsl_vector* at, void* question) {
    const auto& q = *static_cast<const Question*>(question);
    return sound::aim_spread_db(q.in, 0, {gsl_vector_get(at, 0), gsl_vector_get(at, 1), q.up_m});
}

double least_spread(Question& question, const sound::Aim& from) {
    gsl_multimin_function function{&spread, 2, &question};
    const std::unique_ptr<gsl_vector, void (*)(gsl_vector*)> start(gsl_vector_alloc(2),
                                                                   gsl_vector_free);
    const std::unique_ptr<gsl_vector, void (*)(gsl_vector*)> step(gsl_vector_alloc(2),
                                                                  gsl_vector_free);
    gsl_vector_set(start.get(), 0, from.yaw_rad);
    gsl_vector_set(start.get(), 1, from.pitch_rad);
    gsl_vector_set_all(step.get(), base::radians(5.0));
    const std::unique_ptr<gsl_multimin_fminimizer, void (*)(gsl_multimin_fminimizer*)> minimiser(
        gsl_multimin_fminimizer_alloc(gsl_multimin_fminimizer_nmsimplex2, 2),
        gsl_multimin_fminimizer_free);
    gsl_multimin_fminimizer_set(minimiser.get(), &function, start.get(), step.get());
    for (int i = 0; i < 400; ++i) {
        if (gsl_multimin_fminimizer_iterate(minimiser.get()) != 0) break;
        if (gsl_multimin_fminimizer_size(minimiser.get()) < 1e-5) break;
    }
    return gsl_multimin_fminimizer_minimum(minimiser.get());
}

}  // namespace

TEST_SUITE("outside/gsl_aim") {
    TEST_CASE("golden: GSL's simplex finds no aim better than the one proposed") {
        for (const double across : {-4.0, 0.0, 4.0}) {
            sound::SoundInput in;
            in.surface = geometry::standing_patch({0, 3.5, 1.2}, 0.0, 0.0);
            in.sheet.perforation.pattern = room::PerforationPattern::square;
            room::Loudspeaker l;
            l.channel = room::Channel::left;
            l.across_m = across;
            l.up_m = 4.2;
            l.back_m = 0.5;
            in.loudspeakers = {l};
            for (int row = 0; row < 10; ++row)
                for (int seat = -6; seat <= 6; ++seat)
                    in.ears.emplace_back(0.7 * seat, 1.2 + 0.2 * row, 5.0 + 1.2 * row);
            const auto found = sound::best_aim(in, 0, false).value();
            Question question{in, l.up_m};
            const double gsl =
                std::min(least_spread(question, found.after), least_spread(question, found.before));
            INFO("across ", across, " m: ", found.spread_before_db, " to ", found.spread_after_db,
                 " dB, GSL ", gsl, " dB");
            CHECK(found.spread_after_db < found.spread_before_db);
            CHECK(found.spread_after_db <= gsl + 0.1);
        }
    }
}
