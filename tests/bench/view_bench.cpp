// SPDX-License-Identifier: MIT
/// How long the 3D view takes for a frame, against one that only clears its targets, in one run.
/// Prints a table; checks nothing. Frames are finished one by one: time on the wall, median.
#include "base/files.hpp"
#include "bench/timing.hpp"
#include "drawing/room_mesh.hpp"
#include "study/study.hpp"
#include "view/gpu_objects.hpp"
#include "view/render_targets.hpp"
#include "view/scene.hpp"

#include <epoxy/gl.h>

#include <cstdio>
#include <memory>

using namespace rakeline;
using namespace rakeline::bench;

namespace {

struct FrameSize {
    int width, height;
};
constexpr FrameSize kSizes[] = {{1280, 720}, {1920, 1080}, {2560, 1440}};
constexpr std::size_t kRuns = 60;
constexpr double kLeast_ms = 500.0;

/// A framebuffer of the size of the window's.
class Target {
public:
    explicit Target(FrameSize size) {
        glBindFramebuffer(GL_FRAMEBUFFER, frame_.name());
        glBindRenderbuffer(GL_RENDERBUFFER, colour_.name());
        glRenderbufferStorage(GL_RENDERBUFFER, GL_RGBA8, size.width, size.height);
        glFramebufferRenderbuffer(GL_FRAMEBUFFER, GL_COLOR_ATTACHMENT0, GL_RENDERBUFFER,
                                  colour_.name());
    }
    unsigned name() const { return frame_.name(); }

private:
    view::GpuFramebuffer frame_;
    view::GpuRenderbuffer colour_;
};

double cleared_ms(FrameSize size) {
    view::RenderTargets targets;
    targets.resize(size.width, size.height);
    return median_ms(
        wall_ms,
        [&] {
            targets.begin_room();
            glClear(GL_COLOR_BUFFER_BIT | GL_DEPTH_BUFFER_BIT);
            targets.resolve();
            glFinish();
        },
        kRuns, kLeast_ms);
}

double drawn_ms(view::Scene& scene,
                FrameSize size,
                const view::Camera& camera,
                const view::SceneOptions& options) {
    const Target target(size);
    return median_ms(
        wall_ms,
        [&] {
            scene.draw(target.name(), 0, 0, size.width, size.height, camera, options);
            glFinish();
        },
        kRuns, kLeast_ms);
}

void print_frames(const study::Study& study) {
    const drawing::RoomMesh mesh = drawing::room_mesh(study, {});
    view::Scene scene;
    const double load_ms = median_ms(
        wall_ms,
        [&] {
            scene.load(mesh);
            glFinish();
        },
        8, 100.0);
    std::printf("%s, %zu seats: loaded in %.2f ms\n", study.layout().name.c_str(),
                study.seats.seats.size(), load_ms);
    view::SceneOptions seated;
    seated.heads = true;
    seated.beams = false;
    seated.ceiling = true;
    seated.hidden_seat = study.reference_seat.value_or(0);
    std::printf("  size        cleared ms   hall ms  ratio   from a seat ms  ratio\n");
    for (const FrameSize size : kSizes) {
        const double floor_ms = cleared_ms(size);
        const double hall_ms = drawn_ms(scene, size, view::overview(study), {});
        const double seat_ms =
            drawn_ms(scene, size, view::seat_camera(study, seated.hidden_seat, 0), seated);
        std::printf("  %4d x %-4d   %8.3f  %8.3f  %5.1f         %8.3f  %5.1f\n", size.width,
                    size.height, floor_ms, hall_ms, hall_ms / floor_ms, seat_ms,
                    seat_ms / floor_ms);
    }
}

}  // namespace

int main(int argc, char** argv) {
    const char* file = argc > 1 ? argv[1] : "layouts/grand-620.json";
    const auto brief = study::open_room(file, base::read_text_file);
    if (!brief) {
        std::fprintf(stderr, "%s\n", base::text(brief.problems()).c_str());
        return 2;
    }
    const study::Study study = study::compute_study(std::make_shared<const room::Brief>(*brief));
    const base::Problems problems = view::with_offscreen_context([&] {
        std::printf("%s, %s\n", reinterpret_cast<const char*>(glGetString(GL_RENDERER)),
                    reinterpret_cast<const char*>(glGetString(GL_VERSION)));
        print_frames(study);
    });
    if (problems.empty()) return 0;
    std::fprintf(stderr, "%s\n", base::text(problems).c_str());
    return 3;
}
