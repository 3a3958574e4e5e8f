// SPDX-License-Identifier: MIT
#include "study/change_book.hpp"
#include "support/check.hpp"
#include "support/demo_rooms.hpp"

#include <algorithm>
#include <random>

using namespace rakeline;
using namespace rakeline::study;
using base::UnitSystem;

namespace {

Study studied(const std::string& name) {
    return compute_study(tests::demo_brief(name));
}

std::vector<MoveKind> kinds(const std::vector<Move>& moves) {
    std::vector<MoveKind> out;
    for (const Move& move : moves)
        out.push_back(move.kind);
    return out;
}

bool has_kind(const std::vector<Move>& moves, MoveKind kind) {
    return std::ranges::count(moves, kind, &Move::kind) > 0;
}

/// A value that a move starts from or ends at, as the sheet's sources know it.
std::string first_source(const Move& move) {
    const SheetCell& cell = move.to.empty() ? move.from : move.to;
    return cell.sources.empty() ? std::string() : cell.sources.front();
}

const SheetRow* row_of(const ChangeSheet& sheet, const std::string& label) {
    const auto found = std::ranges::find(sheet.rows, label, &SheetRow::label);
    return found == sheet.rows.end() ? nullptr : &*found;
}

/// Every projector and ordered pair of its formats in a room.
template <class Visit>
void for_each_change(const Study& study, Visit visit) {
    for (int p = 0; p < static_cast<int>(study.layout().projectors.size()); ++p) {
        const std::vector<int> formats = change_sheet(study, p).formats;
        for (const int from : formats)
            for (const int to : formats)
                visit(p, from, to);
    }
}

/// A demo room whose masking, frame, aim and formats are drawn at random, so that masks move both
/// ways and machines turn.
Study random_study(unsigned seed) {
    std::mt19937 dice(seed);
    const auto between = [&](double low, double high) {
        return std::uniform_real_distribution<double>(low, high)(dice);
    };
    auto brief = std::make_shared<room::Brief>(
        *tests::demo_brief(tests::kDemoRooms[seed % std::size(tests::kDemoRooms)]));
    room::Layout& layout = brief->layout;
    layout.screen.masking = static_cast<room::MaskingMode>(seed % 4);
    layout.screen.moving_edge = static_cast<room::MovingEdge>(seed % 3);
    layout.screen.height_m = layout.screen.width_m / between(1.6, 2.6);
    for (room::Format& format : layout.formats) {
        format.aspect_ratio = between(1.2, 2.7);
        format.opening_width_m.reset();
    }
    for (room::Projector& projector : layout.projectors)
        if (between(0.0, 1.0) < 0.5) projector.aim.mode = room::AimMode::picture_centre;
    return compute_study(std::move(brief));
}

}  // namespace

