// SPDX-License-Identifier: MIT
#include "desk/lens_choice.hpp"

#include "headless.hpp"
#include "support/check.hpp"

namespace rakeline::desk {
namespace {

room::Layout converted_hall() {
    return open_document(demo("converted-hall-96"))->current()->layout;
}

room::Lens new_prime() {
    room::Lens lens;
    lens.name = "Prime 76 mm";
    lens.focal_length_m = lens.focal_length_long_m = 0.076;
    return lens;
}

}  // namespace

TEST_SUITE_BEGIN("desk/lens_choice");

TEST_CASE("a lens of a series is added to the layout's and named by the use alone") {
    const room::Layout before = converted_hall();
    const auto after = with_lens(before, 0, 2, new_prime(), 0.076);
    REQUIRE(after.has_value());
    CHECK(after->lenses.size() == before.lenses.size() + 1);
    CHECK(after->lenses.back() == new_prime());
    CHECK(fitted_lens(*after, 0, 2) == "Prime 76 mm");
    CHECK_FALSE(after->projectors[0].formats[2].focal_length_m.has_value());
    room::Layout rest = *after;
    rest.lenses.pop_back();
    rest.projectors[0].formats[2].lens = before.projectors[0].formats[2].lens;
    CHECK(rest == before);
}

TEST_CASE("a lens that the layout has is fitted without another copy") {
    const room::Layout before = converted_hall();
    const auto after = with_lens(before, 0, 0, before.lenses.front(), 0.0);
    REQUIRE(after.has_value());
    CHECK(after->lenses == before.lenses);
    CHECK(fitted_lens(*after, 0, 0) == before.lenses.front().name);
}

TEST_CASE("another lens under a name that is taken gets a free one") {
    room::Layout before = converted_hall();
    room::Lens other = new_prime();
    other.name = before.lenses.front().name;
    const auto after = with_lens(before, 0, 0, other, 0.076);
    REQUIRE(after.has_value());
    CHECK(after->lenses.back().name == before.lenses.front().name + " 2");
    CHECK(fitted_lens(*after, 0, 0) == after->lenses.back().name);
}

TEST_CASE("a zoom is set to the focal length picked, and a prime after it has no setting") {
    const room::Layout before = converted_hall();
    room::Lens zoom = new_prime();
    zoom.kind = room::LensKind::zoom;
    zoom.focal_length_long_m = 0.09;
    const auto zoomed = with_lens(before, 0, 0, zoom, 0.081);
    REQUIRE(zoomed.has_value());
    CHECK(zoomed->projectors[0].formats[0].focal_length_m == 0.081);
    const auto fixed = with_lens(*zoomed, 0, 0, before.lenses.front(), 0.05);
    REQUIRE(fixed.has_value());
    CHECK_FALSE(fixed->projectors[0].formats[0].focal_length_m.has_value());
}

TEST_CASE("a projector with no use for the format takes no lens") {
    const room::Layout grand = open_document(demo("grand-620"))->current()->layout;
    CHECK_FALSE(with_lens(grand, 1, 0, new_prime(), 0.076).has_value());
    CHECK(fitted_lens(grand, 1, 0).empty());
}

TEST_CASE("fitting the first of the ranked lenses is one step of undo and covers the opening") {
    Headless headless;
    Session session(quiet_options(demo("converted-hall-96")));
    session.wait_for_study();
    session.workspace().lenses_open = true;
    session.workspace().format = 2;
    headless.frame(session);
    const LensPickCache kept = session.workspace().lens_pick;
    REQUIRE(kept.pick.has_value());
    REQUIRE(kept.pick->best() != nullptr);
    const picture::LensChoice best = *kept.pick->best();
    const auto& listed = kept.catalogue[static_cast<std::size_t>(best.lens)];
    const auto layout =
        with_lens(session.document().current()->layout, 0, 2, listed.lens, best.focal_length_m);
    REQUIRE(layout.has_value());
    session.edit({"Fit lens", *layout, {}});
    session.wait_for_study();
    const auto* picture = picture::find_picture(session.study()->picture, 0, 2);
    REQUIRE(picture != nullptr);
    REQUIRE(picture->covering.has_value());
    CHECK(picture->covering->covers());
    tests::check_close(picture->focal_length_used_m, best.focal_length_m,
                       tests::absolute(0.0, "the same number"));
}

TEST_CASE("the pick follows format, units and series, and is kept while none of them changes") {
    Headless headless;
    Session session(quiet_options(demo("converted-hall-96")));
    session.wait_for_study();
    Workspace& w = session.workspace();
    w.lenses_open = true;
    headless.frame(session);
    const auto first = w.lens_pick;
    REQUIRE(first.pick.has_value());
    CHECK(first.faults.size() == first.pick->choices.size());
    headless.frame(session);
    CHECK(w.lens_pick.key == first.key);
    w.format = 1;
    headless.frame(session);
    CHECK(w.lens_pick.pick->format == 1);
    w.settings.units = base::UnitSystem::imperial;
    headless.frame(session);
    CHECK(w.lens_pick.needed.find(" in") != std::string::npos);
    room::Series series;
    series.name = "Made up";
    series.lenses = {new_prime()};
    w.series = {series};
    ++w.series_serial;
    headless.frame(session);
    CHECK(w.lens_pick.pick->choices.size() == first.pick->choices.size() + 1);
    CHECK(session.document().history().size() == 1);
}

TEST_SUITE_END();

}  // namespace rakeline::desk
