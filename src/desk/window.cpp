// SPDX-License-Identifier: MIT
#include "desk/window.hpp"

#include <epoxy/gl.h>
// after epoxy, which brings its own OpenGL declarations
#include <GLFW/glfw3.h>

#include <algorithm>
#include <backends/imgui_impl_glfw.h>
#include <backends/imgui_impl_opengl3.h>
#include <cmath>
#include <cstdio>
#include <utility>

namespace rakeline::desk {
namespace {

/// A click is two frames, what it opens one more, its keyboard focus two: all drawn before
/// sleeping.
constexpr int kLively = 8;

void say(int, const char* what) {
    std::fprintf(stderr, "rakeline: window: %s\n", what);
}

}  // namespace

struct Window::Handle {
    GLFWwindow* window = nullptr;
    std::string title;
    std::vector<std::string> dropped;
    bool close_asked = false;
    std::vector<KeyPress> pressed;  ///< not yet handed out
    std::vector<int> tapped;        ///< went down since the last frame
    std::vector<int> held_up;       ///< shown to the toolkit as down for one frame
    int lively_frames = kLively;

    static Handle& of(GLFWwindow* window) {
        return *static_cast<Handle*>(glfwGetWindowUserPointer(window));
    }
    static void on_drop(GLFWwindow* window, int count, const char** paths) {
        for (int i = 0; i < count; ++i)
            of(window).dropped.emplace_back(paths[i]);
    }
    static void on_key(GLFWwindow* window, int key, int, int action, int mods) {
        if (action == GLFW_RELEASE) return;
        const bool command = (mods & (GLFW_MOD_CONTROL | GLFW_MOD_SUPER)) != 0;
        of(window).pressed.push_back({key, command, (mods & GLFW_MOD_SHIFT) != 0});
        if (action == GLFW_PRESS && key >= 0) of(window).tapped.push_back(key);
    }
    /// A key that went down and up again between two frames is down for one frame all the same.
    void show_taps() {
        ImGuiIO& io = ImGui::GetIO();
        for (const int key : held_up)
            if (glfwGetKey(window, key) != GLFW_PRESS) io.KeysDown[key] = false;
        held_up.clear();
        for (const int key : std::exchange(tapped, {})) {
            if (io.KeysDown[key]) continue;
            io.KeysDown[key] = true;
            held_up.push_back(key);
        }
    }
    static void on_close(GLFWwindow* window) {
        of(window).close_asked = true;
        glfwSetWindowShouldClose(window, GLFW_FALSE);
    }
};

std::unique_ptr<Window> Window::open(int width, int height, const std::string& title) {
    glfwSetErrorCallback(say);
    if (!glfwInit()) return nullptr;
    glfwWindowHint(GLFW_CONTEXT_VERSION_MAJOR, 3);
    glfwWindowHint(GLFW_CONTEXT_VERSION_MINOR, 3);
    glfwWindowHint(GLFW_OPENGL_PROFILE, GLFW_OPENGL_CORE_PROFILE);
    glfwWindowHint(GLFW_OPENGL_FORWARD_COMPAT, GLFW_TRUE);
    GLFWwindow* glfw = glfwCreateWindow(width, height, title.c_str(), nullptr, nullptr);
    if (!glfw) {
        glfwTerminate();
        return nullptr;
    }
    glfwSetWindowSizeLimits(glfw, 960, 600, GLFW_DONT_CARE, GLFW_DONT_CARE);
    glfwMakeContextCurrent(glfw);
    glfwSwapInterval(1);
    std::unique_ptr<Window> window(new Window);
    window->handle_ = std::make_unique<Handle>();
    window->handle_->window = glfw;
    glfwSetWindowUserPointer(glfw, window->handle_.get());
    glfwSetDropCallback(glfw, Handle::on_drop);
    glfwSetWindowCloseCallback(glfw, Handle::on_close);
    glfwSetKeyCallback(glfw, Handle::on_key);  // the back end calls it before its own
    ImGui::CreateContext();
    ImGui::GetIO().IniFilename = nullptr;
    ImGui_ImplGlfw_InitForOpenGL(glfw, true);
    ImGui_ImplOpenGL3_Init("#version 330 core");
    return window;
}

Window::~Window() {
    ImGui_ImplOpenGL3_Shutdown();
    ImGui_ImplGlfw_Shutdown();
    ImGui::DestroyContext();
    glfwDestroyWindow(handle_->window);
    glfwTerminate();
}

void Window::wait_for_events(bool never) {
    constexpr double kSleep_s = 0.5;
    if (never || handle_->lively_frames > 0) {
        --handle_->lively_frames;
        glfwPollEvents();
        return;
    }
    const double start = glfwGetTime();
    glfwWaitEventsTimeout(kSleep_s);
    if (glfwGetTime() - start < 0.95 * kSleep_s) handle_->lively_frames = kLively;
}

void Window::begin_frame() {
    handle_->show_taps();
    ImGui_ImplOpenGL3_NewFrame();
    ImGui_ImplGlfw_NewFrame();
    ImGui::NewFrame();
}

void Window::end_frame() {
    ImGui::Render();
    int width = 0, height = 0;
    glfwGetFramebufferSize(handle_->window, &width, &height);
    glBindFramebuffer(GL_FRAMEBUFFER, 0);
    glViewport(0, 0, width, height);
    glClearColor(0.0f, 0.0f, 0.0f, 1.0f);
    glClear(GL_COLOR_BUFFER_BIT);
    ImGui_ImplOpenGL3_RenderDrawData(ImGui::GetDrawData());
    glfwSwapBuffers(handle_->window);
    const ImGuiIO& io = ImGui::GetIO();
    if (io.MouseDown[0] || io.MouseDown[1] || io.MouseDown[2])
        handle_->lively_frames = std::max(handle_->lively_frames, 2);
}

bool Window::close_asked() {
    return std::exchange(handle_->close_asked, false);
}

std::vector<std::string> Window::dropped_files() {
    return std::exchange(handle_->dropped, {});
}

std::vector<KeyPress> Window::pressed_keys() {
    return std::exchange(handle_->pressed, {});
}

void Window::set_title(const std::string& title) {
    if (title == handle_->title) return;
    handle_->title = title;
    glfwSetWindowTitle(handle_->window, title.c_str());
}

float Window::raster_scale() const {
    int width = 0, pixels = 0, height = 0;
    glfwGetWindowSize(handle_->window, &width, &height);
    glfwGetFramebufferSize(handle_->window, &pixels, &height);
    return width > 0 ? static_cast<float>(pixels) / static_cast<float>(width) : 1.0f;
}

float Window::scale(float wish) const {
    float content = 1.0f, unused = 1.0f;
    glfwGetWindowContentScale(handle_->window, &content, &unused);
    int width = 0, height = 0;
    glfwGetWindowSize(handle_->window, &width, &height);
    const float display = std::max(content / raster_scale(), 0.5f);
    // A small window gets slightly smaller letters, in steps, so that nothing is cut off; a very
    // large one larger ones, so that nothing is lost in it.
    const float room = std::min(static_cast<float>(width) / (1520.0f * display),
                                static_cast<float>(height) / (860.0f * display));
    const float snug = std::clamp(std::floor(room * 20.0f) / 20.0f, 0.85f, 1.0f);
    const float roomy = std::clamp(std::floor(room * 0.75f * 20.0f) / 20.0f, 1.0f, 1.3f);
    const float fit = snug * roomy;
    return display * fit * wish;
}

Fonts Window::load_fonts(float scale) {
    const float raster = raster_scale();
    const Fonts fonts = build_fonts(scale * raster);
    ImGui::GetIO().FontGlobalScale = 1.0f / raster;
    ImGui_ImplOpenGL3_DestroyFontsTexture();
    ImGui_ImplOpenGL3_CreateFontsTexture();
    return fonts;
}

void Window::wake() {
    glfwPostEmptyEvent();
}

}  // namespace rakeline::desk
