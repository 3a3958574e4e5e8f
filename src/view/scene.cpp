// SPDX-License-Identifier: MIT
#include "view/scene.hpp"

#include "drawing/palette.hpp"
#include "view/scene_gpu.hpp"
#include "view/shader_texts.hpp"

#include <epoxy/gl.h>
#include <glm/exponential.hpp>

#include <algorithm>
#include <cmath>

namespace rakeline::view {
namespace {

const glm::vec3 kGround{0.0784f, 0.0863f, 0.1020f};  // sRGB #14161A
const glm::vec3 kLamp{0.941f, 0.702f, 0.353f};       // #F0B35A
const glm::vec3 kMissed{0.878f, 0.443f, 0.310f};     // #E0714F
const glm::vec3 kPlainSeat{0.46f, 0.40f, 0.36f};     // where no figure colours the seats
const glm::vec3 kBeam{1.0f, 0.76f, 0.50f};           // linear
constexpr float kContactRadius_m = 0.75f;
constexpr double kPointerRise_m = 0.42;  // over a mark, so that both can be seen
constexpr float kOutline_px = 2.2f;
constexpr float kHatchPitch = 0.034f;  // of half the view's height

/// A frame's matrices and what shaders need of the camera.
struct Eye {
    glm::dmat4 clip_from_room{1.0};
    glm::dmat4 room_from_camera{1.0};
    glm::dvec3 position{0.0};
    glm::vec2 tangents{1.0f};
    glm::vec4 from_depth{0.0f};
    glm::vec2 half_size{1.0f};
    float focal_px = 1.0f;
};

Eye eye_of(const Camera& camera, int width, int height) {
    const double aspect = static_cast<double>(width) / height;
    const double up = std::tan(0.5 * camera.vertical_field_rad(aspect));
    const double n = camera.near_m();
    const double f = camera.far_m();
    Eye eye;
    eye.clip_from_room = camera.clip_from_camera(aspect) * camera.camera_from_room();
    eye.room_from_camera = glm::inverse(camera.camera_from_room());
    eye.position = camera.position();
    eye.tangents = glm::vec2(static_cast<float>(up * aspect), static_cast<float>(up));
    eye.focal_px = static_cast<float>(0.5 * height / up);
    // A depth d in 0..1 stands for the distance n f / (f - d (f - n)).
    eye.from_depth = glm::vec4(static_cast<float>(n * f), static_cast<float>(n - f),
                               static_cast<float>(f), eye.focal_px);
    eye.half_size = 0.5f * glm::vec2(static_cast<float>(width), static_cast<float>(height));
    return eye;
}

void set_lamp(const ShaderProgram& program, const PictureLamp& lamp) {
    program.set("picture_centre", lamp.centre);
    program.set("picture_right", lamp.right);
    program.set("picture_up", lamp.up);
    program.set("picture_normal", lamp.normal);
    program.set("picture_size", lamp.size_m);
    for (std::size_t i = 0; i < lamp.light.size(); ++i) {
        program.set("picture_light", i, lamp.light[i]);
    }
}

void bind_texture(GLuint unit, unsigned texture) {
    glActiveTexture(GL_TEXTURE0 + unit);
    glBindTexture(GL_TEXTURE_2D, texture);
}

void clear_room() {
    const glm::vec3 ground = glm::sqrt(linear_colour(kGround));  // as store.glsl keeps it
    glColorMask(GL_TRUE, GL_TRUE, GL_TRUE, GL_TRUE);
    glDepthMask(GL_TRUE);
    glClearColor(ground.r, ground.g, ground.b, 0.0f);
    glClearDepth(1.0);
    glClear(GL_COLOR_BUFFER_BIT | GL_DEPTH_BUFFER_BIT);
}

/// The state that others left (a window's interface among them) must not show.
void begin_passes() {
    glDisable(GL_SCISSOR_TEST);
    glDisable(GL_STENCIL_TEST);
    glDisable(GL_BLEND);
    glDisable(GL_FRAMEBUFFER_SRGB);
    glEnable(GL_MULTISAMPLE);
    glPolygonMode(GL_FRONT_AND_BACK, GL_FILL);
    glFrontFace(GL_CCW);
    glCullFace(GL_BACK);
    glDepthFunc(GL_LEQUAL);
}

void end_passes() {
    glDisable(GL_BLEND);
    glDisable(GL_DEPTH_TEST);
    glDisable(GL_CULL_FACE);
    glDepthMask(GL_TRUE);
    glUseProgram(0);
    glBindVertexArray(0);
    glActiveTexture(GL_TEXTURE0);
    glBindTexture(GL_TEXTURE_2D, 0);
}

/// Over what is there; the alpha underneath (contact shading) stays.
void begin_overlay() {
    glEnable(GL_BLEND);
    glBlendFuncSeparate(GL_SRC_ALPHA, GL_ONE_MINUS_SRC_ALPHA, GL_ZERO, GL_ONE_MINUS_SRC_ALPHA);
    glDisable(GL_CULL_FACE);
    glEnable(GL_DEPTH_TEST);
    glDepthMask(GL_FALSE);
}

}  // namespace

namespace texts = shader_texts;

Scene::Gpu::Gpu()
    : solid({texts::place, texts::solid_vert}, {texts::store, texts::light, texts::solid_frag}),
      wall({texts::place, texts::wall_vert}, {texts::store, texts::light, texts::wall_frag}),
      chart({texts::place, texts::chart_vert}, {texts::store, texts::chart_frag}),
      luminance({texts::place, texts::chart_vert}, {texts::store, texts::luminance_frag}),
      seat({texts::place, texts::light, texts::seat_vert}, {texts::store, texts::seat_frag}),
      outline({texts::place, texts::outline_vert}, {texts::store, texts::outline_frag}),
      pick({texts::place, texts::pick_vert}, {texts::pick_frag}),
      line({texts::line_vert}, {texts::store, texts::line_frag}),
      mark({texts::mark_vert}, {texts::store, texts::mark_frag}),
      veil({texts::place, texts::hidden_vert}, {texts::store, texts::hidden_frag}),
      air({texts::full_vert}, {texts::air_frag}),
      compose({texts::full_vert}, {texts::compose_frag}) {}

Scene::Scene() : gpu_(std::make_unique<Gpu>()) {}
Scene::~Scene() = default;

void Scene::Gpu::paint(const SceneOptions& options) {
    std::vector<glm::vec4> colours(mark_places.size(), glm::vec4(linear_colour(kPlainSeat), 1.0f));
    for (std::size_t i = 0; i < std::min(colours.size(), options.seats.size()); ++i) {
        const SeatPaint& p = options.seats[i];
        colours[i] = glm::vec4(linear_colour({p.r, p.g, p.b}), 1.0f);
    }
    const auto hidden = static_cast<std::size_t>(options.hidden_seat);
    if (options.hidden_seat >= 0 && hidden < colours.size()) colours[hidden].w = 0.0f;
    seats.paint(colours);
    wheelchairs.paint(colours);
    heads.paint(colours);
    bodies.paint(colours);
}

void Scene::Gpu::mark_seats(const SceneOptions& options) {
    std::vector<Mark> list;
    for (std::size_t i = 0; i < std::min(mark_places.size(), options.seats.size()); ++i) {
        if (static_cast<int>(i) == options.hidden_seat) continue;
        const glm::dvec3 over = mark_places[i];
        if (options.seats[i].missed) list.push_back({over, MarkKind::cross});
        if (options.seats[i].selected) {
            list.push_back({over + glm::dvec3(0.0, kPointerRise_m, 0.0), MarkKind::pointer});
        }
    }
    marks.load(list);
}

void Scene::Gpu::draw_solids(const SceneOptions& options,
                             const std::function<void(Look)>& use) const {
    glEnable(GL_DEPTH_TEST);
    glDepthMask(GL_TRUE);
    glEnable(GL_CULL_FACE);
    use(Look::seat);
    seats.draw();
    wheelchairs.draw();
    if (options.heads) {
        heads.draw();
        bodies.draw();
    }
    use(Look::solid);
    room.draw();
    if (options.ceiling) {
        glDisable(GL_CULL_FACE);
        ceiling.draw();
    }
    use(Look::wall);
    walls.draw();
    glEnable(GL_CULL_FACE);
    use(Look::chart);
    picture.draw();
    if (!options.luminance) return;
    use(Look::luminance);
    screen_luminance.draw();
}

namespace {

void set_place(const ShaderProgram& program, const Eye& eye, const SceneOptions& options) {
    program.use();
    program.set("clip_from_room", glm::mat4(eye.clip_from_room));
    program.set("eye", glm::vec3(eye.position));
    program.set("cut_walls", options.ceiling ? 0 : 1);
}

template <class Gpu>
const ShaderProgram& program_for(const Gpu& gpu, typename Gpu::Look look) {
    switch (look) {
        case Gpu::Look::seat:
            return gpu.seat;
        case Gpu::Look::solid:
            return gpu.solid;
        case Gpu::Look::chart:
            return gpu.chart;
        case Gpu::Look::luminance:
            return gpu.luminance;
        case Gpu::Look::wall:
            break;
    }
    return gpu.wall;
}

/// Under the luminance, which leaves out what is dark.
void set_dark(const ShaderProgram& program) {
    for (std::size_t i = 0; i < std::tuple_size_v<decltype(PictureLamp::light)>; ++i)
        program.set("picture_light", i, 0.0f);
}

glm::vec3 linear_of(const drawing::Rgb& rgb) {
    return linear_colour(glm::vec3(glm::dvec3(rgb.r, rgb.g, rgb.b)));
}

template <class Gpu>
void set_luminance(const ShaderProgram& program, const Gpu& gpu) {
    constexpr std::size_t kSteps = 32;  // as in luminance.frag.glsl
    for (std::size_t i = 0; i <= kSteps; ++i)
        program.set("palette", i, linear_of(drawing::cividis(static_cast<double>(i) / kSteps)));
    program.set("first_contour", gpu.first_contour);
    program.set("contour_step", gpu.contour_step);
    program.set("over_dark", linear_of(drawing::kOverDark));
    program.set("over_bright", linear_of(drawing::kOverBright));
    program.set("bright_from", static_cast<float>(drawing::kOverBright_from));
}

/// The seats selected, a little larger and from inside: what stands out beyond them is an outline.
template <class Gpu>
void draw_outlines(const Gpu& gpu, const Eye& eye, const SceneOptions& options) {
    set_place(gpu.outline, eye, options);
    gpu.outline.set("grow", kOutline_px / eye.half_size);
    gpu.outline.set("outline_colour", linear_colour(kLamp));
    glCullFace(GL_FRONT);
    for (std::size_t i = 0; i < options.seats.size(); ++i) {
        if (!options.seats[i].selected) continue;
        gpu.seats.draw_seat(static_cast<int>(i));
        gpu.wheelchairs.draw_seat(static_cast<int>(i));
    }
    glCullFace(GL_BACK);
}

template <class Gpu>
void draw_room(const Gpu& gpu, const Eye& eye, const SceneOptions& options) {
    gpu.targets.begin_room();
    clear_room();
    gpu.draw_solids(options, [&](typename Gpu::Look look) {
        const ShaderProgram& program = program_for(gpu, look);
        set_place(program, eye, options);
        set_lamp(program, gpu.lamp);
        if (!options.luminance) return;
        if (look == Gpu::Look::chart) set_dark(program);
        if (look == Gpu::Look::luminance) set_luminance(program, gpu);
    });
    draw_outlines(gpu, eye, options);
}

/// Whoever hides it stands before it, so depth does not count; a hatching tells it where colour
/// does not.
template <class Gpu>
void draw_hidden(const Gpu& gpu, const Eye& eye, const SceneOptions& options) {
    set_place(gpu.veil, eye, options);
    gpu.veil.set("missed_colour", linear_colour(kMissed));
    gpu.veil.set("pitch", std::clamp(eye.half_size.y * kHatchPitch, 6.0f, 24.0f));
    glDisable(GL_DEPTH_TEST);
    gpu.hidden_part.draw();
    glEnable(GL_DEPTH_TEST);
}

template <class Gpu>
void draw_overlay(const Gpu& gpu, const Eye& eye, const SceneOptions& options) {
    begin_overlay();
    gpu.line.use();
    gpu.line.set("clip_from_room", glm::mat4(eye.clip_from_room));
    gpu.line.set("half_size", eye.half_size);
    gpu.line.set("half_width", 0.55f);
    gpu.line.set("eye", glm::vec3(eye.position));
    gpu.edges.draw();
    if (options.beams) gpu.beam_edges.draw();
    if (options.hidden_mark) draw_hidden(gpu, eye, options);
    gpu.mark.use();
    gpu.mark.set("clip_from_room", glm::mat4(eye.clip_from_room));
    gpu.mark.set("eye", glm::vec3(eye.position));
    gpu.mark.set("half_size", eye.half_size);
    gpu.mark.set("focal_px", eye.focal_px);
    gpu.mark.set("missed_colour", linear_colour(kMissed));
    gpu.mark.set("lamp_colour", linear_colour(kLamp));
    gpu.marks.draw();
}

template <class Gpu>
void draw_full(const Gpu& gpu) {
    glBindVertexArray(gpu.empty_array.name());
    glDrawArrays(GL_TRIANGLES, 0, 3);
    glBindVertexArray(0);
}

template <class Gpu>
void set_beams(const Gpu& gpu, const SceneOptions& options) {
    const int count = options.beams ? static_cast<int>(gpu.beams.size()) : 0;
    gpu.air.set("beam_count", count);
    for (std::size_t i = 0; i < static_cast<std::size_t>(count); ++i) {
        gpu.air.set("beam_lens", i, gpu.beams[i].lens);
        gpu.air.set("beam_throw", i, gpu.beams[i].throw_m);
        for (std::size_t k = 0; k < kBeamPlanes; ++k) {
            gpu.air.set("beam_planes", kBeamPlanes * i + k, gpu.beams[i].planes[k]);
        }
    }
}

template <class Gpu>
void draw_air(const Gpu& gpu, const Eye& eye, const SceneOptions& options) {
    gpu.targets.begin_air();
    gpu.air.use();
    bind_texture(0, gpu.targets.depth_texture());
    gpu.air.set("depths", 0);
    gpu.air.set("shade_contact", options.contact_shading ? 1 : 0);
    gpu.air.set("from_depth", eye.from_depth);
    gpu.air.set("tangents", eye.tangents);
    gpu.air.set("radius", kContactRadius_m);
    gpu.air.set("room_from_camera", glm::mat4(eye.room_from_camera));
    set_beams(gpu, options);
    draw_full(gpu);
}

template <class Gpu>
void draw_composed(const Gpu& gpu) {
    gpu.compose.use();
    bind_texture(1, gpu.targets.air_texture());
    bind_texture(0, gpu.targets.room_texture());
    gpu.compose.set("room", 0);
    gpu.compose.set("air", 1);
    gpu.compose.set("beam_colour", kBeam);
    draw_full(gpu);
    bind_texture(1, 0);
}

}  // namespace

void Scene::draw(unsigned target,
                 int x,
                 int y,
                 int width,
                 int height,
                 const Camera& camera,
                 const SceneOptions& options) {
    if (width <= 0 || height <= 0) return;
    const Eye eye = eye_of(camera, width, height);
    gpu_->targets.resize(width, height);
    gpu_->paint(options);
    gpu_->mark_seats(options);
    begin_passes();
    draw_room(*gpu_, eye, options);
    draw_overlay(*gpu_, eye, options);
    gpu_->targets.resolve();
    glDisable(GL_DEPTH_TEST);
    glDisable(GL_BLEND);
    draw_air(*gpu_, eye, options);
    glBindFramebuffer(GL_FRAMEBUFFER, target);
    glViewport(x, y, width, height);
    draw_composed(*gpu_);
    end_passes();
}

}  // namespace rakeline::view
