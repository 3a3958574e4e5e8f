// SPDX-License-Identifier: MIT
#include "picture/lens_pick.hpp"

#include "picture/lens_words.hpp"
#include "picture/random_room.hpp"
#include "picture/throw.hpp"
#include "support/check.hpp"

#include <algorithm>
#include <tuple>

using namespace rakeline;
using namespace rakeline::tests;
using picture::LensChoice;
using picture::LensPick;
using picture::PictureInput;

namespace {

using Catalogue = std::vector<room::Lens>;
constexpr int kCatalogues = 10000;

/// Wide circle, much shift: only the focal length tells it from others.
room::Lens prime(double focal_length_m) {
    return {.name = "prime",
            .kind = room::LensKind::prime,
            .focal_length_m = focal_length_m,
            .focal_length_long_m = focal_length_m,
            .f_number = 2.0,
            .image_circle_m = 1.0,
            .shift_up_max = 1.0,
            .shift_across_max = 1.0};
}

room::Lens zoom(double short_m, double long_m) {
    room::Lens l = prime(short_m);
    l.name = "zoom";
    l.kind = room::LensKind::zoom;
    l.focal_length_long_m = long_m;
    return l;
}

/// Lenses about the focal length that the room wants, good and bad in every way.
Catalogue random_catalogue(Dice& dice, double wanted_m, int count) {
    Catalogue out;
    for (int i = 0; i < count; ++i) {
        const double f = wanted_m * dice.between(0.6, 1.3);
        room::Lens l = dice.one_in(2) ? prime(f) : zoom(f, f * dice.between(1.0, 1.6));
        if (dice.one_in(3)) l.image_circle_m = dice.between(0.01, 0.08);
        if (dice.one_in(3)) l.shift_up_max = dice.between(0.0, 0.1);
        if (dice.one_in(4)) l.shift_across_max = dice.between(0.0, 0.1);
        out.push_back(l);
    }
    return out;
}

PictureInput room_with_port(Dice& dice) {
    PictureInput in = random_room(dice);
    room::Port& port = in.projectors[0].port;
    port.across_m = in.projectors[0].across_m;
    port.up_m = in.projectors[0].up_m;
    port.width_m = dice.between(0.2, 2.0);
    port.height_m = dice.between(0.2, 2.0);
    return in;
}

LensPick pick(const PictureInput& in, const Catalogue& catalogue) {
    auto p = picture::pick_lens(in, 0, 0, catalogue);
    REQUIRE(p);
    REQUIRE(p->wish);
    REQUIRE(p->choices.size() == catalogue.size());
    return *p;
}

LensPick pick_of(const PictureInput& in, const room::Lens& lens) {
    return pick(in, Catalogue{lens});
}

/// How good a lens is, without its place in the catalogue: less is better.
auto merit(const LensChoice& c) {
    return std::tuple(!c.covers(), !c.fits(), c.covers() ? 0.0 : c.picture->uncovered,
                      c.picture->crop);
}

/// The lenses' places in the catalogue, best first, but for one.
std::vector<int> without(const LensPick& p, int lens) {
    std::vector<int> out;
    for (const LensChoice& c : p.choices) {
        if (c.lens != lens) out.push_back(c.lens);
    }
    return out;
}
std::vector<int> order(const LensPick& p) {
    return without(p, -1);
}

/// Checks that no covering lens stands under one that leaves some of the opening dark, and that
/// the two are what the areas say. Tells whether the pick has both kinds.
bool covering_first(const LensPick& p) {
    bool dark = false;
    bool lit = false;
    for (const LensChoice& c : p.choices) {
        CHECK_FALSE((dark && c.covers()));
        (c.covers() ? lit : dark) = true;
        if (c.picture) CHECK(c.covers() == (c.picture->uncovered < 1e-9));
    }
    return dark && lit;
}

/// About the focal length wanted, without a study.
double field_rule(const PictureInput& in) {
    const room::Projector& p = in.projectors[0];
    const picture::Opening opening = picture::masked_opening(in.screen, in.formats[0]);
    return picture::focal_length_field(p.formats[0].gate_width_m * p.formats[0].squeeze,
                                       p.back_m - in.screen.setback_m, opening.width_m);
}

double wanted_in(const PictureInput& in) {
    return only_picture(in).focal_length_m;
}

}  // namespace

