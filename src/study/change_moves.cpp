// SPDX-License-Identifier: MIT
#include "study/change_steps.hpp"

#include <algorithm>
#include <array>

namespace rakeline::study {
namespace {

/// Whom a caution is for; steps of one hazard get it once.
enum class Hazard { none, masking, hot_parts, beam, xenon };

Hazard hazard_of(MoveKind kind, const room::Projector& machine) {
    switch (kind) {
        case MoveKind::open_mask:
        case MoveKind::close_mask:
            return Hazard::masking;
        case MoveKind::plate:
        case MoveKind::lens:
        case MoveKind::attachment:
            return Hazard::hot_parts;
        case MoveKind::uncover:
            return Hazard::beam;
        case MoveKind::light:
            return machine.flux.lamp == room::LampKind::xenon ? Hazard::xenon : Hazard::none;
        default:
            return Hazard::none;
    }
}

const char* caution_of(Hazard hazard) {
    switch (hazard) {
        case Hazard::none:
            return "";
        case Hazard::masking:
            return "Moving masking: nobody at the screen and nothing in its way; stop at once if "
                   "it binds.";
        case Hazard::hot_parts:
            return "Gate, plate and lens stay hot after the light is off: let them cool, or "
                   "handle them only as the machine's instructions say.";
        case Hazard::beam:
            return "Bright beam: nobody looks into the lens or the port, or stands in the beam "
                   "near it.";
        case Hazard::xenon:
            return "Xenon lamp, under pressure hot and cold: the lamphouse stays shut, and the "
                   "current stays between the least and the greatest that the lamp's maker gives.";
    }
    return "";
}

void add_cautions(const room::Projector& machine, Moves& moves) {
    std::array<bool, 5> given{};
    for (Move& move : moves) {
        const Hazard hazard = hazard_of(move.kind, machine);
        bool& there = given.at(static_cast<std::size_t>(hazard));
        if (!there) move.caution = caution_of(hazard);
        there = true;
    }
}

/// Steps 2 to 6 of the order: what is done with the light off.
Moves work_in_the_dark(const ChangeEnds& ends) {
    Moves work;
    add_masks(ends, MoveKind::open_mask, work);
    if (ends.to.machine().kind == room::SourceKind::film) {
        add_plate(ends, work);
        add_lens(ends, work);
        add_attachment(ends, work);
    } else {
        add_pixels(ends, work);
        add_lens(ends, work);
    }
    add_zoom(ends, work);
    add_shift(ends, work);
    add_aim(ends, work);
    add_masks(ends, MoveKind::close_mask, work);
    return work;
}

/// Masks and the part of the imager in use leave the focus as it was.
bool unsettles_focus(const Move& move) {
    return move.kind != MoveKind::open_mask && move.kind != MoveKind::close_mask &&
           move.kind != MoveKind::pixels;
}

}  // namespace

const char* move_name(MoveKind kind) {
    static constexpr std::array names{"darken",     "open_mask", "plate", "pixels", "lens",
                                      "attachment", "zoom",      "shift", "aim",    "close_mask",
                                      "uncover",    "focus",     "light", "check"};
    return names.at(static_cast<std::size_t>(kind));
}

std::vector<Move> moves(const Study& study, int projector, int from, int to) {
    auto a = sheet_place(study, projector, from);
    auto b = sheet_place(study, projector, to);
    if (!a || !b) return {};
    const ChangeEnds ends{std::move(*a), std::move(*b)};
    const Moves dark = work_in_the_dark(ends);
    Moves all;
    if (!dark.empty()) {
        all.push_back(darken());
        all.insert(all.end(), dark.begin(), dark.end());
        all.push_back(uncover());
    }
    if (std::any_of(dark.begin(), dark.end(), unsettles_focus)) add_focus(ends, all);
    add_light(ends, all);
    if (!all.empty()) all.push_back(check(ends.to));
    add_cautions(ends.to.machine(), all);
    return all;
}

}  // namespace rakeline::study