TEST_SUITE("study/format_change") {
    TEST_CASE("the sheet has a column for each format that the machine makes, and full rows") {
        for (const char* name : tests::kDemoRooms) {
            const Study study = studied(name);
            for (int p = 0; p < static_cast<int>(study.layout().projectors.size()); ++p) {
                const ChangeSheet sheet = change_sheet(study, p);
                const auto& projector = study.layout().projectors[static_cast<std::size_t>(p)];
                CHECK(sheet.formats.size() == projector.formats.size());
                CHECK(sheet.formats.size() + sheet.not_made.size() ==
                      study.layout().formats.size());
                CHECK(sheet.rows.size() > 10);
                for (const SheetRow& row : sheet.rows)
                    CHECK(row.cells.size() == sheet.formats.size());
            }
        }
    }

    TEST_CASE("every cell names a figure that reads the same, or a member of the layout") {
        for (const char* name : tests::kDemoRooms) {
            const Study study = studied(name);
            for (int p = 0; p < static_cast<int>(study.layout().projectors.size()); ++p) {
                const ChangeSheet sheet = change_sheet(study, p);
                for (const SheetRow& row : sheet.rows) {
                    for (std::size_t f = 0; f < row.cells.size(); ++f) {
                        const SheetCell& cell = row.cells[f];
                        INFO(name, ", ", row.label);
                        for (const std::string& source : cell.sources) {
                            if (source.starts_with("projectors[")) continue;
                            const Figure* figure = find_figure(study, source,
                                                               {.projector = p,
                                                                .format = sheet.formats[f],
                                                                .loudspeaker = {},
                                                                .seat = {},
                                                                .row = {},
                                                                .band = {}});
                            REQUIRE(figure != nullptr);
                            CHECK(cell.verdict >= figure->worst);
                            if (cell.si) CHECK(*cell.si == *value_at(*figure));
                        }
                    }
                }
            }
        }
    }

    TEST_CASE("golden: the converted hall's film machine, worked by hand") {
        // Worked in plain Python from the numbers of layouts/converted-hall-96.json, nothing taken
        // from the program. Lens (-0.7, 4.6, 17); every opening's centre is the frame's,
        // (0, 3.1075, 1.1): D = sqrt(0.7^2 + 1.4925^2 + 15.9^2) = 15.985229, cos i = 15.9/D.
        // Common height 3.515: half widths 3.515 x 1.37/2 = 2.407775, 3.515 x 1.85/2 = 3.251375;
        // 2.39 is wider than the frame: 8.4/2 = 4.2.
        // f = A D/(W + A): A = 20.955 mm, twice that for 2.39.
        // b = f D/(D - f) of the prime fitted, J = q D^2/(b^2 cos i), E = 1.478756e7/J (centre of
        // the gate, through the port glass: hand_worked_converted_hall_test.cpp), G = 0.954761,
        // L = E G/pi, current 70 x 55/L.
        struct Row {
            int format;
            double mask_m, focal_m, focal_wanted_m, reading_cdm2, current_a;
        };
        constexpr Row kRows[] = {{0, 2.407775, 0.0675, 0.0692588, 80.3831, 47.8956},
                                 {1, 3.251375, 0.0500, 0.0513467, 44.0091, 87.4818},
                                 {2, 4.200000, 0.0775, 0.0793589, 53.0489, 72.5745}};
        const ChangeSheet sheet = change_sheet(studied("converted-hall-96"), 0);
        const auto value = [&](const char* label, int format) {
            const SheetRow* row = row_of(sheet, label);
            REQUIRE(row != nullptr);
            return row->cells[static_cast<std::size_t>(format)].si.value();
        };
        for (const Row& row : kRows) {
            INFO("format ", row.format);
            tests::check_close(value("Left mask stands at", row.format), row.mask_m,
                               tests::printed_digits(6));
            tests::check_close(value("Right mask stands at", row.format), row.mask_m,
                               tests::printed_digits(6));
            tests::check_close(value("Focal length in use", row.format), row.focal_m,
                               tests::printed_digits(7));
            tests::check_close(value("Focal length wanted", row.format), row.focal_wanted_m,
                               tests::printed_digits(7));
            // Light from numbers that were rounded to six digits on the way.
            tests::check_close(value("Luminance, reference", row.format), row.reading_cdm2,
                               tests::relative(3e-6, "six digits carried"));
            tests::check_close(value("Lamp current wanted", row.format), row.current_a,
                               tests::relative(3e-6, "six digits carried"));
        }
        // atan(1.4925/sqrt(0.7^2 + 15.9^2)) down, atan(0.7/15.9) to the right.
        CHECK(row_of(sheet, "Axis down from level")->cells[0].metric == "5.36°");
        tests::check_close(base::degrees(value("Axis down from level", 0)), 5.357364,
                           tests::printed_digits(6));
        tests::check_close(base::degrees(value("Axis turned right", 0)), 2.520828,
                           tests::printed_digits(6));
    }

    TEST_CASE("golden: the plates of the converted hall, worked by hand") {
        // Plain Python: the opening's four corners less the lens, turned into the axis frame of
        // hand_worked_converted_hall_test.cpp, times b over their depth; across again over the
        // squeeze. Extents of the four gate points, mm.
        const Study study = studied("converted-hall-96");
        const double expected[3][2] = {
            {20.61335, 14.93970}, {20.59703, 11.07984}, {20.65674, 17.24653}};
        for (int f = 0; f < 3; ++f) {
            const Place place{
                .projector = 0, .format = f, .loudspeaker = {}, .seat = {}, .row = {}, .band = {}};
            const auto mm = [&](const char* id) {
                return 1e3 * value_at(*find_figure(study, id, place)).value();
            };
            tests::check_close(mm("picture.plate_width"), expected[f][0], tests::printed_digits(5));
            tests::check_close(mm("picture.plate_height"), expected[f][1],
                               tests::printed_digits(5));
        }
        CHECK(row_of(change_sheet(study, 0), "Plate, to file")->cells[2].metric ==
              "20.66 × 17.25 mm");
        CHECK(find_figure(study, "picture.plate_width",
                          {.projector = 1,
                           .format = {},
                           .loudspeaker = {},
                           .seat = {},
                           .row = {},
                           .band = {}}) == nullptr);
    }

    TEST_CASE("golden: going from 1.37 to 2.39 on film, step by step") {
        // Masks 4200 - 2407.775 = 1792.225 mm each; top and bottom differ by 0.18 mm, which nobody
        // sets (8.4/2.39 against 3.515 high). Lens 67.5 to 77.5 mm. Current 47.9 to 72.6 A.
        const Study study = studied("converted-hall-96");
        const std::vector<Move> list = moves(study, 0, 0, 2);
        using K = MoveKind;
        CHECK(kinds(list) == std::vector<K>{K::darken, K::open_mask, K::open_mask, K::plate,
                                            K::lens, K::attachment, K::uncover, K::focus, K::light,
                                            K::check});
        tests::check_close(list[1].by_si.value(), 1.792225, tests::printed_digits(6));
        CHECK(list[1].metric ==
              "Open the left mask from 2407.8 mm to 4200.0 mm off the centre line, by 1792.2 mm.");
        tests::check_close(list[4].by_si.value(), 0.010, tests::printed_digits(6));
        CHECK(list[5].metric == "Bring the anamorphic attachment in, 2×.");
        CHECK(list[8].metric ==
              "Set the lamp current from 47.9 A to 72.6 A, 24.7 A more, and finish by the meter.");
        CHECK(list[9].metric.find("55.0 cd/m² at seat D6") != std::string::npos);
        // 2407.775/25.4 = 94.794, 4200/25.4 = 165.354, 1792.225/25.4 = 70.560.
        CHECK(list[1].imperial ==
              "Open the left mask from 94.794 in to 165.354 in off the centre line, by 70.560 in.");
    }

    TEST_CASE("golden: the digital machine's shift in the gate, worked by hand") {
        // 0.0866 x 1480 x 13.68 um = 1.753338 mm to the left, 0.1852 x 1080 x 13.68 um = 2.736219
        // mm down in 1.37; in 2.39 0.0481 x 2048 and 0.1858 x 858 pixels.
        const std::vector<Move> list = moves(studied("converted-hall-96"), 1, 0, 2);
        std::vector<Move> shifts;
        std::ranges::copy_if(list, std::back_inserter(shifts),
                             [](const Move& m) { return m.kind == MoveKind::shift; });
        REQUIRE(shifts.size() == 2);
        tests::check_close(shifts[0].from.si.value(), -1.753338e-3, tests::printed_digits(9));
        tests::check_close(shifts[0].to.si.value(), -1.347600e-3, tests::printed_digits(9));
        tests::check_close(shifts[1].from.si.value(), -2.736219e-3, tests::printed_digits(9));
        tests::check_close(shifts[1].to.si.value(), -2.180816e-3, tests::printed_digits(9));
        CHECK(shifts[1].metric ==
              "Set the lens shift up and down from -2.74 mm to -2.18 mm, 0.56 mm up.");
    }

    TEST_CASE("property: from a format to itself there is nothing to do") {
        for (unsigned seed = 0; seed < 24; ++seed) {
            const Study study = random_study(seed);
            for_each_change(study, [&](int p, int from, int to) {
                if (from == to) CHECK(moves(study, p, from, to).empty());
            });
        }
    }

    TEST_CASE("property: the way back undoes each amount of the way there") {
        for (unsigned seed = 0; seed < 24; ++seed) {
            const Study study = random_study(seed);
            for_each_change(study, [&](int p, int from, int to) {
                INFO("seed ", seed, ", projector ", p, ", ", from, " to ", to);
                const auto amounts = [&](int a, int b, double sign) {
                    std::vector<std::pair<std::string, double>> out;
                    for (const Move& move : moves(study, p, a, b)) {
                        if (!move.by_si) continue;
                        std::string what = first_source(move);
                        if (move.kind == MoveKind::lens || move.kind == MoveKind::attachment)
                            what = move_name(move.kind);
                        out.emplace_back(what, sign * *move.by_si);
                    }
                    std::ranges::sort(out);
                    return out;
                };
                CHECK(amounts(from, to, 1.0) == amounts(to, from, -1.0));
            });
        }
    }

    TEST_CASE("property: only what changes is asked for, and in both unit systems") {
        for (unsigned seed = 0; seed < 24; ++seed) {
            const Study study = random_study(seed);
            for_each_change(study, [&](int p, int from, int to) {
                for (const Move& move : moves(study, p, from, to)) {
                    CHECK_FALSE(move.metric.empty());
                    CHECK_FALSE(move.imperial.empty());
                    if (move.kind == MoveKind::focus || move.from.empty() || move.to.empty())
                        continue;
                    INFO("seed ", seed, ": ", move.metric);
                    const bool reads_other = move.from.metric != move.to.metric ||
                                             move.from.imperial != move.to.imperial;
                    CHECK(reads_other);
                }
            });
        }
    }

    TEST_CASE("property: light is off while hands are in the machine and masks move") {
        const auto in_the_dark = [](MoveKind kind) {
            return kind > MoveKind::darken && kind < MoveKind::uncover;
        };
        for (unsigned seed = 0; seed < 24; ++seed) {
            const Study study = random_study(seed);
            for_each_change(study, [&](int p, int from, int to) {
                bool dark = false;
                for (const Move& move : moves(study, p, from, to)) {
                    INFO("seed ", seed, ": ", move.metric);
                    if (move.kind == MoveKind::darken) dark = true;
                    if (move.kind == MoveKind::uncover) dark = false;
                    if (in_the_dark(move.kind)) CHECK(dark);
                    if (move.kind > MoveKind::uncover) CHECK_FALSE(dark);
                }
                CHECK_FALSE(dark);
            });
        }
    }

    TEST_CASE("property: masks that open come before the picture changes, those that close after") {
        int opened = 0;
        int closed = 0;
        for (unsigned seed = 0; seed < 24; ++seed) {
            const Study study = random_study(seed);
            for_each_change(study, [&](int p, int from, int to) {
                const std::vector<MoveKind> order = kinds(moves(study, p, from, to));
                CHECK(std::ranges::is_sorted(order.begin(), order.end()));
                for (const Move& move : moves(study, p, from, to)) {
                    if (move.kind == MoveKind::open_mask) CHECK(*move.by_si > 0.0);
                    if (move.kind == MoveKind::close_mask) CHECK(*move.by_si < 0.0);
                    opened += move.kind == MoveKind::open_mask;
                    closed += move.kind == MoveKind::close_mask;
                }
            });
        }
        CHECK(opened > 20);
        CHECK(closed == opened);
    }

    TEST_CASE("each caution stands once, at the first step that it is for") {
        const std::vector<Move> list = moves(studied("converted-hall-96"), 0, 0, 2);
        std::vector<std::string> cautions;
        for (const Move& move : list)
            if (!move.caution.empty()) cautions.push_back(move.caution);
        CHECK(cautions.size() == 4);  // masking, hot parts, beam, xenon
        std::ranges::sort(cautions);
        CHECK(std::ranges::adjacent_find(cautions) == cautions.end());
        CHECK_FALSE(list[1].caution.empty());
        CHECK(list[2].caution.empty());
    }

    TEST_CASE("a zoom, shift or preset that differs by less than it can be set stays alone") {
        // 66.16 and 66.14 mm, 2.7362 and 2.7407 mm: 0.02 and 0.004 mm, under half of the 0.1 and
        // 0.01 mm that are shown.
        const std::vector<Move> list = moves(studied("converted-hall-96"), 1, 0, 1);
        CHECK_FALSE(has_kind(list, MoveKind::zoom));
        CHECK(std::ranges::count(list, MoveKind::shift, &Move::kind) == 1);
        CHECK(has_kind(list, MoveKind::pixels));
    }

    TEST_CASE("a book holds every pair both ways, or those that are asked for") {
        const Study study = studied("converted-hall-96");
        const ChangeBook all = change_book(study);
        CHECK(all.sheets.size() == 2);
        CHECK(all.lists.size() == 12);
        for (std::size_t i = 0; i < all.lists.size(); i += 2) {
            CHECK(all.lists[i].from == all.lists[i + 1].to);
            CHECK(all.lists[i].to == all.lists[i + 1].from);
        }
        CHECK(change_book(study, {.projector = 1, .from = 0, .to = {}}).lists.size() == 2);
        CHECK(change_book(study, {.projector = {}, .from = 0, .to = 2}).lists.size() == 2);
        const ChangeBook same = change_book(study, {.projector = 0, .from = 1, .to = 1});
        REQUIRE(same.lists.size() == 1);
        CHECK(same.lists[0].moves.empty());
    }

    TEST_CASE("a machine without a use for a format has no moves to it") {
        const Study study = studied("grand-620");
        const ChangeSheet wide = change_sheet(study, 1);
        REQUIRE(wide.formats.size() == 1);
        CHECK(moves(study, 1, wide.formats.front(), wide.not_made.front()).empty());
        CHECK_FALSE(moves(study, 2, 0, 1).empty());
    }

    TEST_CASE("formats made alike ask for no hand, and a shift alone for no other part") {
        auto brief = std::make_shared<room::Brief>(*tests::demo_brief("converted-hall-96"));
        room::Layout& layout = brief->layout;
        layout.screen.masking = room::MaskingMode::fixed;
        layout.formats[0].aspect_ratio = layout.formats[1].aspect_ratio;
        room::Projector& film = layout.projectors[0];
        const std::string name = film.formats[0].format;
        film.formats[0] = film.formats[1];
        film.formats[0].format = name;
        CHECK(moves(compute_study(brief), 0, 0, 1).empty());
        film.formats[0].shift_up = 0.02;
        const std::vector<Move> shifted = moves(compute_study(brief), 0, 0, 1);
        CHECK(has_kind(shifted, MoveKind::shift));
        CHECK_FALSE(has_kind(shifted, MoveKind::plate));
        CHECK_FALSE(has_kind(shifted, MoveKind::lens));
    }

    TEST_CASE("a format that gives no picture is noted, and its own settings still stand") {
        auto brief = std::make_shared<room::Brief>(*tests::demo_brief("converted-hall-96"));
        brief->layout.projectors[1].aim.yaw_rad = base::radians(60.0);
        const ChangeSheet sheet = change_sheet(compute_study(brief), 1);
        CHECK(sheet.notes.size() == 3);
        CHECK(row_of(sheet, "Pixels in use")->cells[0].metric == "1480 × 1080");
        CHECK(row_of(sheet, "Focal length in use") == nullptr);
    }
}

