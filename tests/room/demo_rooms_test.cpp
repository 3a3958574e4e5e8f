// SPDX-License-Identifier: MIT
// The demo rooms, limits and series of layouts/: that they read, that they are what they claim to
// be, and that between them they use every choice the document offers.
#include "base/files.hpp"
#include "room/fields.hpp"
#include "room/layout_file.hpp"
#include "room/seat_plan.hpp"
#include "support/check.hpp"

#include <algorithm>
#include <map>
#include <set>

using namespace rakeline;
using namespace rakeline::room;
using tests::absolute;
using tests::check_close;

namespace {

const std::string kFolder = std::string(RAKELINE_SOURCE_DIR) + "/layouts/";

struct Demo {
    std::string file;
    std::size_t seats;
    std::size_t wheelchair_places;  ///< as many as the 2010 ADA Standards 221.2.1.1 ask for
};
const Demo kDemos[] = {
    {"converted-hall-96.json", 96, 4}, {"steep-240.json", 240, 5},
    {"steep-240-built.json", 240, 5},  {"grand-620.json", 620, 7},
    {"screening-24.json", 24, 1},
};
const std::string kSeries[] = {"lenses-35mm.json", "lenses-digital.json", "surfaces.json",
                               "loudspeakers.json"};

Layout opened(const Demo& demo) {
    const auto brief = open_brief(kFolder + demo.file, base::read_text_file);
    if (!brief) FAIL(base::text(brief.problems()));
    return brief->layout;
}

SeatPlan placed(const Layout& layout) {
    return place_seats({layout.hall, layout.screen, layout.seating, layout.audience});
}

/// Which values each choice, flag and optional number takes, by its path without list positions.
class UseVisitor final : public FieldVisitor {
public:
    std::map<std::string, std::set<std::string>> used;
    std::map<std::string, std::set<std::string>> offered;

    void text(const Words&, std::string&) override {}
    void integer(const IntegerField&, int&) override {}
    void number(const NumberField&, double&) override {}
    void flag(const Words& words, bool& value) override {
        note(words, {"no", "yes"}, value ? "yes" : "no");
    }
    void optional_number(const NumberField& field, std::optional<double>& value) override {
        note(field.words, {"unset", "set"}, value ? "set" : "unset");
    }
    void choice(const ChoiceField& field, int& index) override {
        note(field.words, {field.names.begin(), field.names.end()},
             field.names[static_cast<std::size_t>(index)]);
    }
    void group(const Words& words, const std::function<void(FieldVisitor&)>& members) override {
        within(words, [&] { members(*this); });
    }
    void list(const ListField& field, ListAccess& items) override {
        note(field.words, {"filled"}, items.size() > 0 ? "filled" : "empty");
        within(field.words, [&] {
            for (std::size_t i = 0; i < items.size(); ++i)
                items.visit(i, *this);
        });
    }

private:
    void note(const Words& words, std::set<std::string> names, const std::string& value) {
        offered[path_ + words.key].merge(names);
        used[path_ + words.key].insert(value);
    }
    template <class Walk>
    void within(const Words& words, Walk walk) {
        const std::string outer = path_;
        path_ += std::string(words.key) + ".";
        walk();
        path_ = outer;
    }
    std::string path_;
};

}  // namespace

