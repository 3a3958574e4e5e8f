// SPDX-License-Identifier: MIT
#include "desk/room_view.hpp"

#include "desk/seat_colours.hpp"
#include "drawing/room_mesh.hpp"

#include <algorithm>
#include <cstdint>

namespace rakeline::desk {
namespace {

bool same_camera(const view::Camera& a, const view::Camera& b) {
    return a.target == b.target && a.yaw_rad == b.yaw_rad && a.pitch_rad == b.pitch_rad &&
           a.distance_m == b.distance_m && a.field_rad == b.field_rad && a.seated == b.seated &&
           a.eye == b.eye;
}

bool same_paint(const view::SeatPaint& a, const view::SeatPaint& b) {
    return a.r == b.r && a.g == b.g && a.b == b.b && a.missed == b.missed &&
           a.selected == b.selected;
}

bool same_options(const view::SceneOptions& a, const view::SceneOptions& b) {
    return a.beams == b.beams && a.ceiling == b.ceiling && a.hidden_seat == b.hidden_seat &&
           a.heads == b.heads && a.hidden_mark == b.hidden_mark &&
           std::equal(a.seats.begin(), a.seats.end(), b.seats.begin(), b.seats.end(), same_paint);
}

}  // namespace

bool RoomView::same(const Drawn& a, const Drawn& b) {
    return a.mesh == b.mesh && a.luminance == b.luminance && same_camera(a.camera, b.camera) &&
           same_options(a.options, b.options);
}

ImTextureID RoomView::id_of(const GlTarget& target) {
    return reinterpret_cast<ImTextureID>(static_cast<std::uintptr_t>(target.texture()));
}

void RoomView::load(const FinishedStudy& finished, const RoomLook& look) {
    if (finished.mesh && finished.look == look) {
        scene_.load(*finished.mesh);
    } else {
        drawing::DrawingChoice choice;
        choice.projector = look.projector;
        choice.format = look.format;
        scene_.load(drawing::room_mesh(*finished.study, choice));
    }
    ++mesh_;
    serial_ = finished.serial;
    look_ = look;
}

void RoomView::set_room(const FinishedStudy& finished, const Workspace& w) {
    if (!finished.study) return;
    const RoomLook look{w.projector, w.format};
    if (finished.serial != serial_ || look != look_) load(finished, look);
    options_.beams = w.show_beams;
    options_.seats = seat_colours(*finished.study, w).seats;
    study_ = finished.study;
}

void RoomView::draw(GlTarget& target, Drawn& last, const Drawn& wanted) {
    view::SceneOptions options = wanted.options;
    options.contact_shading = wanted.fine;
    scene_.draw(target.framebuffer(), 0, 0, target.width(), target.height(), wanted.camera,
                options);
    last = wanted;
}

ImTextureID RoomView::hall(const view::Camera& camera,
                           int width,
                           int height,
                           const Luminance& luminance) {
    const bool resized = width != hall_target_.width() || height != hall_target_.height();
    hall_target_.resize(width, height);
    Drawn wanted{mesh_, camera, options_, luminance, true};
    show_luminance(luminance);
    wanted.options.luminance = luminance != nullptr;
    // While the camera moves the quick picture will do; once it rests, the fine one follows.
    if (hall_drawn_.mesh == mesh_ && !same_camera(camera, hall_drawn_.camera)) wanted.fine = false;
    if (resized || !same(wanted, hall_drawn_) || (wanted.fine && !hall_drawn_.fine))
        draw(hall_target_, hall_drawn_, wanted);
    return id_of(hall_target_);
}

/// The mesh is of one study and one format, so the mark hangs on it and the seat alone.
void RoomView::mark_hidden(int seat, int format) {
    if (marked_mesh_ == mesh_ && marked_seat_ == seat) return;
    scene_.mark_hidden(drawing::hidden_part(*study_, format, seat));
    marked_mesh_ = mesh_;
    marked_seat_ = seat;
}

/// Loading a room drops what was shown on its screen.
void RoomView::show_luminance(const Luminance& luminance) {
    if (!luminance || (lit_mesh_ == mesh_ && lit_ == luminance)) return;
    scene_.show_luminance(*luminance);
    lit_mesh_ = mesh_;
    lit_ = luminance;
}

ImTextureID RoomView::from_seat(const SeatLook& look) {
    const bool resized = look.width != seat_target_.width() || look.height != seat_target_.height();
    seat_target_.resize(look.width, look.height);
    Drawn wanted{mesh_, view::seat_camera(*study_, look.seat, look.format),
                 view::seat_options(look.seat), look.luminance, true};
    show_luminance(look.luminance);
    wanted.options.luminance = look.luminance != nullptr;
    wanted.options.heads = look.heads;
    wanted.options.hidden_mark = true;
    mark_hidden(look.seat, look.format);
    if (resized || !same(wanted, seat_drawn_)) draw(seat_target_, seat_drawn_, wanted);
    return id_of(seat_target_);
}

drawing::Shows RoomView::pick(glm::dvec2 at) {
    const int width = hall_target_.width(), height = hall_target_.height();
    if (width == 0 || hall_drawn_.mesh != mesh_) return {};
    const int x = static_cast<int>(at.x);
    const int y = height - 1 - static_cast<int>(at.y);
    return scene_.pick(x, y, width, height, hall_drawn_.camera, hall_drawn_.options);
}

}  // namespace rakeline::desk
