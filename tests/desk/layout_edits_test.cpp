// SPDX-License-Identifier: MIT
#include "desk/layout_edits.hpp"

#include "desk/document.hpp"
#include "desk/editor_fields.hpp"
#include "room/layout_file.hpp"

#include <doctest/doctest.h>

#include <functional>

namespace rakeline::desk {
namespace {

/// Does something with the list at `key`, wherever in the document it stands.
class AtList final : public room::FieldVisitor {
public:
    AtList(std::string key, std::function<void(room::ListAccess&)> act)
        : key_(std::move(key)), act_(std::move(act)) {}

    void text(const room::Words&, std::string&) override {}
    void flag(const room::Words&, bool&) override {}
    void integer(const room::IntegerField&, int&) override {}
    void number(const room::NumberField&, double&) override {}
    void optional_number(const room::NumberField&, std::optional<double>&) override {}
    void choice(const room::ChoiceField&, int&) override {}
    void group(const room::Words&, const std::function<void(FieldVisitor&)>& members) override {
        members(*this);
    }
    void list(const room::ListField& field, room::ListAccess& items) override {
        if (field.words.key == key_) act_(items);
    }

private:
    std::string key_;
    std::function<void(room::ListAccess&)> act_;
};

void duplicate_first(room::Layout& layout, const std::string& list) {
    AtList visitor(list, [](room::ListAccess& items) { duplicate_element(items, 0); });
    room::describe(visitor, layout);
}

}  // namespace

TEST_SUITE_BEGIN("desk/layout_edits");

TEST_CASE("a duplicated projector is the same but for its name, formats and all") {
    room::Layout layout = new_room().layout;
    layout.projectors[0].across_m = 1.25;
    layout.projectors[0].aim.yaw_rad = 0.1;
    layout.projectors[0].formats[1].focal_length_m = 0.07;
    layout.projectors[0].port.coated_reflectance = 0.004;
    duplicate_first(layout, "projectors");
    REQUIRE(layout.projectors.size() == 2);
    CHECK(layout.projectors[1].name == "Digital 2");
    room::Projector named = layout.projectors[1];
    named.name = layout.projectors[0].name;
    CHECK(named == layout.projectors[0]);
}

TEST_CASE("a duplicated seat block keeps its aisles and places") {
    room::Layout layout = new_room().layout;
    layout.seating[0].aisles = {{4, 1.1}, {9, 1.3}};
    layout.seating[0].wheelchair_places = {{"B", 3}};
    duplicate_first(layout, "seating");
    REQUIRE(layout.seating.size() == 2);
    CHECK(layout.seating[1].aisles == layout.seating[0].aisles);
    CHECK(layout.seating[1].wheelchair_places == layout.seating[0].wheelchair_places);
}

TEST_CASE("a name that is taken gets the next free number") {
    CHECK(free_name("Left", {"Left"}) == "Left 2");
    CHECK(free_name("Left", {"Left", "Left 2", "Left 3"}) == "Left 4");
}

TEST_CASE("a format's new name is taken up by the projectors that show it") {
    const room::Layout before = new_room().layout;
    room::Layout after = before;
    after.formats[0].name = "Flat";
    follow_renames(before, after);
    CHECK(after.projectors[0].formats[0].format == "Flat");
    CHECK(after.projectors[0].formats[1].format == "2.39");
    CHECK(room::check_layout(after).empty());
}

TEST_CASE("a lens's new name is taken up by those that use it, and by no one else") {
    room::Layout before = new_room().layout;
    before.lenses.resize(1);
    before.lenses[0].name = "Zoom A";
    before.projectors[0].formats[0].lens = "Zoom A";
    room::Layout after = before;
    after.lenses[0].name = "Zoom B";
    follow_renames(before, after);
    CHECK(after.projectors[0].formats[0].lens == "Zoom B");
    CHECK(after.projectors[0].formats[1].lens.empty());
}

TEST_CASE("removing a format renames nothing") {
    const room::Layout before = new_room().layout;
    room::Layout after = before;
    after.formats.erase(after.formats.begin());
    follow_renames(before, after);
    CHECK(after.projectors == before.projectors);
}

TEST_CASE("every field of the document stands in at least one subject's editor") {
    class Paths final : public room::FieldVisitor {
    public:
        std::vector<std::string> found;
        void text(const room::Words& w, std::string&) override { add(w.key); }
        void flag(const room::Words& w, bool&) override { add(w.key); }
        void integer(const room::IntegerField& f, int&) override { add(f.words.key); }
        void number(const room::NumberField& f, double&) override { add(f.words.key); }
        void optional_number(const room::NumberField& f, std::optional<double>&) override {
            add(f.words.key);
        }
        void choice(const room::ChoiceField& f, int&) override { add(f.words.key); }
        void group(const room::Words& w,
                   const std::function<void(FieldVisitor&)>& members) override {
            inside(w.key, [&] { members(*this); });
        }
        void list(const room::ListField& f, room::ListAccess& items) override {
            if (items.size() == 0) items.resize(1);
            inside(std::string(f.words.key) + ".*", [&] { items.visit(0, *this); });
        }

    private:
        void add(const std::string& key) { found.push_back(path_ + key); }
        void inside(const std::string& key, const std::function<void()>& walk) {
            const std::size_t size = path_.size();
            path_ += key + ".";
            walk();
            path_.resize(size);
        }
        std::string path_;
    };
    Paths paths;
    room::Layout layout = new_room().layout;
    room::describe(paths, layout);
    CHECK(paths.found.size() > 80);
    for (const std::string& path : paths.found) {
        INFO(path);
        bool shown = false;
        for (const study::Subject subject : study::kSubjects)
            shown = shown || belongs(subject, path);
        CHECK(shown);
    }
}

TEST_CASE("a field that waits on a choice is shown for that choice alone") {
    CHECK(applies("seating.*.riser_m", {{"seating.*.floor", 2}}));
    CHECK_FALSE(applies("seating.*.riser_m", {{"seating.*.floor", 0}}));
    CHECK(applies("seating.*.wanted_c_m", {{"seating.*.floor", 3}}));
    CHECK(applies("seating.*.flights.*.riser_m", {{"seating.*.floor", 4}}));
    CHECK_FALSE(applies("seating.*.flights.*.riser_m", {{"seating.*.floor", 2}}));
    for (const int pattern : {1, 2, 3})
        CHECK(applies("screen.perforation.angle_deg", {{"screen.perforation.pattern", pattern}}));
    CHECK_FALSE(applies("screen.perforation.angle_deg", {{"screen.perforation.pattern", 0}}));
    CHECK(applies("loudspeakers.*.coverage_table.*.up_deg", {{"loudspeakers.*.directivity", 1}}));
    CHECK_FALSE(applies("loudspeakers.*.coverage_table", {{"loudspeakers.*.directivity", 0}}));
    // The mouth of a horn bounds where it holds its coverage, so its radius is one too.
    CHECK(applies("loudspeakers.*.piston_radius_m", {{"loudspeakers.*.directivity", 1}}));
    CHECK(applies("hall.width_m", {{"hall.floor", 0}}));
}

TEST_SUITE_END();

}  // namespace rakeline::desk