TEST_SUITE("picture/lens_pick") {
    TEST_CASE("property: what covers never stands under what does not; one more makes none worse") {
        // 10,000 catalogues of one to three lenses, each tried with and without its last one.
        Dice dice(401);
        int mixed = 0;
        int better = 0;
        for (int i = 0; i < kCatalogues; ++i) {
            INFO("seed 401, case ", i);
            const PictureInput in = room_with_port(dice);
            const Catalogue all = random_catalogue(dice, field_rule(in), 1 + i % 3);
            const LensPick more = pick(in, all);
            mixed += covering_first(more) ? 1 : 0;
            const LensPick less = pick(in, Catalogue(all.begin(), all.end() - 1));
            CHECK(without(more, static_cast<int>(all.size()) - 1) == order(less));
            if (less.choices.empty()) continue;
            const bool improved = merit(more.choices.front()) < merit(less.choices.front());
            better += improved ? 1 : 0;
            CHECK((improved || merit(more.choices.front()) == merit(less.choices.front())));
            CHECK((more.best() != nullptr || less.best() == nullptr));
        }
        CHECK(mixed > kCatalogues / 5);
        CHECK(better > kCatalogues / 10);
    }

    TEST_CASE("property: a longer prime makes a smaller picture and covers no better") {
        Dice dice(403);
        for (int i = 0; i < 1000; ++i) {
            INFO("seed 403, case ", i);
            const PictureInput in = random_room(dice);
            const double f = wanted_in(in) * dice.between(0.7, 1.2);
            const LensPick shorter = pick_of(in, prime(f));
            const LensPick longer = pick_of(in, prime(f * dice.between(1.001, 1.3)));
            const LensChoice& a = shorter.choices[0];
            const LensChoice& b = longer.choices[0];
            CHECK(*b.picture_width_m < *a.picture_width_m);
            CHECK(b.picture->enlargement > a.picture->enlargement);
        }
    }

    TEST_CASE("property: a zoom is set where it just covers, or as near as it comes") {
        Dice dice(404);
        for (int i = 0; i < 1000; ++i) {
            INFO("seed 404, case ", i);
            const PictureInput in = random_room(dice);
            const double f = wanted_in(in) * dice.between(0.6, 1.2);
            const LensPick p = pick_of(in, zoom(f, 1.3 * f));
            REQUIRE(p.wish->covering_focal_length_m);
            const double cover = *p.wish->covering_focal_length_m;
            const LensChoice& c = p.choices[0];
            check_close(c.focal_length_m, std::min(std::max(cover, f), 1.3 * f),
                        relative(1e-15, "the same numbers"));
            CHECK(c.covers() == (f <= cover));
        }
    }

    TEST_CASE("property: a room built larger, lenses and all, ranks them alike") {
        Dice dice(405);
        for (int i = 0; i < 500; ++i) {
            INFO("seed 405, case ", i);
            const PictureInput in = room_with_port(dice);
            Catalogue lenses = random_catalogue(dice, wanted_in(in), 6);
            const LensPick a = pick(in, lenses);
            PictureInput twice = in;  // by two: exact in binary, so that ties stay ties
            for (double* x :
                 {&twice.screen.width_m, &twice.screen.height_m, &twice.screen.sill_m,
                  &twice.screen.setback_m, &twice.screen.radius_m, &twice.booth_wall_back_m})
                *x *= 2.0;
            room::Projector& m = twice.projectors[0];
            for (double* x :
                 {&m.across_m, &m.up_m, &m.back_m, &m.port.across_m, &m.port.up_m, &m.port.width_m,
                  &m.port.height_m, &m.formats[0].gate_width_m, &m.formats[0].gate_height_m})
                *x *= 2.0;
            for (room::Lens& l : lenses) {
                l.focal_length_m *= 2.0;
                l.focal_length_long_m *= 2.0;
                l.image_circle_m *= 2.0;
            }
            const LensPick b = pick(twice, lenses);
            check_close(*b.wish->covering_focal_length_m, 2.0 * *a.wish->covering_focal_length_m,
                        relative(1e-12, "rounding"));
            for (std::size_t k = 0; k < a.choices.size(); ++k) {
                const LensChoice& x = a.choices[k];
                const LensChoice& y = b.choices[k];
                CHECK(y.lens == x.lens);
                CHECK(y.covers() == x.covers());
                CHECK(y.fits() == x.fits());
                check_close(*y.reach.throw_ratio_short, *x.reach.throw_ratio_short,
                            relative(1e-12, "rounding"));
                check_close(*y.picture_width_m, 2.0 * *x.picture_width_m,
                            relative(1e-12, "rounding"));
                check_close(*y.picture->port_margin_m, 2.0 * *x.picture->port_margin_m,
                            absolute(1e-9, "rounding"));
            }
        }
    }

    TEST_CASE("property: a mirrored room ranks lenses alike") {
        Dice dice(406);
        for (int i = 0; i < 500; ++i) {
            INFO("seed 406, case ", i);
            PictureInput in = room_with_port(dice);
            const Catalogue lenses = random_catalogue(dice, wanted_in(in), 6);
            const LensPick a = pick(in, lenses);
            room::Projector& m = in.projectors[0];
            m.across_m = -m.across_m;
            m.port.across_m = -m.port.across_m;
            m.aim.roll_rad = -m.aim.roll_rad;
            m.formats[0].shift_across = -m.formats[0].shift_across;
            const LensPick b = pick(in, lenses);
            check_close(*b.wish->covering_focal_length_m, *a.wish->covering_focal_length_m,
                        relative(1e-9, "rounding"));
            CHECK(b.choices.front().covers() == a.choices.front().covers());
            CHECK(b.choices.front().fits() == a.choices.front().fits());
            check_close(b.choices.front().picture->crop, a.choices.front().picture->crop,
                        absolute(1e-9, "rounding"));
        }
    }

    TEST_CASE("equal lenses keep the catalogue's order") {
        Dice dice(407);
        const PictureInput in = random_room(dice);
        const double f = 0.8 * wanted_in(in);
        const LensPick p = pick(in, {prime(f), prime(f), prime(f)});
        CHECK(p.choices[0].lens == 0);
        CHECK(p.choices[1].lens == 1);
        CHECK(p.choices[2].lens == 2);
    }

    TEST_CASE("shift and image circle that are short keep a covering lens from the first place") {
        Dice dice(408);
        PictureInput in = random_room(dice);
        in.projectors[0].port.width_m = in.projectors[0].port.height_m = 5.0;
        in.projectors[0].port.across_m = in.projectors[0].across_m;
        in.projectors[0].port.up_m = in.projectors[0].up_m;
        in.projectors[0].formats[0].shift_up = 0.30;
        const double f = wanted_in(in);
        room::Lens rigid = zoom(0.2 * f, f);
        rigid.shift_up_max = 0.25;
        room::Lens narrow = zoom(0.2 * f, f);
        narrow.image_circle_m = 0.001;
        const room::Lens wasteful = prime(0.3 * f);
        const LensPick p = pick(in, {rigid, narrow, wasteful});
        CHECK(p.choices[0].lens == 2);
        INFO(picture::lens_reason(p, Catalogue{rigid, narrow, wasteful}, base::UnitSystem::metric));
        REQUIRE(p.best());
        const auto choice = [&](int lens) {
            return *std::find_if(p.choices.begin(), p.choices.end(),
                                 [&](const LensChoice& c) { return c.lens == lens; });
        };
        CHECK_FALSE(choice(0).fits());
        check_close(choice(0).reach.shift_up_short, 0.05, absolute(1e-12, "rounding"));
        check_close(choice(0).reach.field_lost, 0.05, absolute(1e-12, "rounding"));
        CHECK_FALSE(choice(1).fits());
        CHECK(choice(1).reach.image_circle_spare_m < 0.0);
        CHECK(choice(0).covers());
    }

    TEST_CASE("without a good lens the words name what is wrong and what is needed") {
        Dice dice(409);
        const PictureInput in = random_room(dice);
        const Catalogue lenses{prime(2.0 * wanted_in(in))};
        const LensPick p = pick(in, lenses);
        CHECK(p.best() == nullptr);
        const auto reason = picture::lens_reason(p, lenses, base::UnitSystem::metric);
        CHECK(reason.find("No lens of 1 both covers and fits") == 0);
        CHECK(reason.find("falls short") != std::string::npos);
        const std::string wanted = base::quantity_text(
            *p.wish->covering_focal_length_m, base::Unit::millimetre, base::UnitSystem::metric, 1);
        CHECK(picture::lens_needed(p, base::UnitSystem::metric).find(wanted) != std::string::npos);
    }

    TEST_CASE("refuses: a lens longer than the throw, and a projector that sees no screen") {
        Dice dice(410);
        PictureInput in = random_room(dice);
        const LensPick p = pick_of(in, prime(500.0));
        CHECK_FALSE(p.choices[0].picture);
        CHECK(p.choices[0].no_picture.find("throw") != std::string::npos);
        CHECK_FALSE(p.choices[0].picture_width_m);
        in.projectors[0].aim.mode = room::AimMode::angles;
        in.projectors[0].aim.yaw_rad = base::radians(180.0);
        const auto blind = picture::pick_lens(in, 0, 0, Catalogue{prime(0.05)});
        REQUIRE(blind);
        CHECK_FALSE(blind->wish);
        CHECK(blind->choices.empty());
        CHECK_FALSE(blind->why_none.empty());
        CHECK(picture::lens_reason(*blind, {}, base::UnitSystem::metric).find(blind->why_none) !=
              std::string::npos);
        in.projectors[0].formats[0].format = "another";
        CHECK_FALSE(picture::pick_lens(in, 0, 0, Catalogue{prime(0.05)}));
    }
}
