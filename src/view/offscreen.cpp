// SPDX-License-Identifier: MIT
#include "view/gpu_objects.hpp"
#include "view/scene.hpp"

#include <epoxy/egl.h>
#include <epoxy/gl.h>

#include <algorithm>
#include <array>
#include <cstddef>

/// Pictures without a window: a context on the surfaceless platform, or on a device.
namespace rakeline::view {
namespace {

constexpr EGLenum kSurfacelessPlatform = 0x31DD;  // EGL_MESA_platform_surfaceless

base::Problem no_context(const char* what) {
    return {.file = {},
            .line = 0,
            .where = "off-screen view",
            .what = what,
            .mend =
                "install a driver that gives OpenGL 3.3 without a display (libegl1 with "
                "libgl1-mesa-dri)"};
}

/// The first device whose driver opens: for drivers that know no surfaceless platform.
EGLDisplay device_display() {
    if (!epoxy_has_egl_extension(EGL_NO_DISPLAY, "EGL_EXT_device_enumeration") ||
        !epoxy_has_egl_extension(EGL_NO_DISPLAY, "EGL_EXT_platform_device")) {
        return EGL_NO_DISPLAY;
    }
    std::array<EGLDeviceEXT, 16> devices{};
    EGLint count = 0;
    if (!eglQueryDevicesEXT(static_cast<EGLint>(devices.size()), devices.data(), &count)) {
        return EGL_NO_DISPLAY;
    }
    for (EGLint i = 0; i < count; ++i) {
        EGLDisplay display = eglGetPlatformDisplayEXT(
            EGL_PLATFORM_DEVICE_EXT, devices.at(static_cast<std::size_t>(i)), nullptr);
        if (display != EGL_NO_DISPLAY && eglInitialize(display, nullptr, nullptr)) return display;
    }
    return EGL_NO_DISPLAY;
}

/// The display is not terminated: others in this process may be using it.
EGLDisplay surfaceless_display() {
    if (epoxy_has_egl_extension(EGL_NO_DISPLAY, "EGL_MESA_platform_surfaceless")) {
        EGLDisplay display = eglGetPlatformDisplayEXT(kSurfacelessPlatform, nullptr, nullptr);
        if (display != EGL_NO_DISPLAY && eglInitialize(display, nullptr, nullptr)) return display;
    }
    return device_display();
}

/// Makes a context current, and puts back what was current before.
class SurfacelessContext {
public:
    explicit SurfacelessContext(EGLDisplay display)
        : display_(display),
          before_display_(eglGetCurrentDisplay()),
          before_(eglGetCurrentContext()),
          before_draw_(eglGetCurrentSurface(EGL_DRAW)),
          before_read_(eglGetCurrentSurface(EGL_READ)) {
        eglBindAPI(EGL_OPENGL_API);
        const EGLint wanted[] = {EGL_CONTEXT_MAJOR_VERSION,
                                 3,
                                 EGL_CONTEXT_MINOR_VERSION,
                                 3,
                                 EGL_CONTEXT_OPENGL_PROFILE_MASK,
                                 EGL_CONTEXT_OPENGL_CORE_PROFILE_BIT,
                                 EGL_NONE};
        context_ = eglCreateContext(display_, nullptr, EGL_NO_CONTEXT, wanted);
        current_ = context_ != EGL_NO_CONTEXT &&
                   eglMakeCurrent(display_, EGL_NO_SURFACE, EGL_NO_SURFACE, context_);
    }
    ~SurfacelessContext() {
        if (before_ != EGL_NO_CONTEXT) {
            eglMakeCurrent(before_display_, before_draw_, before_read_, before_);
        } else {
            eglMakeCurrent(display_, EGL_NO_SURFACE, EGL_NO_SURFACE, EGL_NO_CONTEXT);
        }
        if (context_ != EGL_NO_CONTEXT) eglDestroyContext(display_, context_);
    }
    SurfacelessContext(const SurfacelessContext&) = delete;
    SurfacelessContext& operator=(const SurfacelessContext&) = delete;
    bool current() const { return current_; }

private:
    EGLDisplay display_;
    EGLDisplay before_display_;
    EGLContext before_;
    EGLSurface before_draw_;
    EGLSurface before_read_;
    EGLContext context_ = EGL_NO_CONTEXT;
    bool current_ = false;
};

/// Rows as OpenGL gives them come from the bottom.
void turn_over(Picture& picture) {
    const auto row = static_cast<std::ptrdiff_t>(picture.width) * 4;
    for (std::ptrdiff_t y = 0; y < picture.height / 2; ++y) {
        const auto top = picture.rgba.begin() + y * row;
        const auto bottom = picture.rgba.begin() + (picture.height - 1 - y) * row;
        std::swap_ranges(top, top + row, bottom);
    }
}

Picture drawn(const drawing::RoomMesh& mesh,
              const Camera& camera,
              const SceneOptions& options,
              int width,
              int height,
              const drawing::Part& hidden,
              const drawing::ScreenLuminance& luminance) {
    Picture picture{.width = width, .height = height, .rgba = {}};
    picture.rgba.resize(static_cast<std::size_t>(width) * static_cast<std::size_t>(height) * 4);
    Scene scene;
    scene.load(mesh);
    scene.mark_hidden(hidden);
    scene.show_luminance(luminance);
    const GpuFramebuffer frame;
    const GpuRenderbuffer colour;
    glBindFramebuffer(GL_FRAMEBUFFER, frame.name());
    glBindRenderbuffer(GL_RENDERBUFFER, colour.name());
    glRenderbufferStorage(GL_RENDERBUFFER, GL_RGBA8, width, height);
    glFramebufferRenderbuffer(GL_FRAMEBUFFER, GL_COLOR_ATTACHMENT0, GL_RENDERBUFFER, colour.name());
    RL_ASSERT(glCheckFramebufferStatus(GL_FRAMEBUFFER) == GL_FRAMEBUFFER_COMPLETE);
    scene.draw(frame.name(), 0, 0, width, height, camera, options);
    glBindFramebuffer(GL_FRAMEBUFFER, frame.name());
    glPixelStorei(GL_PACK_ALIGNMENT, 1);
    glReadPixels(0, 0, width, height, GL_RGBA, GL_UNSIGNED_BYTE, picture.rgba.data());
    turn_over(picture);
    return picture;
}

}  // namespace

base::Problems with_offscreen_context(const std::function<void()>& draw) {
    const EGLDisplay display = surfaceless_display();
    if (display == EGL_NO_DISPLAY) return {no_context("there is no EGL device to draw with")};
    const SurfacelessContext context(display);
    if (!context.current()) return {no_context("the EGL device gives no OpenGL 3.3 core context")};
    draw();
    return {};
}

base::Result<Picture> offscreen_picture(const drawing::RoomMesh& mesh,
                                        const Camera& camera,
                                        const SceneOptions& options,
                                        int width,
                                        int height,
                                        const drawing::Part& hidden,
                                        const drawing::ScreenLuminance& luminance) {
    constexpr int kMostPixels = 8192;
    if (width < 1 || height < 1 || width > kMostPixels || height > kMostPixels) {
        return base::Problem{.file = {},
                             .line = 0,
                             .where = "picture size",
                             .what = std::to_string(width) + " x " + std::to_string(height) +
                                     " pixels can't be drawn",
                             .mend = "give a width and a height of 1 to 8192 pixels"};
    }
    Picture picture;
    const base::Problems problems = with_offscreen_context(
        [&] { picture = drawn(mesh, camera, options, width, height, hidden, luminance); });
    if (!problems.empty()) return problems;
    return picture;
}

}  // namespace rakeline::view
