// SPDX-License-Identifier: MIT
#pragma once

#include "desk/gl_target.hpp"
#include "desk/panel_input.hpp"
#include "desk/study_worker.hpp"
#include "view/scene.hpp"

#include <memory>

/// The room's pictures for the panels, drawn by view::Scene and kept until something that they show
/// changes: an idle window draws no room.
namespace rakeline::desk {

class RoomView final : public RoomPictures {
public:
    /// The room as the panels look at it in this frame. Its triangles come with the study; another
    /// projector or format than those are for makes its own.
    void set_room(const FinishedStudy& finished, const Workspace& workspace);

    ImTextureID hall(const view::Camera& camera,
                     int width,
                     int height,
                     const Luminance& luminance) override;
    ImTextureID from_seat(const SeatLook& look) override;
    drawing::Shows pick(glm::dvec2 at) override;

private:
    /// What a drawn picture depends on.
    struct Drawn {
        unsigned long mesh = 0;
        view::Camera camera;
        view::SceneOptions options;
        Luminance luminance;
        bool fine = false;  ///< with all shading, not the quick one of a moving camera
    };
    static bool same(const Drawn& a, const Drawn& b);
    static ImTextureID id_of(const GlTarget& target);
    void mark_hidden(int seat, int format);
    void show_luminance(const Luminance& luminance);
    void load(const FinishedStudy& finished, const RoomLook& look);
    void draw(GlTarget& target, Drawn& last, const Drawn& wanted);

    view::Scene scene_;
    GlTarget hall_target_;
    GlTarget seat_target_;
    Drawn hall_drawn_;
    Drawn seat_drawn_;
    std::shared_ptr<const study::Study> study_;
    unsigned long serial_ = 0;
    RoomLook look_{-1, -1};
    unsigned long mesh_ = 0;         ///< counts the meshes loaded
    unsigned long marked_mesh_ = 0;  ///< with which the mark below was made; 0: none
    int marked_seat_ = -1;
    unsigned long lit_mesh_ = 0;  ///< with which the luminance below was loaded; 0: none
    Luminance lit_;
    view::SceneOptions options_;
};

}  // namespace rakeline::desk
