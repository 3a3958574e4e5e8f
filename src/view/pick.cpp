// SPDX-License-Identifier: MIT
#include "view/scene_gpu.hpp"

#include <epoxy/gl.h>
#include <glm/gtc/matrix_transform.hpp>

/// Picking: the same solids, drawn into a view of one pixel whose value is what they show.
namespace rakeline::view {
namespace {

/// Spreads one pixel of a view over the whole of clip space.
glm::dmat4 pixel_view(int x, int y, int width, int height) {
    const glm::dvec3 centre(2.0 * (x + 0.5) / width - 1.0, 2.0 * (y + 0.5) / height - 1.0, 0.0);
    return glm::scale(glm::dmat4(1.0), glm::dvec3(width, height, 1.0)) *
           glm::translate(glm::dmat4(1.0), -centre);
}

void begin_pick_frame(const GpuFramebuffer& frame,
                      const GpuRenderbuffer& colour,
                      const GpuRenderbuffer& depth) {
    glBindFramebuffer(GL_FRAMEBUFFER, frame.name());
    glBindRenderbuffer(GL_RENDERBUFFER, colour.name());
    glRenderbufferStorage(GL_RENDERBUFFER, GL_R32UI, 1, 1);
    glFramebufferRenderbuffer(GL_FRAMEBUFFER, GL_COLOR_ATTACHMENT0, GL_RENDERBUFFER, colour.name());
    glBindRenderbuffer(GL_RENDERBUFFER, depth.name());
    glRenderbufferStorage(GL_RENDERBUFFER, GL_DEPTH_COMPONENT24, 1, 1);
    glFramebufferRenderbuffer(GL_FRAMEBUFFER, GL_DEPTH_ATTACHMENT, GL_RENDERBUFFER, depth.name());
    RL_ASSERT(glCheckFramebufferStatus(GL_FRAMEBUFFER) == GL_FRAMEBUFFER_COMPLETE);
    glViewport(0, 0, 1, 1);
    glDisable(GL_SCISSOR_TEST);
    glDisable(GL_BLEND);
    glDepthMask(GL_TRUE);
    glDepthFunc(GL_LEQUAL);
    glFrontFace(GL_CCW);
    glCullFace(GL_BACK);
    const GLuint nothing[4] = {0, 0, 0, 0};
    const GLfloat far_away = 1.0f;
    glClearBufferuiv(GL_COLOR, 0, nothing);
    glClearBufferfv(GL_DEPTH, 0, &far_away);
}

}  // namespace

drawing::Shows Scene::pick(
    int x, int y, int width, int height, const Camera& camera, const SceneOptions& options) {
    if (x < 0 || y < 0 || x >= width || y >= height) return {};
    GLint frame_before = 0;
    glGetIntegerv(GL_DRAW_FRAMEBUFFER_BINDING, &frame_before);
    gpu_->paint(options);
    begin_pick_frame(gpu_->pick_frame, gpu_->pick_colour, gpu_->pick_depth);
    const double aspect = static_cast<double>(width) / height;
    const glm::dmat4 clip_from_room = pixel_view(x, y, width, height) *
                                      camera.clip_from_camera(aspect) * camera.camera_from_room();
    gpu_->pick.use();
    gpu_->pick.set("clip_from_room", glm::mat4(clip_from_room));
    gpu_->pick.set("eye", glm::vec3(camera.position()));
    gpu_->pick.set("cut_walls", options.ceiling ? 0 : 1);
    gpu_->draw_solids(options, [](Gpu::Look) {});
    GLuint code = 0;
    glReadPixels(0, 0, 1, 1, GL_RED_INTEGER, GL_UNSIGNED_INT, &code);
    glDisable(GL_DEPTH_TEST);
    glDisable(GL_CULL_FACE);
    glUseProgram(0);
    glBindFramebuffer(GL_FRAMEBUFFER, static_cast<GLuint>(frame_before));
    return shown_by(code);
}

}  // namespace rakeline::view
