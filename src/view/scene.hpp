// SPDX-License-Identifier: MIT
#pragma once

#include "base/result.hpp"
#include "drawing/drawing.hpp"
#include "drawing/room_mesh.hpp"

#include <glm/mat4x4.hpp>

#include <functional>
#include <memory>
#include <vector>

/// The 3D view: draws a RoomMesh into the current OpenGL 3.3 core framebuffer, and picks.
namespace rakeline::view {

struct Camera {
    glm::dvec3 target{0.0, 2.0, 10.0};
    double yaw_rad = 0.6;     ///< about the vertical; 0 looks toward the screen wall, positive
                              ///< stands on the side of +x
    double pitch_rad = 0.35;  ///< looking down
    double distance_m = 25.0;
    double field_rad = 0.7;  ///< vertical, where the view is at least kFullAspect wide
    bool seated = false;     ///< at `eye`, looking at `target`
    glm::dvec3 eye{0.0};

    glm::dvec3 position() const;
    glm::dmat4 camera_from_room() const;
    /// Width over height. Narrower views than kFullAspect keep the width of the field instead of
    /// its height, so that what a camera frames stays framed.
    glm::dmat4 clip_from_camera(double aspect) const;
    double vertical_field_rad(double aspect) const;
    double near_m() const;
    double far_m() const;
};
inline constexpr double kFullAspect = 1.6;

/// A camera that sees the whole hall; one that sits in a seat and looks at the picture, its field
/// wide enough for the whole opening.
Camera overview(const study::Study& study);
Camera seat_camera(const study::Study& study, int seat, int format);

/// Colour (sRGB) and mark of one seat.
struct SeatPaint {
    float r = 0.6f, g = 0.6f, b = 0.6f;
    bool missed = false;  ///< also gets a mark: colour is never alone
    bool selected = false;
};

struct SceneOptions {
    bool beams = true;
    bool ceiling = false;          ///< and the walls nearest the eye
    std::vector<SeatPaint> seats;  ///< per seat; empty: plain
    int hidden_seat = -1;          ///< not drawn: the one the camera sits in
    bool heads = false;            ///< someone in every seat
    bool hidden_mark = false;      ///< what Scene::mark_hidden was given, over all that is drawn
    bool luminance = false;        ///< what Scene::show_luminance was given, on the picture
    bool contact_shading = true;   ///< darker where faces come close to each other
};

/// What one sees who sits in `seat`: everybody else, walls and ceiling, but no beams, whose drawn
/// edges are for looking on from outside.
SceneOptions seat_options(int seat);

/// Owns the GL objects. Needs a current 3.3 core context for its whole life.
class Scene {
public:
    Scene();
    ~Scene();
    Scene(const Scene&) = delete;
    Scene& operator=(const Scene&) = delete;

    void load(const drawing::RoomMesh& mesh);
    /// The hidden part of a picture as seen from one seat (drawing::hidden_part). It is drawn as a
    /// hatched veil that nothing covers: those who hide it stand before it.
    void mark_hidden(const drawing::Part& part);
    /// The luminance over the picture as one seat sees it; what it leaves out is dark.
    void show_luminance(const drawing::ScreenLuminance& luminance);
    /// Draws into framebuffer `target` over `x, y, width, height` pixels (y from the bottom).
    void draw(unsigned target,
              int x,
              int y,
              int width,
              int height,
              const Camera& camera,
              const SceneOptions& options);
    /// What lies under a pixel of the last size drawn (x right, y up from the lower left corner).
    drawing::Shows pick(
        int x, int y, int width, int height, const Camera& camera, const SceneOptions& options);

private:
    struct Gpu;
    std::unique_ptr<Gpu> gpu_;
};

struct Picture {
    int width = 0;
    int height = 0;
    std::vector<unsigned char> rgba;  ///< rows from the top
};

/// Calls `draw` with a surfaceless EGL context current (no X server needed).
base::Problems with_offscreen_context(const std::function<void()>& draw);

/// One picture of a mesh, off screen, multisampled; with `hidden` marked over it and
/// `luminance` on its screen where `options` ask for them. Nothing but a Problem where no EGL
/// device is.
base::Result<Picture> offscreen_picture(const drawing::RoomMesh& mesh,
                                        const Camera& camera,
                                        const SceneOptions& options,
                                        int width,
                                        int height,
                                        const drawing::Part& hidden = {},
                                        const drawing::ScreenLuminance& luminance = {});

}  // namespace rakeline::view
