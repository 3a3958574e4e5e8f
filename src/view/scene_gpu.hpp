// SPDX-License-Identifier: MIT
#pragma once

#include "view/gpu_mesh.hpp"
#include "view/gpu_overlay.hpp"
#include "view/render_targets.hpp"
#include "view/scene.hpp"
#include "view/shader_program.hpp"

#include <array>
#include <vector>

/// What a Scene holds on the graphics card, shared by drawing and picking.
namespace rakeline::view {

/// A beam as air.frag.glsl wants it: a lens, four planes through it, and the picture's.
inline constexpr std::size_t kMostBeams = 4;   // as in air.frag.glsl
inline constexpr std::size_t kBeamPlanes = 5;  // as in air.frag.glsl
struct BeamVolume {
    glm::vec3 lens{0.0f};
    float throw_m = 0.0f;
    std::array<glm::vec4, kBeamPlanes> planes{};  ///< inside where dot(xyz, p) + w < 0
};

/// The picture as a lamp.
struct PictureLamp {
    glm::vec3 centre{0.0f};
    glm::vec3 right{1.0f, 0.0f, 0.0f};  ///< half the width
    glm::vec3 up{0.0f, 1.0f, 0.0f};     ///< half the height
    glm::vec3 normal{0.0f, 0.0f, 1.0f};
    glm::vec2 size_m{1.0f};
    std::array<float, 9> light{};
};

struct Scene::Gpu {
    Gpu();

    ShaderProgram solid, wall, chart, luminance, seat, outline, pick, line, mark, veil, air,
        compose;
    StillMesh room, picture;  ///< culled where they face away
    StillMesh walls;          ///< the hall's shell: drawn from both sides when the ceiling is
    StillMesh ceiling;
    StillMesh screen_luminance;                       ///< before the picture
    float first_contour = 0.0f, contour_step = 0.0f;  ///< as in drawing::ScreenLuminance
    StillMesh hidden_part;  ///< over everything, no matter what stands before it
    InstancedMesh seats, wheelchairs, heads, bodies;
    EdgeLines edges, beam_edges;
    Marks marks;
    RenderTargets targets;
    GpuVertexArray empty_array;  ///< core profile draws nothing without one
    GpuFramebuffer pick_frame;
    GpuRenderbuffer pick_colour, pick_depth;
    std::vector<BeamVolume> beams;
    PictureLamp lamp;
    std::vector<glm::dvec3> mark_places;  ///< by seat: the upper rim of its back

    /// Colours and hidden seats of this frame.
    void paint(const SceneOptions& options);
    void mark_seats(const SceneOptions& options);
    /// Everything solid, nearest things first; `use` chooses the program for what comes next.
    enum class Look { seat, solid, chart, wall, luminance };
    void draw_solids(const SceneOptions& options, const std::function<void(Look)>& use) const;
};

}  // namespace rakeline::view