TEST_SUITE("study/machine_change") {
    TEST_CASE("property: a machine compared with itself differs in nothing") {
        for (const char* name : tests::kDemoRooms) {
            const Study study = studied(name);
            for (int p = 0; p < static_cast<int>(study.layout().projectors.size()); ++p) {
                for (int f = 0; f < static_cast<int>(study.layout().formats.size()); ++f) {
                    for (const MachineRow& row : machine_change(study, f, p, p).rows) {
                        INFO(name, ", ", row.label);
                        CHECK(row.from == row.to);
                        if (row.difference_si) CHECK(*row.difference_si == 0.0);
                    }
                }
            }
        }
    }

    TEST_CASE("golden: throw and focal length of both machines in the converted hall") {
        // Film: D = 15.985229. Digital: aimed 1 degree left and 3 down from back 16.95, so
        // (16.95 - 1.1)/(cos 1 cos 3) = 15.874169; f = 28.01664 D/(8400 + 28.01664) = 52.76934 mm
        // against 79.35893 mm on film.
        const MachineChange change = machine_change(studied("converted-hall-96"), 2, 0, 1);
        CHECK_FALSE(change.from.proposed);
        CHECK_FALSE(change.to.proposed);
        const auto row = [&](const char* label) {
            const auto found = std::ranges::find(change.rows, label, &MachineRow::label);
            REQUIRE(found != change.rows.end());
            return *found;
        };
        tests::check_close(row("Throw").from.si.value(), 15.985229, tests::printed_digits(6));
        tests::check_close(row("Throw").to.si.value(), 15.874169, tests::printed_digits(6));
        tests::check_close(row("Throw").difference_si.value(), -0.111060,
                           tests::absolute(1e-6, "difference of two values of six digits"));
        tests::check_close(row("Focal length wanted").to.si.value(), 0.05276934,
                           tests::printed_digits(8));
        CHECK(row("Throw").difference_metric == "-0.11 m");
        CHECK_FALSE(change.from.lens_metric.empty());
        CHECK_FALSE(change.to.lens_imperial.empty());
    }

    TEST_CASE("a digital machine without the format is shown with the largest part of its imager") {
        // 2048 x 1080: 1.85 takes 1080 x 1.85 = 1998 columns, 2.39 takes 2048/2.39 = 856.9 rows.
        // (The digital cinema's containers are 1998 x 1080 and 2048 x 858.)
        auto brief = std::make_shared<room::Brief>(*tests::demo_brief("converted-hall-96"));
        brief->layout.projectors[1].formats.clear();
        const Study study = compute_study(brief);
        const MachineChange flat = machine_change(study, 1, 0, 1);
        REQUIRE(flat.to.proposed);
        CHECK(flat.to.proposed->pixels_wide == 1998);
        CHECK(flat.to.proposed->pixels_high == 1080);
        const MachineChange scope = machine_change(study, 2, 0, 1);
        REQUIRE(scope.to.proposed);
        CHECK(scope.to.proposed->pixels_wide == 2048);
        CHECK(scope.to.proposed->pixels_high == 857);
        CHECK(scope.to.proposal.find("2048 × 857") != std::string::npos);
        // Both are studied: the side proposed has figures, and its shift brings the picture onto
        // the opening.
        for (const MachineChange* change : {&flat, &scope}) {
            const auto dark = std::ranges::find(change->rows, "Left dark", &MachineRow::label);
            REQUIRE(dark != change->rows.end());
            CHECK(dark->to.si.value() < 1e-9);
        }
    }

    TEST_CASE("a film machine borrows a gate of the ratio and gauge, and else says that it can't") {
        auto brief = std::make_shared<room::Brief>(*tests::demo_brief("grand-620"));
        const Study study = compute_study(brief);
        // 2.20 on 35 mm: no gate of that ratio there; the 70 mm one is another gauge.
        const MachineChange none = machine_change(study, 2, 0, 1);
        CHECK_FALSE(none.from.proposed);
        CHECK(none.from.proposal.find("can't be shown") != std::string::npos);
        for (const MachineRow& row : none.rows)
            CHECK(row.from.empty());
        // A second 35 mm machine without uses takes the first one's aperture.
        brief->layout.projectors[1].lit_width_m = brief->layout.projectors[0].lit_width_m;
        brief->layout.projectors[1].lit_height_m = brief->layout.projectors[0].lit_height_m;
        brief->layout.projectors[1].formats.clear();
        const MachineChange borrowed = machine_change(compute_study(brief), 3, 0, 1);
        REQUIRE(borrowed.to.proposed);
        CHECK(borrowed.to.proposed->squeeze == 2.0);
        CHECK(borrowed.to.proposed->gate_width_m == 0.020955);
        CHECK(borrowed.to.proposal.find("Film 35 mm") != std::string::npos);
    }

    TEST_CASE("swapping the machines swaps the sides and turns the differences round") {
        const Study study = studied("converted-hall-96");
        const MachineChange there = machine_change(study, 1, 0, 1);
        const MachineChange back = machine_change(study, 1, 1, 0);
        REQUIRE(there.rows.size() == back.rows.size());
        for (std::size_t i = 0; i < there.rows.size(); ++i) {
            CHECK(there.rows[i].from == back.rows[i].to);
            if (there.rows[i].difference_si)
                CHECK(*there.rows[i].difference_si == -*back.rows[i].difference_si);
        }
    }
}