TEST_SUITE("room/demo_rooms") {
    TEST_CASE("every demo room reads without problems, with its limits, and says it is invented") {
        for (const Demo& demo : kDemos) {
            INFO(demo.file);
            const Layout layout = opened(demo);
            CHECK(layout.note.find("Invented") != std::string::npos);
            CHECK_FALSE(layout.limits_file.empty());
        }
    }

    TEST_CASE("every demo room has the seats and wheelchair places that it names") {
        for (const Demo& demo : kDemos) {
            INFO(demo.file);
            const Layout layout = opened(demo);
            const SeatPlan plan = placed(layout);
            CHECK(plan.seats.size() == demo.seats);
            CHECK(layout.name.find(std::to_string(demo.seats)) != std::string::npos);
            const auto places = std::ranges::count_if(plan.seats, &Seat::wheelchair);
            CHECK(static_cast<std::size_t>(places) == demo.wheelchair_places);
        }
    }

    TEST_CASE("between them the demo rooms use every choice, flag and option") {
        UseVisitor visitor;
        for (const Demo& demo : kDemos) {
            Layout layout = opened(demo);
            describe(visitor, layout);
        }
        CHECK(visitor.offered.size() > 20);
        for (const auto& [field, values] : visitor.offered) {
            for (const std::string& value : values) {
                INFO(field, " ", value);
                CHECK(visitor.used.at(field).contains(value));
            }
        }
    }

    TEST_CASE("every seat stands inside its hall, clear of its walls and ceiling") {
        for (const Demo& demo : kDemos) {
            const Layout layout = opened(demo);
            for (const Seat& seat : placed(layout).seats) {
                INFO(demo.file, " seat ", seat.name);
                CHECK(std::abs(seat.floor.x) + 0.25 < half_width_at(layout.hall, seat.floor.z));
                CHECK(seat.floor.z + 0.25 < layout.hall.length_m);
                CHECK(seat.floor.y + 2.3 < layout.hall.height_m);
            }
        }
    }

    TEST_CASE("every lens stands close behind the booth wall and sees the screen by its port") {
        for (const Demo& demo : kDemos) {
            const Layout layout = opened(demo);
            const Screen& screen = layout.screen;
            const double up = screen.sill_m + 0.5 * screen.height_m;
            for (const Projector& p : layout.projectors) {
                INFO(demo.file, " ", p.name);
                const double behind = p.back_m - layout.hall.length_m;
                CHECK(behind >= 0.3);
                CHECK(behind <= 0.8);
                const double t = behind / (p.back_m - screen.setback_m);
                check_close(p.port.across_m, p.across_m * (1.0 - t),
                            absolute(0.001, "ports are placed to the millimetre"));
                check_close(p.port.up_m, p.up_m + t * (up - p.up_m),
                            absolute(0.001, "ports are placed to the millimetre"));
            }
        }
    }

    TEST_CASE("loudspeakers behind a screen stand between it and the wall, before its holes") {
        for (const Demo& demo : kDemos) {
            const Layout layout = opened(demo);
            int screen_channels = 0;
            for (const Loudspeaker& loudspeaker : layout.loudspeakers) {
                INFO(demo.file, " ", loudspeaker.name);
                screen_channels += loudspeaker.channel <= Channel::right ? 1 : 0;
                if (!loudspeaker.behind_screen) continue;
                CHECK(loudspeaker.back_m < layout.screen.setback_m);
                CHECK(std::abs(loudspeaker.across_m) < 0.5 * layout.screen.width_m);
                CHECK(layout.screen.perforation.pattern != PerforationPattern::none);
            }
            CHECK(screen_channels >= 3);
        }
    }

    TEST_CASE("every format is made by some machine, with a lens that the booth has") {
        for (const Demo& demo : kDemos) {
            const Layout layout = opened(demo);
            for (const Format& format : layout.formats) {
                INFO(demo.file, " ", format.name);
                const auto makes_it = [&](const Projector& p) {
                    return std::ranges::count(p.formats, format.name, &FormatUse::format) == 1;
                };
                CHECK(std::ranges::any_of(layout.projectors, makes_it));
            }
            for (const Projector& p : layout.projectors) {
                for (const FormatUse& use : p.formats) {
                    INFO(demo.file, " ", p.name, " ", use.format, " ", use.lens);
                    CHECK(std::ranges::count(layout.lenses, use.lens, &Lens::name) == 1);
                }
            }
        }
    }

    TEST_CASE("every limit has a source and says what would mend a miss") {
        for (const std::string& file :
             {std::string("practice/theatre.json"), std::string("practice/review-room.json")}) {
            INFO(file);
            const auto text = base::read_text_file(kFolder + file);
            REQUIRE(text);
            const auto set = read_limits(*text, file);
            if (!set) FAIL(base::text(set.problems()));
            CHECK(set->limits.size() > 10);
            for (const Limit& limit : set->limits) {
                INFO(limit.figure);
                CHECK(limit.source.size() > 10);
                CHECK(limit.mend.size() > 10);
                CHECK(limit.mend.back() == '.');
                // A value that no source gives must say that it is the user's own to set.
                CHECK((limit.authority != Authority::yours ||
                       limit.source.find("yours to set") != std::string::npos));
            }
        }
    }

    TEST_CASE("every series reads, says it is invented, and is not empty") {
        for (const std::string& file : kSeries) {
            INFO(file);
            const auto text = base::read_text_file(kFolder + "series/" + file);
            REQUIRE(text);
            CHECK(text->find("invented") != std::string::npos);
            const auto series = read_series(*text, file);
            if (!series) FAIL(base::text(series.problems()));
            CHECK(series->lenses.size() + series->surfaces.size() + series->loudspeakers.size() >
                  5);
        }
    }
}
